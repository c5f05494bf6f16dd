/**
 * `npm run bench:files -- 100000`: hives graded from file to file, engine against engine, and what
 * the command line takes over reading and writing the file. Needs GNU time (Debian: `time`), and
 * LibreOffice for its line. Time is that of the processor, of which a busy machine takes more, so each
 * is run in turns, three times or as often as said after the hives, and the least counts.
 */
import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { Workbook } from "@cj-tech-master/excelts";

const hives = Number(process.argv[2] ?? 100_000);
const folder = mkdtempSync(join(tmpdir(), "comb-tally-bench-"));
const at = (/** @type {string} */ name) => join(folder, name);
const here = (/** @type {string} */ name) => fileURLToPath(new URL(name, import.meta.url));
const cli = here("../../dist/cli/comb-tally.js");

const TERMS = [
  ["Term", "Cherry"],
  ["average frames", 8],
  ["minimum frames", 6],
  ["grade 1 name", "Prime"],
  ["grade 1 frames", 10],
  ["grade 2 name", "Standard"],
  ["grade 2 frames", 8],
  ["grade 3 name", "Light"],
  ["grade 3 frames", 6],
];
/** The same grades by nested formulas of Excel: thresholds in B5, B7, B9, their names above. */
const native = (/** @type {number} */ row) =>
  [4, 6, 8].reduceRight(
    (otherwise, name) => `IF($C${row}>=Contracts!$B$${name + 1},Contracts!$B$${name},${otherwise})`,
    '"no grade"',
  );

const ours = (/** @type {string} */ frames) => `_xldudf_COMB_GRADE(${frames},Terms,"Cherry")`;
const spilled = (/** @type {string} */ formula, /** @type {string} */ ref) =>
  /** @type {const} */ ({ formula, shareType: "array", ref, isDynamicArray: true });

/**
 * @param {string} name
 * @param {number} count
 * @param {(row: number) => import("@cj-tech-master/excelts").CellValue} entry What stands in column E of a row.
 */
async function write(name, count, entry) {
  const workbook = new Workbook();
  const sheet = workbook.addWorksheet("Yard");
  sheet.addRow(["Hive", "Lot", "Frames of bees"]);
  for (let i = 0; i < count; i++) {
    sheet.addRow([`H${i}`, `L${i % 3}`, 1 + ((i * 7) % 12)]);
    const value = entry(i + 2);
    if (value !== null) sheet.getCell(i + 2, 5).value = value;
  }
  const terms = workbook.addWorksheet("Contracts");
  TERMS.forEach((row) => terms.addRow(row));
  workbook.definedNames.add("Contracts!$A$1:$B$9", "Terms");
  await workbook.xlsx.writeFile(at(name));
}

/** @param {readonly string[]} command */
function run(...command) {
  const { status, stderr } = spawnSync("/usr/bin/time", ["-f", "%e %U %S %M", ...command], {
    encoding: "utf8",
    maxBuffer: 1e9,
  });
  if (status !== 0) throw new Error(`${command.join(" ")} ended with ${status}: ${stderr}`);
  const [wall = NaN, user = NaN, system = NaN, kilobytes = NaN] = (
    stderr.trim().split("\n").at(-1) ?? ""
  )
    .split(" ")
    .map(Number);
  return { wall, cpu: user + system, megabytes: kilobytes / 1024 };
}

/** Each command so often, in turns: what else a machine does takes more than one run's figures. */
const ROUNDS = Number(process.argv[3] ?? 3);

/**
 * What each command takes for all hives over what it takes for ten: the least of the rounds.
 * @param {readonly Contest[]} contests
 * @typedef {{ label: string, file: string, command: (file: string) => readonly string[] }} Contest
 */
function compete(contests) {
  const none = { wall: Infinity, cpu: Infinity, megabytes: Infinity };
  const least = contests.map(() => ({ start: none, whole: none }));
  for (let round = 0; round < ROUNDS; round++) {
    for (const [i, { file, command }] of contests.entries()) {
      const was = /** @type {typeof least[number]} */ (least[i]);
      least[i] = {
        start: lesser(was.start, run(...command(at(`10-${file}`)))),
        whole: lesser(was.whole, run(...command(at(file)))),
      };
    }
  }
  return least.map(({ start, whole }) => ({
    wall: whole.wall - start.wall,
    cpu: whole.cpu - start.cpu,
    megabytes: whole.megabytes,
  }));
}

/** @typedef {ReturnType<typeof run>} Taken */
function lesser(/** @type {Taken} */ one, /** @type {Taken} */ other) {
  return {
    wall: Math.min(one.wall, other.wall),
    cpu: Math.min(one.cpu, other.cpu),
    megabytes: Math.min(one.megabytes, other.megabytes),
  };
}

const graded = (/** @type {string} */ file) => [
  "node",
  cli,
  "grade",
  file,
  "--out",
  at("out.xlsx"),
];
const office = (/** @type {string} */ file) => [
  "soffice",
  `-env:UserInstallation=file://${at("office")}`,
  "--headless",
  "--convert-to",
  "xlsx",
  "--outdir",
  at("office-out"),
  file,
];

for (const [prefix, count] of /** @type {const} */ ([
  ["", hives],
  ["10-", 10],
])) {
  await write(`${prefix}plain.xlsx`, count, () => null);
  await write(`${prefix}rows.xlsx`, count, (row) => ({ formula: ours(`C${row}`) }));
  await write(`${prefix}spill.xlsx`, count, (row) =>
    row === 2 ? spilled(ours(`C2:C${count + 1}`), `E2:E${count + 1}`) : null,
  );
  // One call of ours, or the program would add its columns.
  await write(`${prefix}native.xlsx`, count, (row) => ({
    formula: row === 2 ? ours("C2") : native(row),
  }));
  await write(`${prefix}office.xlsx`, count, (row) => ({ formula: native(row) }));
}
const copied = {
  label: "read, seven columns filled, written (no grading)",
  file: "plain.xlsx",
  command: (/** @type {string} */ file) => ["node", here("copy.mjs"), file, at("out.xlsx")],
};
const columns = {
  label: "YARD_COLUMNS, one formula, seven columns",
  file: "plain.xlsx",
  command: graded,
};
const contests = [
  copied,
  columns,
  { label: "GRADE, one formula that spills", file: "spill.xlsx", command: graded },
  {
    label: "the same, its hives not printed (--quiet)",
    file: "spill.xlsx",
    command: (/** @type {string} */ file) => [...graded(file), "--quiet"],
  },
  { label: "GRADE, one formula a row", file: "rows.xlsx", command: graded },
  { label: "nested formulas of Excel, our program", file: "native.xlsx", command: graded },
  ...(existsSync("/usr/bin/soffice")
    ? [{ label: "nested formulas of Excel, LibreOffice", file: "office.xlsx", command: office }]
    : []),
];
try {
  const least = compete(contests);
  console.log(`${hives.toLocaleString("en")} hives, from file to file, start-up apart`.padEnd(48));
  console.log(`${"".padEnd(48)}   CPU s  wall s      MB`);
  for (const [i, { wall, cpu, megabytes }] of least.entries()) {
    const figures = [cpu.toFixed(1), wall.toFixed(1), megabytes.toFixed(0)];
    console.log(`${contests[i]?.label.padEnd(48)}${figures.map((f) => f.padStart(8)).join("")}`);
  }
  const [bare = NaN, ours = NaN] = least.map(({ cpu }) => cpu);
  console.log(`\nover reading and writing the file: ${((ours / bare - 1) * 100).toFixed(0)} %`);
} finally {
  rmSync(folder, { recursive: true });
}
