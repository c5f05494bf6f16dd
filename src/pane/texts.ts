import { plural } from "../core/plural.js";

/** All that the pane says, in one place to be translated. A text with gaps is a function. */
export const texts = {
  title: "Comb Tally",
  views: {
    contract: "Contract",
    whatIf: "What if",
    columns: "Columns",
    statement: "Statement",
    convert: "Convert",
    eye: "Eye",
    start: "Start",
    about: "About",
  },
  waiting: "Reading the workbook…",
  holdsError: (code: string) => `a cell holds ${code}`,
  notRead: {
    before: "What stands below is as it was read before.",
    again: "Read again",
  },
  fault: (message: string) => `A fault in Comb Tally: ${message}`,
  takeBack: "Take back",
  tookBack: "Taken back: the sheet is as it was.",
  host: {
    noExcel:
      "This page is the pane of an Excel add-in, and Excel is not around it. " +
      "In Excel, add Comb Tally from Home > Add-ins, then open it from the Home tab.",
  },
  contract: {
    none:
      "No Terms table is in this workbook yet: a table whose first cell is Term, with a term a row " +
      "and a contract a column. Start makes one.",
    which: "Contract",
    gone: "The contract that was chosen is no longer there: this is another.",
    of: (name: string, table: string) => `${name} (${table})`,
    choice: (name: string, isEdited: boolean) => (isEdited ? `${name}, changes not saved` : name),
    problems: "Every formula refuses these terms until this is put right in the sheet:",
    noTerm: (cell: string, why: string) => `${cell}: ${why}`,
    twice: (cell: string, label: string, first: string) =>
      `${cell}: the term "${label}" stands twice, first in ${first}`,
    unread: (place: string, why: string) => `${place}: ${why}`,
    groups: {
      strength: "Strength",
      brood: "Brood, queen, stores",
      pay: "Pay",
      inspection: "Inspection and sampling",
      actions: "What to do with a hive",
      writing: "How figures are written",
    },
    grades: "Grades, best first",
    gradesHow:
      "Each with a name of your own and the least frames and brood it asks. A schedule of pay by " +
      "frames is the same with more grades.",
    gradeAbout: {
      name: "Name: a word of your own, another for each grade.",
      frames: "Frames: the least frames of bees.",
      brood: "Brood: the least brood, in the contract’s measure.",
      fee: "Fee: what is paid for a hive of this grade.",
    },
    gradeParts: { name: "Name", frames: "Frames", brood: "Brood", fee: "Fee" },
    grade: (n: number) => `Grade ${n}`,
    addGrade: "Add a grade",
    up: (n: number) => `Move grade ${n} up`,
    down: (n: number) => `Move grade ${n} down`,
    remove: (n: number) => `Remove grade ${n}`,
    moveUp: "Up",
    moveDown: "Down",
    takeAway: "Remove",
    leftOut: "left out",
    limits: (least: string, most: string, unit: string) => `${least} to ${most} ${unit}.`,
    money: "in your currency",
    degrees: (unit: string) => `degrees ${unit}`,
    overFormula: (cell: string, label: string) =>
      `${cell} holds a formula, and ${label} would go over it: nothing is saved. Undo that change, or write the value itself into ${cell} first.`,
    asText: (text: string) => `“${text}” as text`,
    formula: "A formula stands in this cell: change it in the sheet.",
    contradiction: "The terms contradict each other:",
    faults: (count: number) =>
      count === 1 ? "One term cannot be read." : `${count} terms cannot be read.`,
    review: "Changes to save",
    noChanges: "Nothing is changed.",
    change: (label: string, was: string, now: string) => `${label}: ${was} → ${now}`,
    save: "Save to the sheet",
    drop: "Undo my changes",
    saved: (name: string, count: number) =>
      count === 1 ? `${name}: one term saved.` : `${name}: ${count} terms saved.`,
    behind:
      "This contract was changed in the sheet while you edit here. Your changes are kept, and nothing is saved " +
      "until it is read again.",
    held: "The contract was changed in the sheet: read it again above before you save.",
    againWith: "Read again, keep my changes",
    again: "Read again, without my changes",
    fresh: "New contract",
    freshName: "Its name",
    freshFrom: "Begin from",
    copies: "A copy of",
    standards: "A published standard",
    begin: "Begin",
    nameNeeded: "A name is needed that no contract here has.",
    caution:
      "A published standard is a starting point. The signed contract and local rules come first.",
    source: (source: string, remark: string) => `${source}: ${remark}`,
  },
  whatIf: {
    lot: "Lot",
    size: "Hives in the lot",
    sizeHow:
      "Opened or not. Left blank, those in the sheet are all. Move a threshold by its handle, with the " +
      "arrow keys, or by typing: nothing is written until you save.",
    minimum: "minimum",
    average: "average",
    grade: (n: number) => `grade ${n}`,
    chart: (hives: number) =>
      `Frames of bees of ${plural(hives, "hive")}, with the contract’s thresholds`,
    bar: (hives: number, from: number) =>
      `${plural(hives, "hive")} from ${from} to under ${plural(from + 1, "frame")}`,
    framesOf: (frames: string) => plural(frames, "frame"),
    byContract: "By the contract",
    met: "met",
    notMet: "not met",
    averageIs: (average: string, asked: string) =>
      `average ${average} of ${plural(asked, "frame")} asked`,
    averageAlone: (average: string) => `average ${plural(average, "frame")}, none asked`,
    noneCounts: "no hive counts in the average",
    under: (under: number, opened: number) =>
      `${under} of ${plural(opened, "hive")} under the minimum`,
    underForgiven: (isForgiven: boolean) => (isForgiven ? ": forgiven" : ": too many"),
    underAre: (remark: string) => ` (${remark})`,
    howSure: "How sure",
    interval: (low: string, high: string) =>
      `The whole lot’s average lies from ${low} to ${plural(high, "frame")}, 95 %.`,
    chance: (percent: string) =>
      `Chance that the whole lot’s average reaches what is asked: ${percent} %.`,
    chanceAlone: (isForgiven: boolean) =>
      "It is of the average alone" +
      (isForgiven
        ? ", not of the hives under the minimum."
        : ": by the hives opened the load is rejected for those under the minimum."),
    allOpened: "Every hive was opened: the average is the lot’s own, as judged by eye.",
    hives: "Hives opened, by grade",
    pay: "Pay",
    payOf: (pay: string, currency: string) => (currency === "" ? pay : `${pay} ${currency}`),
    caution: "By eye, and by these terms. The signed contract and local rules come first.",
    remark: (said: string) => `In the sheet, rows counted from the headings as row 1: ${said}.`,
    ahead: "The weeks ahead",
    asked: (frames: string) => `${frames} asked`,
    aheadLabel: (date: string, middle: string, low: string, high: string) =>
      `Forecast of the lot’s average: ${plural(middle, "frame")} on ${date}, nine in ten from ${low} to ${high}`,
    aheadRow: (date: string, middle: string, low: string, high: string, chance: string) =>
      `${date}: ${plural(middle, "frame")} (${low} to ${high})${chance === "" ? "" : `, chance of the average asked ${chance} %`}`,
    aheadHow:
      "From today’s bees and brood, as far as the brood of today goes: LOT_FORECAST goes on with the " +
      "laying that you give it. The band holds nine lots in ten of field studies from March to October, " +
      "but only two of the five hives seen in March and April, which grew faster; none were of " +
      "pollination loads.",
  },
  columns: {
    sheet: "Yard sheet",
    none:
      "No yard sheet is in this workbook yet. It is a sheet or a table with one hive a row and a heading " +
      "over each column, such as Hive, Frames of bees, Brood. Start makes a blank one.",
    gone: "The yard sheet that was chosen is no longer there. Choose another.",
    choose: "choose a sheet",
    kinds: { table: "table", name: "name", sheet: "sheet" },
    candidate: (name: string, kind: string, range: string) => `${name} (${kind}, ${range})`,
    noHives: "No hive is written under these headings yet.",
    hives: (count: number) =>
      count === 1 ? "1 hive is written here." : `${count} hives are written here.`,
    holds: "What the columns hold",
    holdsHow:
      "Each column is known by its heading, here and in every function. If one is taken for the wrong " +
      "thing, say what it holds: its heading is then changed, and you see how before it is.",
    column: "Column",
    takenFor: "Taken for",
    example: (value: string) => `such as ${value}`,
    empty: "empty",
    noHeading: (letter: string) => `column ${letter}, no heading`,
    takenForOf: (heading: string) => `What ${heading} holds`,
    roles: {
      hive: "hive",
      lot: "lot",
      pallet: "pallet",
      date: "day it was opened",
      bees: "frames of bees",
      "seams above": "seams from above",
      "seams below": "seams from below",
      brood: "brood",
      "brood cover": "percent of brood",
      queen: "laying queen",
      stores: "stores",
      contract: "contract",
      notes: "notes",
    } as Readonly<Record<string, string>>,
    broodAs: {
      covered: "Counted as combs that hold brood, with their percent.",
      combs:
        "Counted as combs that hold brood; their full frames are not known without their percent.",
      contract: "Counted as the contract counts brood: in full frames, or in combs that hold it.",
    },
    yours: "your own, left alone",
    say: "say what it holds…",
    asked: {
      doubt: (heading: string, role: string) => `“${heading}” may hold ${role}, or something else.`,
      calculated: (heading: string, role: string) =>
        `“${heading}” is calculated, and would be added to your other columns of ${role}. If it is their sum, ` +
        "say that it is your own.",
      "names no box": (heading: string, role: string) =>
        `“${heading}” names no box, and would be added to your other columns of ${role}. If it is their sum, ` +
        "or another look, say that it is your own.",
      "another look": (heading: string, role: string) =>
        `“${heading}” is another look at a box whose ${role} stand beside it. Say which of them is your own.`,
      "their sum": (heading: string, role: string) =>
        `“${heading}” is the sum of your other columns of ${role} in every row. If it is their total, say ` +
        "that it is your own.",
    },
    renameFirst: "Change the headings above first: the columns are worked out by them.",
    sayFirst: (heading: string) => `First say above what “${heading}” holds.`,
    rename: "Change the headings",
    renames: "These headings will be changed:",
    becomes: (cell: string, from: string, to: string) => `${cell}: “${from}” becomes “${to}”`,
    renamed: (count: number) => (count === 1 ? "1 heading changed." : `${count} headings changed.`),
    dates: "Counts that became dates",
    datesHow:
      "A spreadsheet makes a date of 7-8 as you type it. These counts are read rightly as they stand; " +
      "put back as text, you can read them too.",
    dateCell: "Cell",
    dateHolds: "Holds",
    dateBack: "Put back",
    repair: (count: number) => (count === 1 ? "Put it back as text" : `Put ${count} back as text`),
    repaired: (count: number) =>
      count === 1 ? "1 count is text again." : `${count} counts are text again.`,
    left: "Left as they are, since they could mean two things or nothing:",
    leftCell: (cell: string, holds: string, why: string) => `${cell}, ${holds}: ${why}`,
    more: (count: number) => `and ${count} more`,
    rowsFrom: (row: number) =>
      `(Rows are counted from the headings as row 1, which stand in row ${row} of the sheet.)`,
    add: "Columns to add",
    contract: "Under the contract",
    contracts: {
      terms: "In this workbook",
      "by row": "Row by row",
      standard: "Published standards",
    },
    byRow: "as the sheet’s Contract column says",
    standardCaution: "A published standard is a starting point: your signed contract comes first.",
    which: "Which columns",
    noneChosen: "Choose at least one column.",
    where: "Where",
    beside: "beside the sheet, one formula for all rows",
    inside: "as columns of the sheet, one formula a row",
    insideTable: "as columns of the table, one formula a row",
    besideHow:
      "One column stays empty between. Hives added under the last row are taken in only where the sheet is a table or has a name; else write the columns anew.",
    insideHow: (rows: number) =>
      `For up to ${rows.toLocaleString("en")} rows, since each is a call of its own. A hive with nothing written for its bees stays blank here: ` +
      "write none or dead. Frame size and the way figures are written are those of the contract as it is now.",
    obstacles: {
      rows: (most: number) =>
        `The sheet has more than ${most.toLocaleString("en")} rows, and one formula a row would make it slow: write them beside the sheet.`,
      seams:
        "This sheet is graded by its seams, which only the formula for the whole sheet can do.",
      apart:
        "The columns of the boxes do not stand next to each other, and a formula for one row needs them so: " +
        "write them beside the sheet, or move your columns together.",
      headings:
        "A heading asks whether the queen was seen, or counts combs that hold brood without their percent, " +
        "which only the formula for the whole sheet reads.",
      frames:
        "The headings name frames of other sizes than the contract’s, which only the formula for the whole sheet reads.",
    },
    notInside: (columns: string) => `These come only beside the sheet: ${columns}.`,
    differ: (rows: string) =>
      `Row by row some hives come out otherwise than beside the sheet, mostly where bees or brood were left blank: row ${rows}.`,
    at: "First cell",
    useChosen: "Use the chosen cell",
    back: "Back beside the sheet",
    filled: (place: string, address: string, holds: string) =>
      `They would go to ${place}, but ${address} holds “${holds}”. Give another cell, or clear that one.`,
    filledInside: (place: string, address: string, holds: string) =>
      `They would go to ${place}, but ${address} holds “${holds}”. Clear it, or write them beside the sheet.`,
    inTable: (place: string, table: string, range: string) =>
      `They would go to ${place}, which is in the table ${table} (${range}), and a table takes no spill. Give another cell.`,
    onYard: (place: string, range: string) =>
      `They would go to ${place}, over the yard sheet itself (${range}). Give another cell.`,
    edge: "They would go over the edge of the sheet. Give another cell.",
    notInLine:
      "They will not stand in line with their hives: the formula begins in another row than the headings.",
    stand: (place: string) =>
      `They stand in ${place}, and are calculated anew with every change of the sheet.`,
    willGo: (place: string) => `They go to ${place}, where every cell is free.`,
    preview: "The first rows, as they will be",
    write: "Write the columns",
    written: (place: string, columns: number) =>
      columns === 1 ? `1 column written to ${place}.` : `${columns} columns written to ${place}.`,
    cannot: (why: string) => `They cannot be worked out yet: ${why}.`,
  },
  statement: {
    how:
      "A sheet on one lot for the grower, to be printed and signed: the verdict, how sure it is, the " +
      "pay, the terms, the hives opened and a chart. It holds values alone, so that it opens the same " +
      "for someone without Comb Tally.",
    sheetName: (lot: string | null) => (lot === null ? "Statement" : `Statement ${lot}`),
    lot: "Lot",
    wholeSheet: "all hives of the sheet",
    size: "Hives in the lot",
    sizeHow:
      "Hives in the lot, opened or not: left blank, those that stand in the sheet are the whole lot.",
    delivered: "Hives that came",
    deliveredHow:
      "Hives that came: only where fewer came than were agreed; the hives in the lot are then those agreed.",
    parties: "Who it is between",
    beekeeper: "Beekeeper",
    grower: "Grower",
    partiesHow: "A name left blank is a line to write on.",
    pickedLegend: "How the hives were picked",
    picked: "In your words",
    one: "Word of one party",
    other: "Word of the other",
    pickedHow: "The words are those given to PICK_HIVES. Left blank, there is a line to write on.",
    paper: "Paper",
    papers: { letter: "Letter", a4: "A4" },
    preview: "What it will say",
    wholeNumber: (label: string, given: string) =>
      `${label}: a whole number from 1 on was expected, not “${given}”.`,
    cannot: (why: string) => `No statement yet: ${why}.`,
    caution:
      "By eye, and by these terms. The signed contract and local law come first: both parties check the " +
      "figures before they sign or pay.",
    make: "Make the statement",
    added: (sheet: string, without: readonly ("chart" | "page")[]) =>
      [
        `The statement is on a new sheet, ${sheet}.`,
        ...without.map((part) => texts.statement.leftOut[part]),
      ].join(" "),
    leftOut: {
      chart: "This Excel could not draw its chart; the figures for one stand right of the page.",
      page: "This Excel could not set up its page: look at the print preview before you print.",
    },
  },
  convert: {
    what: "Convert",
    how: "Write figures as you say them: 7-8, half, about 5, 60%.",
    names: {
      cover: "part of a comb side into cells or bees",
      patch: "a patch of brood into cells",
      frames: "frames of bees into bees",
      stage: "stage of brood into its days",
      weight: "pounds of bees into bees, and back",
    } as Readonly<Record<string, string>>,
    fields: {
      cover: "Part of the side that is covered, percent",
      frame: "Frame",
      caste: "Caste",
      length: "Length of the patch",
      width: "Width of the patch",
      unit: "Measured in",
      shape: "Shape",
      frames: "Frames of bees",
      perFrame: "How well they are covered",
      day: "Seen on",
      stage: "Stage",
      amount: "Amount",
      from: "From",
      to: "Into",
    } as Readonly<Record<string, string>>,
    answers: {
      cells: "Cells on that side",
      percent: "Percent of the side",
      bees: "Bees",
      emerges: "Emerges",
      laid: "Was laid",
      amount: "Makes",
    } as Readonly<Record<string, string>>,
    range: (low: string, high: string) => `${low} to ${high}`,
    from: (low: string) => `${low} or more`,
    until: (high: string) => `${high} or before`,
    picture: (percent: string, frame: string) =>
      `One side of a ${frame} comb, ${percent} percent of it covered`,
    put: "Put the formula into the chosen cell",
    putAbout: (answer: string) => `Put the formula into the chosen cell: ${answer}`,
    filled: (cell: string, holds: string) =>
      `${cell} holds “${holds}”, and is left as it is. Choose an empty cell.`,
    written: (cell: string) => `The formula is in ${cell}.`,
  },
  eye: {
    train: "Train the eye",
    how:
      "Judge each comb as you would at the hive, as a percent or as you say it: 60, half, about 40%. After " +
      "twenty you learn how your eye misses. It is for you alone: nothing is kept or sent.",
    kind: "Judge",
    kinds: { bees: "bees on a comb", brood: "capped brood" },
    ask: {
      bees: "How much of this side is under bees?",
      brood: "How much of this side holds capped brood?",
    },
    comb: (n: number, of: number) => `Comb ${n} of ${of}, to be judged by eye`,
    at: (n: number, of: number) => `Comb ${n} of ${of}.`,
    say: "Say so",
    next: "Next comb",
    again: "Start again",
    told: (said: string, was: string) => `You said ${said} %. It was ${was} %.`,
    result: "Your eye",
    bias: (much: string, isMore: boolean, low: string, high: string) =>
      `Bias: on the average you said ${plural(much, "point")} of percent ${isMore ? "more" : "less"} than there was ` +
      `(95 %: from ${low} to ${high}, under 0 being less).`,
    high: "You judge high: look longer at the bare parts.",
    low: "You judge low: look again for strays and thin edges.",
    chance: "That may be chance.",
    spread: (spread: string, error: string) =>
      `Spread: ${plural(spread, "point")}, give or take ${error}. About two in three of your misses lie within that of your bias.`,
    plot: "Each comb: what you said against what it was, with the line on which both are equal",
    was: "it was, %",
    said: "you said, %",
    caution: "Of drawings on a screen. At the hive bees move and the light is poorer.",
    guide: "Comb pictures to print and take to the yard",
    judges: "Two judges",
    judgesHow:
      "Two people judge the same hives, ten or better twenty, each without the other’s figures. What their averages differ " +
      "by is the observer error of the contract’s terms.",
    from: "Their figures are in",
    typed: "typed here",
    judge: ["First judge", "Second judge"] as const,
    choose: "choose its column…",
    same: "Both judges have the same column: choose two.",
    hive: "Hive",
    judged: (hive: number, judge: string) => `Hive ${hive}, ${judge}`,
    sure: (hives: number) =>
      (hives < 10 ? `From ${plural(hives, "hive")} alone: judge ten or more. ` : "") +
      "How sure it is, is in it: the fewer the hives and the less alike the differences, the larger it comes out.",
    contract: "Write it into",
    agree: "A signed contract is changed only by those who signed it.",
  },
  start: {
    yard: "A blank yard sheet",
    yardName: "Yard",
    yardHow:
      "One hive a row, with columns for its lot and pallet, the bees in each box, brood, queen and stores. " +
      "The cells for counts are text, so that 7-8 stays 7-8 and does not become a date. Change the headings to " +
      "your own boxes; leave out what you do not judge.",
    countLine:
      "One hive a row. Write counts as you say them: 7, 7-8, 7½, about 5, half, 8+, none; dead for a dead hive. " +
      "A blank is a hive that was not opened.",
    terms: "The terms of your contracts",
    termsSheet: "Contracts",
    termsName: "Terms",
    termsHow: (name: string) =>
      `A table with a term a row and a contract a column. Formulas call it ${name}, and every grade follows when a term is changed.`,
    hasTerms: (name: string) =>
      `This workbook has Terms already, and they stay as they are; the new ones will be called ${name}. ` +
      "To add a contract to those that you have, go to Contract.",
    from: "Begin from",
    standards: "Published standards",
    invented: "Invented",
    demoTerms: "the demo’s contracts, Cherry and Pear",
    inventedTerms:
      "Two contracts made up for the demo, with grades and fees to be replaced by your own.",
    source: (source: string, remark: string) =>
      `Source: ${source}.${remark === "" ? "" : ` ${capital(remark)}.`}`,
    caution: "These are places to start from: the contract you signed and local rules come first.",
    closing: (source: string) =>
      `Begun from: ${source}. The contract you signed and local rules come first.`,
    demo: "The demo",
    lotsName: "Lots",
    demoHow:
      "An invented outfit: 60 hives of three lots that wintered apart, opened on their way into cherries, with their " +
      "grades, two contracts, and what each lot settles at.",
    add: (sheet: string) => `Add the sheet ${sheet}`,
    added: (sheet: string) => `The sheet ${sheet} is added at the end.`,
    addAll: (...sheets: readonly string[]) => `Add the sheets ${sheets.join(", ")}`,
    addedAll: (...sheets: readonly string[]) =>
      `The sheets ${sheets.join(", ")} are added at the end.`,
  },
  about: {
    how: (namespace: string) => `Type =${namespace}. in a cell, and the functions are listed.`,
    cautions: "Before you rely on it",
    cautionList: [
      "Strength is judged by eye: two people who open the same hive may differ.",
      "The signed contract and local rules come first. Published standards are starting points, and " +
        "what is paid is settled between the two who signed.",
      "A forecast, or a verdict on a lot, is only as sure as it says.",
      "Bees sting: open hives with help near, and adrenaline at hand where anyone may react.",
      "Lift with care, and mind the smoker in dry grass.",
      "Moving bees over a border may need a permit or an inspection. Disease is your apiary inspector’s to name.",
    ],
    functions: "Functions",
    reading: "The list is being read…",
    unread:
      "The list could not be read. The functions may work all the same; " +
      "to see them here, close the pane and open it again.",
    nothingSent:
      "Nothing that you type leaves this machine: the add-in works it out where you sit, and sends nothing anywhere.",
    sources: "Where the figures come from",
    sourcesHow: (count: number) => `The ${count} figures that Comb Tally works with`,
    constant: (name: string, value: string, unit: string) => `${name}: ${value} ${unit}`,
    knownFrom: (source: string, known: string) => (known === "" ? source : `${source} (${known})`),
    known: {
      read: "read in the source",
      retold: "retold by another text",
      worked: "worked out from values that were read",
      // The source says it already.
      practice: "",
      memory: "from memory",
      fitted: "fitted to data",
    } as Readonly<Record<string, string>>,
    version: (version: string) => `Version ${version}`,
    help: "Help",
  },
};

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
