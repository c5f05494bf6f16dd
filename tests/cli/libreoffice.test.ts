import { execFileSync, spawnSync } from "node:child_process";
import { readFile } from "node:fs/promises";
import { pathToFileURL } from "node:url";
import { read, utils } from "@e965/xlsx";
import { expect, it } from "vitest";
import { readCsv } from "../../src/cli/csv.js";
import { folder } from "./folder.js";

const isHere = spawnSync("soffice", ["--version"]).status === 0;
if (!isHere) {
  console.warn(
    "LibreOffice is not on this machine: that it reads --values files alike is not tested",
  );
}

/** Comma, double quotes, UTF-8, from the first line, values and not what is shown, every sheet. */
const EVERY_SHEET =
  "csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,false,false,false,false,-1";

/** Points of a page, an inch having 72: 8.5 x 11 in, and 210 x 297 mm (ISO 216). */
const LETTER = "612 x 792";
const A4 = "595 x 842";

/** The sizes of the pages of a PDF file. */
function pagesOf(pdf: Buffer): string[] {
  const pages = pdf.toString("latin1").matchAll(/\/Type\s*\/Page\b[^]*?\/MediaBox\s*\[([^\]]*)\]/g);
  return [...pages].map(([, box]) => {
    const [, , width, height] = box!.trim().split(/\s+/).map(Number);
    return `${Math.round(width!)} x ${Math.round(height!)}`;
  });
}

/** Holds what LibreOffice made of each sheet against what another reader finds in the file. */
async function compare(test: Awaited<ReturnType<typeof folder>>, name: string): Promise<number> {
  const book = read(await test.bytes(`${name}.xlsx`));
  let compared = 0;
  for (const sheet of book.SheetNames) {
    const { lines } = readCsv(await test.bytes(`${name}-${sheet}.csv`), sheet);
    const rows = utils.sheet_to_json<unknown[]>(book.Sheets[sheet]!, {
      header: 1,
      raw: true,
      defval: "",
      blankrows: true,
    });
    rows.forEach((row, r) =>
      row.forEach((value, c) => {
        const seen = lines[r]?.fields[c] ?? "";
        const at = `${sheet} row ${r + 1}, column ${c + 1}`;
        compared++;
        // Days are written as days: the number behind them is the library's to tell.
        if (typeof value !== "number") expect(seen, at).toBe(String(value));
        else if (/^-?[\d.]+(?:E-?\d+)?$/i.test(seen))
          expect(Number(seen), at).toBeCloseTo(value, 8);
        else if (seen.endsWith("%")) expect(parseFloat(seen) / 100, at).toBeCloseTo(value, 8);
        else expect(seen, at).toMatch(/^(?:\d{1,2}[-/ ]|\d{4}-)/);
      }),
    );
  }
  return compared;
}

it.skipIf(!isHere)(
  "LibreOffice reads a copy with values alone, and a statement, as another reader does, and prints a statement on two pages",
  { timeout: 300_000 },
  async () => {
    const demo = await readFile(new URL("../../examples/cherry-and-pear.xlsx", import.meta.url));
    const test = await folder({ "yard.xlsx": demo });
    await test.run("grade", "yard.xlsx", "--values", "--out", "graded.xlsx");
    const shed = ["--lot", "Shed", "--contract", "Cherry", "--size", "160"];
    await test.run("statement", "yard.xlsx", ...shed, "--out", "letter.xlsx");
    await test.run("statement", "yard.xlsx", ...shed, "--paper", "a4", "--out", "a4.xlsx");
    const profile = pathToFileURL(test.path("profile")).href;
    const convert = (to: string, ...files: string[]): void => {
      const options = ["--headless", "--convert-to", to, "--outdir", test.path("")];
      const from = files.map((name) => test.path(name));
      execFileSync("soffice", [`-env:UserInstallation=${profile}`, ...options, ...from], {
        stdio: "pipe",
      });
    };
    convert(EVERY_SHEET, "graded.xlsx", "letter.xlsx");
    expect(await compare(test, "graded")).toBeGreaterThan(1500);
    expect(await compare(test, "letter")).toBeGreaterThan(500);

    convert("pdf", "letter.xlsx", "a4.xlsx");
    expect(pagesOf(await test.bytes("letter.pdf"))).toEqual([LETTER, LETTER]);
    expect(pagesOf(await test.bytes("a4.pdf"))).toEqual([A4, A4]);
  },
);
