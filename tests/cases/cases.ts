/**
 * One sheet of cases, run in every host: what a cell holds, what the function must give, and how
 * that is known. Expected values are from outside the project or worked by hand in the remark.
 */
export interface Case {
  readonly id: string;
  /** A block for a range, one value for one cell, null for an argument that is left out. */
  readonly args: readonly (readonly (readonly Input[])[] | Input)[];
  /** Numbers to 1e-9, texts exactly, an error by its code. */
  readonly gives: readonly (readonly (string | number | { readonly error: string })[])[];
  readonly known: string;
}
export type Input = string | number | boolean | null | { readonly error: string };

const DEFINITION = "by definition of the function";
const NA = { error: "#N/A" } as const;
const VALUE = { error: "#VALUE!" } as const;
/** 8 July 2026, 7 August 2026 and December 2013, as a 1900 workbook numbers them (Excel's own rule). */
const [JULY_8, AUGUST_7, DECEMBER_13] = [46211, 46241, 41609];

export const TERMS: Input[][] = [
  ["Term", "Cherry", "Pear"],
  ["average frames", 8, 7],
  ["minimum frames", 6, 5],
  ["part frame", "between", "down"],
  ["brood", 1, 3],
  ["brood counted as", "full frames", "combs"],
  ["laying queen", "yes", null],
  ["grade 1 name", "Prime", "Full"],
  ["grade 1 frames", 10, 8],
  ["grade 1 brood", 3, 4],
  ["grade 2 name", "Standard", "Light"],
  ["grade 2 frames", 8, 5],
  ["grade 2 brood", 1, 3],
  ["grade 3 name", "Light", null],
  ["grade 3 frames", 6, null],
  ["grade 3 brood", 1, null],
];

export const YARD: Input[][] = [
  ["Hive", "Lot", "Bees top box", "Bees bottom box", "Brood combs", "Brood %", "Laying queen"],
  ["S01", "Shed", "3-4", 5, 4, "50%", "yes"],
  ["S02", "Shed", "dead", null, null, null, null],
  ["S03", "Shed", JULY_8, 3, 5, 60, "yes"],
  ["S04", "Shed", "sevn", 3, 5, 60, "yes"],
  [null, null, null, null, null, null, null],
  ["S05", "Shed", null, null, null, null, null],
];

