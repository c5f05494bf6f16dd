/**
 * Makes the demo: `npm run examples` writes cherry-and-pear.xlsx, calculated by the command line;
 * shed-cherry-statement.xlsx, the statement on one of its lots; and foothill.csv, the foothill lot as
 * a spreadsheet saves it. The same bytes each time.
 */
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { Workbook } from "@cj-tech-master/excelts";
import { DROPS, HEADINGS, OLDEST, ORCHARD, rows, SIZES, TERMS } from "./yard.mjs";

const here = fileURLToPath(new URL(".", import.meta.url));
const SAVED_ON = new Date(Date.UTC(2026, 2, 29));
const BOLD = { bold: true };

const workbook = new Workbook();
workbook.creator = "Comb Tally demo";
workbook.created = SAVED_ON;
workbook.modified = SAVED_ON;

const spill = (ref, formula) => ({ formula, ref, shareType: "array", isDynamicArray: true });
const last = rows.length + 1;

function addYard() {
  const sheet = workbook.addWorksheet("Yard", {
    views: [{ state: "frozen", xSplit: 1, ySplit: 1 }],
  });
  const headings = sheet.addRow(HEADINGS);
  headings.font = BOLD;
  headings.height = 30;
  for (const cells of rows) {
    const row = sheet.addRow(
      cells.map((cell) => (cell === "" ? null : (cell.day ?? cell.date ?? cell))),
    );
    row.getCell(4).numFmt = "d-mmm-yy";
    cells.forEach((cell, k) => {
      if (k > 3 && k < 8) row.getCell(k + 1).numFmt = cell.date ? "d-mmm" : "@";
    });
  }
  sheet.getCell("M1").value = spill("M1", `COMB.YARD_COLUMNS(A1:K${last},Terms,"Cherry")`);
  sheet.getCell("U1").value = "Grade, pear";
  sheet.getCell("U2").value = spill(
    "U2",
    `COMB.GRADE(E2:F${last},Terms,"Pear",G2:G${last},H2:H${last},I2:I${last})`,
  );
  for (const address of ["M1", "N1", "O1", "P1", "Q1", "R1", "S1", "U1"])
    sheet.getCell(address).font = BOLD;
  headings.eachCell((cell) => (cell.alignment = { wrapText: true, vertical: "top" }));
  const widths = [7, 9, 7, 11, 13, 15, 12, 9, 13, 15, 34, 3, 14, 9, 16, 13, 10, 13, 60, 3, 12];
  widths.forEach((width, k) => (sheet.getColumn(k + 1).width = width));
}

function addTerms() {
  const sheet = workbook.addWorksheet("Terms", { views: [{ state: "frozen", ySplit: 1 }] });
  TERMS.forEach((cells) => sheet.addRow(cells.map((cell) => (cell === "" ? null : cell))));
  sheet.getRow(1).font = BOLD;
  [26, 12, 12, 70].forEach((width, k) => (sheet.getColumn(k + 1).width = width));
  workbook.definedNames.add(`Terms!$A$1:$D$${TERMS.length}`, "Terms");
}

/** What the beekeeper counts with the spreadsheet's own functions, beside ours. */
function addLots() {
  const sheet = workbook.addWorksheet("Lots");
  const grades = ["Prime", "Standard", "Light", "no grade", "dead-out"];
  const headings = ["Lot", "Hives opened", "Mean frames", ...grades, "Fees of hives opened"];
  sheet.addRow(headings).font = BOLD;
  ["Shed", "Foothill", "Coast"].forEach((lot, i) => {
    const r = i + 2;
    const lots = `Yard!$B$2:$B$${last}`;
    const count = (k) => ({
      formula: `COUNTIFS(${lots},$A${r},Yard!$Q$2:$Q$${last},${"DEFGH"[k]}$1)`,
    });
    sheet.addRow([
      lot,
      { formula: `COUNTIFS(${lots},A${r})` },
      { formula: `AVERAGEIFS(Yard!$M$2:$M$${last},${lots},A${r})` },
      ...grades.map((_, k) => count(k)),
      {
        formula:
          `D${r}*INDEX(Terms!$B:$B,MATCH("grade 1 fee",Terms!$A:$A,0))` +
          `+E${r}*INDEX(Terms!$B:$B,MATCH("grade 2 fee",Terms!$A:$A,0))` +
          `+F${r}*INDEX(Terms!$B:$B,MATCH("grade 3 fee",Terms!$A:$A,0))`,
      },
    ]);
    sheet.getCell(`C${r}`).numFmt = "0.0";
  });
  sheet.getCell("A7").value = "What if";
  sheet.getCell("A7").font = BOLD;
  sheet.getCell("A8").value = "7-8";
  sheet.getCell("B8").value = { formula: 'COMB.GRADE(A8,Terms,"Cherry",4,60,"yes")' };
  sheet.getCell("C8").value = { formula: "COMB.BEES(A8)" };
  sheet.getCell("A9").value = "8-9";
  sheet.getCell("B9").value = { formula: 'COMB.GRADE(A9,Terms,"Cherry",4,60,"yes")' };
  sheet.getCell("C9").value = { formula: "COMB.BEES(A9)" };
  [10, 13, 12, 8, 10, 8, 10, 10, 20].forEach((width, k) => (sheet.getColumn(k + 1).width = width));
}

