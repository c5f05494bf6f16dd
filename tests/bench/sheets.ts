/** Yard sheets of any length, the same each time: what a column of counts, of texts, of dates holds. */
export const COUNTS = ["7-8", "7½", "about 5", 6, 8, "5 full", 46211, "none", "12+", "6 1/2"];

export function numberColumn(hives: number): number[][] {
  return Array.from({ length: hives }, (_, i) => [1 + ((i * 7) % 12)]);
}

export function writtenColumn(hives: number): (string | number)[][] {
  return Array.from({ length: hives }, (_, i) => [COUNTS[i % COUNTS.length]!]);
}

/** The cover of ten comb sides a hive. */
export function coverBlock(hives: number): number[][] {
  return Array.from({ length: hives }, (_, i) =>
    Array.from({ length: 10 }, (_, k) => 1 + ((i * 7 + k * 13) % 100)),
  );
}

export function yardBlock(hives: number): (string | number)[][] {
  const headings = [
    "Hive",
    "Lot",
    "Bees top box",
    "Bees bottom box",
    "Brood combs",
    "Brood %",
    "Queen",
  ];
  const rows = Array.from({ length: hives }, (_, i) => [
    `H${i}`,
    `L${i % 3}`,
    COUNTS[i % COUNTS.length]!,
    3 + (i % 5),
    2 + (i % 5),
    50 + (i % 40),
    "yes",
  ]);
  return [headings, ...rows];
}

/** The same, all of one lot. */
export function oneLotBlock(hives: number): (string | number)[][] {
  return yardBlock(hives).map((row, i) => (i === 0 ? row : [row[0]!, "L0", ...row.slice(2)]));
}

/** Hives on pallets of four; of the pallets one in `every` is opened and listed. */
export function palletBlock(hives: number, every: number): (string | number)[][] {
  const rows = Array.from({ length: hives / 4 }, (_, p) =>
    p % every > 0
      ? []
      : [0, 1, 2, 3].map((h) => [
          `H${p}-${h}`,
          `L${Math.floor((3 * 4 * p) / hives)}`,
          `P${p}`,
          4 + ((p * 29 + h * 13) % 19) / 2,
        ]),
  );
  return [["Hive", "Lot", "Pallet", "Frames of bees"], ...rows.flat()];
}

export const TERMS: (string | number)[][] = [
  ["Term", "Cherry"],
  ["average frames", 8],
  ["minimum frames", 6],
  ["brood", 1],
  ["laying queen", "yes"],
  ["grade 1 name", "Prime"],
  ["grade 1 frames", 10],
  ["grade 2 name", "Standard"],
  ["grade 2 frames", 8],
  ["grade 3 name", "Light"],
  ["grade 3 frames", 6],
];

export const FRAMES_ONLY = TERMS.filter(([term]) => term !== "brood" && term !== "laying queen");
export const LOT_TERMS = [...TERMS, ["grade 1 fee", 68], ["grade 2 fee", 60], ["grade 3 fee", 45]];
/** A range that is left out. */
export const NONE = undefined as unknown as unknown[][];