export const cases: readonly Case[] = [
  {
    id: "READING",
    args: [
      [["7-8"], ["7½"], ["~6"], ["12+"], ["none"], [JULY_8], [AUGUST_7], [DECEMBER_13], ["5 full"]],
    ],
    gives: [[7.5], [7.5], [6], [12], [0], [7.5], [7.5], [12.5], [5]],
    known: DEFINITION,
  },
  { id: "READING", args: ["7–8", "all"], gives: [[7, 7.5, 8, "7-8", ""]], known: DEFINITION },
  { id: "READING", args: [[["12+"], ["8"]], "high"], gives: [[NA], [8]], known: DEFINITION },
  { id: "READING", args: ["60%", null, "percent"], gives: [[60]], known: DEFINITION },
  {
    id: "READING",
    args: [0.6, null, "percent"],
    gives: [[VALUE]],
    known: "a fraction or a slip: asked",
  },
  { id: "READING", args: ["7,5", null, null, "decimal comma"], gives: [[7.5]], known: DEFINITION },
  { id: "READING", args: ["7,5"], gives: [[VALUE]], known: "the decimal sign is never guessed" },
  {
    id: "READING",
    args: [[[""], [null], [0]]],
    gives: [[""], [""], [""]],
    known: "a blank in the three forms that hosts give it",
  },
  {
    id: "READING",
    args: [[[{ error: "#N/A" }], ["7"]]],
    gives: [[NA], [7]],
    known: "an error in the sheet stays in its row",
  },
  {
    id: "FRAMES_OF_BEES",
    args: [
      [
        ["7-8", 5],
        [3, null],
        ["dead", null],
      ],
    ],
    gives: [[12.5], [3], [0]],
    known: "by hand: 7.5 + 5; 3 + none; none",
  },
  {
    id: "FRAMES_OF_BEES",
    args: [[[4.875]], null, null, "shallow"],
    gives: [[2.7554347826086958]],
    known: "by hand: 4.875 x 4.875 / 8.625, foundation to foundation",
  },
  {
    id: "FRAMES_OF_BEES",
    args: [[[70, 66, 100, "50%"]], "combs", "two-thirds"],
    gives: [[2]],
    known: "by hand: 70 and 100 reach two thirds",
  },
  {
    id: "FRAMES_OF_BEES",
    args: [[[90, 80, 60, 60]], "sides", "three-quarters"],
    gives: [[1.6]],
    known: "by hand: one whole comb, the lesser pooled at 0.6",
  },
  {
    id: "FRAMES_OF_BEES",
    args: [[[50, 75, "25%"]], "combs", "sum of parts"],
    gives: [[1.5]],
    known: "by hand: 0.5 + 0.75 + 0.25",
  },
  {
    id: "FRAMES_OF_BEES",
    args: [[[7, 5, 4, 2]], "seams"],
    gives: [[9]],
    known: "by hand: (7 + 5) / 2 + (4 + 2) / 2; the mean of both looks is from memory",
  },
  {
    id: "BEES",
    args: [[[8], ["12"]]],
    gives: [[19200], [28800]],
    known: "8 and 12 x 2,400, Sagili & Burgett 2011, PNW 623",
  },
  { id: "BEES", args: [10, "average"], gives: [[14000]], known: "10 x 1,400, Simpson 1969" },
  {
    id: "BEES",
    args: [10, "fully covered"],
    gives: [[22000]],
    known: "20 sides x 1,100, Imdorf 1996",
  },
  { id: "BEES", args: [10, 2430], gives: [[24300]], known: "by hand" },
  {
    id: "BEES",
    args: ["7-8", null, null, null, "low"],
    gives: [[16800]],
    known: "by hand: 7 x 2,400",
  },
  {
    id: "BEES",
    args: [[[19200], ["2,400 bees"]], null, "frames"],
    gives: [[8], [VALUE]],
    known: "19,200 / 2,400; a comma where the decimal sign is a point",
  },
  {
    id: "COVER_TO_BEES",
    args: [
      [
        [50, "25%", null],
        [100, 0, "none"],
      ],
    ],
    gives: [
      [600, 300, ""],
      [1200, "", 0],
    ],
    known: "a deep side well covered holds 1,200, half of 2,400, Sagili & Burgett 2011",
  },
  {
    id: "COVER_TO_BEES",
    args: [
      [
        [50, 25],
        [100, 50],
      ],
      null,
      null,
      null,
      null,
      "hives",
    ],
    gives: [[900], [1800]],
    known: "by hand",
  },
  {
    id: "COVER_TO_BEES",
    args: [[[2], ["2/8"]], null, "eighths", "liebefeld", "zander"],
    gives: [[250], [250]],
    known: "2/8 of a Zander side, 125 bees an eighth: Liebefeld method",
  },
  {
    id: "SEAMS",
    args: [
      [[10], [7]],
      [[6], ["5½"]],
    ],
    gives: [[8], [6.25]],
    known: "by hand: the mean of both looks",
  },
  {
    id: "SEAMS",
    args: [10, null, "frames", "april"],
    gives: [[3.643664003745918]],
    known: "10 x 630 cm2 (Ohio State / EPA 2015) over both sides of 134 in2 at 6.4516 cm2 each",
  },
  {
    id: "SEAMS",
    args: [10, 8, "caution", "june"],
    gives: [["a seam is not a frame: in june it covered 912 cm2 of comb (r 0.37)"]],
    known: "Ohio State / EPA 2015",
  },
  { id: "BEE_WEIGHT", args: [[[3], [2]]], gives: [[10500], [7000]], known: "3,500 a pound" },
  { id: "BEE_WEIGHT", args: [3, null, null, null, "low"], gives: [[9000]], known: "3,000 a pound" },
  {
    id: "BEE_WEIGHT",
    args: [10500, "bees", "kg"],
    gives: [[1.36077711]],
    known: "3 lb x 0.45359237",
  },
  {
    id: "DEEP_EQUIVALENT",
    args: [[[10, 8]], [["shallow", "deep"]]],
    gives: [[5.652173913043478, 8]],
    known: "10 x 4.875 / 8.625, foundation to foundation",
  },
  {
    id: "CELLS",
    args: [[[1], [8]], null, "liebefeld", "zander", null, "eighths"],
    gives: [[400], [3200]],
    known: "400 worker cells an eighth: Liebefeld method",
  },
  {
    id: "CELLS",
    args: [100, null, 5.2],
    gives: [[3691.772348804052]],
    known: "by hand: 2 / (sqrt 3 x 0.52^2) x 134 x 6.4516, hexagon geometry",
  },
  {
    id: "CELLS",
    args: [100, null, "wild"],
    gives: [[3691.772348804052]],
    known: "the same 5.2 mm, Seeley & Morse 1976",
  },
  {
    id: "FOOD",
    args: [[["4/8"], [1]], "g", "zander", "eighths"],
    gives: [[500], [125]],
    known: "125 g an eighth of a Zander side: Liebefeld method",
  },
  { id: "FOOD", args: [50, "kg", "zander"], gives: [[0.5]], known: "half of 8 x 125 g" },
  {
    id: "COVER",
    args: [[[800], [4000]], null, "liebefeld", "zander"],
    gives: [[25], [VALUE]],
    known: "by hand: 800 of 3,200; more cells than the side holds",
  },
  {
    id: "PATCH",
    args: [[[10]], [[6]], "in", "in2"],
    gives: [[47.1238898038469]],
    known: "pi / 4 x 10 x 6",
  },
  { id: "PATCH", args: [30, null, "sq in", "cm2"], gives: [[193.548]], known: "30 x 6.4516" },
  { id: "PATCH", args: [20, null, "squares", "cm2"], gives: [[500]], known: "20 x 25" },
  {
    id: "PATCH",
    args: [[[20]], [[20]], "in"],
    gives: [[VALUE]],
    known: "larger than a deep side of 134 in2",
  },
  {
    id: "BROOD_FRAMES",
    args: [
      [[7], [5]],
      [[60], ["half"]],
    ],
    gives: [[4.2], [2.5]],
    known: "7 at 60 %, New Zealand kiwifruit standard; 5 half covered by hand",
  },
  { id: "BROOD_FRAMES", args: [[[7], [5]], 60, "combs"], gives: [[7], [5]], known: DEFINITION },
  { id: "BROOD_FRAMES", args: [7], gives: [[NA]], known: "full frames need the cover" },
  {
    id: "BROOD_FRAMES",
    args: [[[60, 80, null, "10%"]], null, null, "combs"],
    gives: [[1.5]],
    known: "by hand: 0.6 + 0.8 + 0.1",
  },
  {
    id: "GRADE",
    args: [[["7-8"], [8], [5.9], ["dead"], [null]], null, "Almond Board of California"],
    gives: [["at minimum"], ["at average"], ["no grade"], ["dead-out"], [""]],
    known: "average 8, minimum 6: Almond Board of California, Best Management Practices, p. 7",
  },
  {
    id: "GRADE",
    args: [[[9], [9]], null, "University of Georgia", [[5], [4]]],
    gives: [["at minimum"], ["no grade"]],
    known: "at least 5 combs with brood: University of Georgia",
  },
  {
    id: "GRADE",
    args: [9, null, "Nova Scotia", 5, "half", "yes", 2],
    gives: [["no grade"]],
    known: "5 combs half covered are 2.5 full frames, 4 are asked: Nova Scotia",
  },
  {
    id: "GRADE",
    args: [
      [[10], [10], [7.9], [5]],
      TERMS,
      "Cherry",
      [[5], [4], [4], [4]],
      [[60], [50], [50], [50]],
      "yes",
    ],
    gives: [["Prime"], ["Standard"], ["Light"], ["no grade"]],
    known: "by hand: 3.0 full frames of 3; 2.0 of 3; 7.9 of 8; 5 of 6",
  },
  {
    id: "GRADE",
    args: [[[7.9], [5]], TERMS, "Pear", 4],
    gives: [["Light"], ["Light"]],
    known: "by hand: 7.9 read down as 7 of 8",
  },
  {
    id: "GRADE",
    args: [10, TERMS, "Cherry", 5, 60],
    gives: [[NA]],
    known: "the queen is not judged",
  },
  { id: "GRADE", args: [10, TERMS], gives: [[VALUE]], known: "two contracts stand in the Terms" },
  {
    id: "SHORT_OF",
    args: [[["7-8"], [9], [4]], null, "Almond Board of California"],
    gives: [[0.5], [""], [2]],
    known: "by hand: 8 - 7.5; the best grade; 6 - 4",
  },
  {
    id: "SHORT_OF",
    args: [10, TERMS, "Cherry", 4, 50, "yes", null, null, null, "all"],
    gives: [[0, 1, "Prime"]],
    known: "by hand: 2.0 full frames of 3",
  },
  {
    id: "HIVE_CHECK",
    args: [[[5], ["6-7"]], TERMS, "Cherry", 4, 50, [["no"], [null]]],
    gives: [
      ["not met", "met", "not met", "not asked", "frames 5 of 6; no laying queen"],
      ["met", "met", "not judged", "not asked", ""],
    ],
    known: "by hand",
  },
  {
    id: "YARD_COLUMNS",
    args: [
      YARD,
      TERMS,
      "Cherry",
      "hive, frames, bees, brood full, brood combs, grade, short, note",
    ],
    gives: [
      [
        "Hive",
        "Frames of bees",
        "Bees",
        "Brood, full frames",
        "Brood, combs",
        "Grade",
        "Frames short",
        "Note",
      ],
      ["S01", 8.5, 20400, 2, 4, "Standard", 1.5, ""],
      ["S02", 0, 0, 0, 0, "dead-out", 6, ""],
      [
        "S03",
        10.5,
        25200,
        3,
        5,
        "Prime",
        "",
        "the cell holds a date, 8 Jul 2026: read back as 7-8",
      ],
      [
        "S04",
        VALUE,
        VALUE,
        VALUE,
        VALUE,
        VALUE,
        VALUE,
        '"Bees top box", row 5: "sevn" is not understood: a count such as 7, 7-8, 7½, about 7, 12+, half, none or dead was expected',
      ],
      ["", "", "", "", "", "", "", ""],
      ["S05", "", "", "", "", "", "", "not opened"],
    ],
    known: "by hand: 3.5 + 5 = 8.5, x 2,400; 4 at 50 %; 7.5 + 3 = 10.5, 5 at 60 %",
  },
];