const ALL_HIVES = `Yard!$A$1:$K$${last}`;
const ofLot = (contract, lot) => `${SIZES[lot]},Terms,"${contract}","${lot}"`;

/** Each lot under one contract, side by side, as a grower would read it. */
function addContract(contract) {
  const sheet = workbook.addWorksheet(contract);
  Object.keys(SIZES).forEach((lot, k) => {
    const address = `${"AEI"[k]}1`;
    sheet.getCell(address).value = spill(address, `COMB.LOT(${ALL_HIVES},${ofLot(contract, lot)})`);
    [34, 12, 50, 3].forEach((width, c) => (sheet.getColumn(4 * k + c + 1).width = width));
  });
}

/** What is asked next of the lot that is near its line. */
function addQuestions() {
  const sheet = workbook.addWorksheet("Foothill");
  const of = ofLot("Cherry", "Foothill");
  const ask = (row, title, formula) => {
    sheet.getCell(`A${row}`).value = title;
    sheet.getCell(`A${row}`).font = BOLD;
    sheet.getCell(`A${row + 1}`).value = spill(`A${row + 1}`, formula);
  };
  ask(
    1,
    "Chance that the whole lot reaches the average",
    `COMB.LOT_CHANCE(${ALL_HIVES},${of},"all")`,
  );
  ask(
    4,
    "Hives to open for a margin of half a frame",
    `COMB.TO_OPEN(0.5,${SIZES.Foothill},,${ALL_HIVES},Terms,"Cherry","Foothill")`,
  );
  ask(
    13,
    "What if the average asked were",
    `COMB.WHAT_IF(${ALL_HIVES},"average frames",N14:N17,${of})`,
  );
  [7, 7.5, 8, 8.5].forEach((value, i) => (sheet.getCell(`N${14 + i}`).value = value));
  ask(
    20,
    "The lots against each other",
    `COMB.COMPARE(Yard!B2:B${last},Yard!E2:F${last},Yard!G2:G${last})`,
  );
  for (let k = 1; k <= 14; k++) sheet.getColumn(k).width = k === 1 ? 18 : 14;
}

/** Days that count, as the workbook numbers them: 1 April, and full bloom on 10 April 2026. */
const INSPECTION = 46113;
const FULL_BLOOM = 46122;

/** How the lots will stand when it counts, and which of them began to rear first. */
function addBloom() {
  const sheet = workbook.addWorksheet("Bloom");
  const dates = (address) => (sheet.getCell(address).numFmt = "d-mmm-yy");
  Object.keys(SIZES).forEach((lot, i) => {
    const row = 1 + 5 * i;
    sheet.getCell(`A${row}`).value = `${lot}: by the inspection, and by full bloom`;
    sheet.getCell(`A${row}`).font = BOLD;
    const ask = `COMB.LOT_FORECAST(${ALL_HIVES},$L$2:$L$3,${ofLot("Cherry", lot)})`;
    sheet.getCell(`A${row + 1}`).value = spill(`A${row + 1}`, ask);
    [row + 2, row + 3].forEach((r) => dates(`A${r}`));
  });
  sheet.getCell("L1").value = "Days that count";
  sheet.getCell("L1").font = BOLD;
  [INSPECTION, FULL_BLOOM].forEach((day, i) => {
    sheet.getCell(`L${i + 2}`).value = day;
    dates(`L${i + 2}`);
  });
  const oldest = rows.filter((row) => row[0] in OLDEST).map((row) => [...row.slice(0, 2), row[3]]);
  sheet.getCell("A17").value = "Which lot began to rear first";
  sheet.getCell("A17").font = BOLD;
  ["Hive", "Lot", "Seen", "Oldest brood"].forEach((heading, k) => {
    sheet.getCell(`${"NOPQ"[k]}1`).value = heading;
    sheet.getCell(`${"NOPQ"[k]}1`).font = BOLD;
  });
  oldest.forEach(([hive, lot, { day }], i) => {
    const cells = [hive, lot, day, OLDEST[hive]];
    cells.forEach((cell, k) => (sheet.getCell(`${"NOPQ"[k]}${i + 2}`).value = cell));
    dates(`P${i + 2}`);
  });
  const end = oldest.length + 1;
  sheet.getCell("A18").value = spill(
    "A18",
    `COMB.DAYS_AHEAD(O2:O${end},P2:P${end},Q2:Q${end},"Shed")`,
  );
  [19, 20, 21].forEach((r) => ["C", "D"].forEach((c) => dates(`${c}${r}`)));
  [20, 12, 16, 16, 16, 16, 18, 20, 60].forEach((w, k) => (sheet.getColumn(k + 1).width = w));
}

/** What the hives are to get, how many the orchard takes, and where they go. */
function addPlacing() {
  const sheet = workbook.addWorksheet("Placing");
  const put = (row, title, cells) => {
    sheet.getCell(`A${row}`).value = title;
    sheet.getCell(`A${row}`).font = BOLD;
    cells.forEach((cell, k) => (sheet.getRow(row + 1).getCell(k + 1).value = cell));
  };
  put(1, "Hives that the cherry orchard takes: acres, hives, low, high", [
    ORCHARD.acres,
    { formula: 'COMB.HIVES_NEEDED(A2,"cherry")' },
    { formula: 'COMB.HIVES_NEEDED(A2,"cherry",,,,,"low")' },
    { formula: 'COMB.HIVES_NEEDED(A2,"cherry",,,,,"high")' },
  ]);
  put(4, "Loads, by space and by weight", [ORCHARD.hiveWeight, ORCHARD.payload]);
  const hives = Object.values(SIZES).reduce((sum, size) => sum + size, 0);
  sheet.getCell("A6").value = spill("A6", `COMB.LOADS(${hives},A5,B5)`);
  const asked = 13;
  put(
    12,
    "Drops: name, hives, least average asked; lot, hives, gallons of syrup for those opened",
    [],
  );
  DROPS.forEach(([name, hives, least], i) => {
    sheet.getRow(asked + i).values = [name, hives, least || null];
  });
  Object.entries(SIZES).forEach(([lot, hives], i) => {
    sheet.getCell(`E${asked + i}`).value = lot;
    sheet.getCell(`F${asked + i}`).value = hives;
    sheet.getCell(`G${asked + i}`).value = {
      formula: `SUMIFS(S2:S${rows.length + 1},Yard!B2:B${rows.length + 1},E${asked + i})`,
    };
  });
  const end = asked + DROPS.length - 1;
  const last = asked + Object.keys(SIZES).length - 1;
  const of = (part) =>
    `COMB.DROPS(${ALL_HIVES},B${asked}:B${end},Terms,"Cherry",E${asked}:E${last},F${asked}:F${last},` +
    `A${asked}:A${end},C${asked}:C${end},,,"${part}")`;
  put(end + 2, "Where the pallets go", []);
  sheet.getCell(`A${end + 3}`).value = spill(`A${end + 3}`, of("drops"));
  const list = end + 3 + DROPS.length + 3;
  put(list - 1, "The list to load by", []);
  sheet.getCell(`A${list}`).value = spill(`A${list}`, of("list"));
  sheet.getCell("M1").value = spill(
    "M1",
    `COMB.YARD_COLUMNS(${ALL_HIVES},Terms,"Cherry","hive, lot, action, reason")`,
  );
  sheet.getCell("R1").value = "Stores, lb";
  sheet.getCell("R2").value = spill("R2", `COMB.STORES(Yard!J2:J${rows.length + 1})`);
  sheet.getCell("S1").value = "Gallons of 2:1 to 20 lb";
  sheet.getCell("S2").value = spill("S2", `COMB.FEED(Yard!J2:J${rows.length + 1})`);
  for (const address of ["M1", "N1", "O1", "P1", "R1", "S1"]) sheet.getCell(address).font = BOLD;
  const widths = [14, 14, 14, 12, 44, 40, 3, 3, 3, 3, 3, 3, 7, 9, 16, 60, 3, 10, 22];
  widths.forEach((width, k) => (sheet.getColumn(k + 1).width = width));
}

addYard();
addTerms();
addLots();
addContract("Cherry");
addContract("Pear");
addQuestions();
addBloom();
addPlacing();

const folder = mkdtempSync(join(tmpdir(), "comb-tally-"));
try {
  const raw = join(folder, "raw.xlsx");
  await workbook.xlsx.writeFile(raw);
  const cli = join(here, "../dist/cli/comb-tally.js");
  const out = join(here, "cherry-and-pear.xlsx");
  const run = (...args) => {
    const { status, stdout, stderr } = spawnSync(process.execPath, [cli, ...args], {
      encoding: "utf8",
    });
    if (status !== 0) throw new Error(stderr + stdout);
    process.stdout.write(stdout);
  };
  run("grade", raw, "--out", out);
  const shed = ["--lot", "Shed", "--contract", "Cherry", "--size", String(SIZES.Shed)];
  run("statement", out, ...shed, "--out", join(here, "shed-cherry-statement.xlsx"));
} finally {
  rmSync(folder, { recursive: true });
}

const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];
const quoted = (text) => (/[",\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);
const saved = (cell) => {
  const serial = cell.day ?? cell.date;
  if (serial === undefined) return quoted(String(cell));
  const day = new Date(Date.UTC(1899, 11, 30) + serial * 864e5);
  const short = `${day.getUTCDate()}-${MONTHS[day.getUTCMonth()]}`;
  return cell.day ? `${short}-${day.getUTCFullYear() % 100}` : short;
};
const foothill = rows.filter((row) => row[1] === "Foothill");
const csv = [HEADINGS.map(quoted), ...foothill.map((row) => row.map(saved))];
writeFileSync(join(here, "foothill.csv"), csv.map((row) => row.join(",")).join("\r\n") + "\r\n");
console.log(
  "wrote examples/cherry-and-pear.xlsx, shed-cherry-statement.xlsx and foothill.csv, all in examples",
);
