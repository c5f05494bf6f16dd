import { mkdtemp, readdir, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import fc from "fast-check";
import { describe, expect, it, onTestFinished, vi } from "vitest";
import { writeWhole } from "../../src/cli/files.js";
import { excelFile, sheetData } from "./excel-file.js";
import { folder } from "./folder.js";

const disk = vi.hoisted(() => ({ full: false }));
vi.mock("node:fs/promises", async (original) => {
  const real = await original<typeof import("node:fs/promises")>();
  return {
    ...real,
    writeFile: async (path: string, bytes: Uint8Array, options?: object) => {
      if (!disk.full) return real.writeFile(path, bytes, options);
      await real.writeFile(path, bytes.subarray(0, bytes.length / 2), options);
      throw Object.assign(new Error("ENOSPC: no space left on device, write"), { code: "ENOSPC" });
    },
  };
});

const STANDARD = ["--contract", "Almond Board of California"];
const YARD = excelFile({
  sheets: { Yard: sheetData({ A1: "Hive", B1: "Bees", A2: "S1", B2: "7-8", A3: "S2", B3: 9 }) },
});

/** Graded, or refused in a sentence: nothing else may come of any file, and the file stays as it is. */
async function comesToAnEnd(name: string, bytes: Uint8Array): Promise<void> {
  const test = await folder({ [name]: bytes });
  const { code, out, err } = await test.run("grade", name, ...STANDARD);
  expect(Buffer.from(bytes).equals(await test.bytes(name))).toBe(true);
  if (code === 1) {
    expect(err).toMatch(/^[^\n]+[.?]\n$/);
    expect([out, await test.names()]).toEqual(["", [name]]);
  } else {
    expect([0, 3]).toContain(code);
    expect((await test.names()).length).toBe(2);
  }
}

describe("a file damaged in any way is graded or refused, and nothing else", () => {
  it("cut off anywhere", async () => {
    await fc.assert(
      fc.asyncProperty(fc.nat(YARD.length), (length) =>
        comesToAnEnd("yard.xlsx", YARD.slice(0, length)),
      ),
      { numRuns: 40 },
    );
  });

  it("with bytes that are others", async () => {
    const change = fc.tuple(fc.nat(YARD.length - 1), fc.nat(255));
    await fc.assert(
      fc.asyncProperty(fc.array(change, { minLength: 1, maxLength: 8 }), async (changes) => {
        const bytes = YARD.slice();
        for (const [at, byte] of changes) bytes[at] = byte;
        await comesToAnEnd("yard.xlsx", bytes);
      }),
      { numRuns: 60 },
    );
  });

  it("with XML that is another", async () => {
    const text = fc.constantFrom(
      "<",
      ">",
      "/>",
      '<c r="B9"',
      "&",
      "&#x0;",
      "\u0000",
      "</row>",
      '<row r="-1">',
      '<c r="B2" t="s"><v>99</v></c>',
      '<c r="__proto__"/>',
      '<f t="shared" si="7"/>',
      "<v>1e999</v>",
    );
    const sheet = sheetData({ A1: "Hive", B1: "Bees", A2: "S1", B2: 7 });
    await fc.assert(
      fc.asyncProperty(fc.nat(sheet.length), text, (at, put) =>
        comesToAnEnd(
          "yard.xlsx",
          excelFile({ sheets: { Yard: sheet.slice(0, at) + put + sheet.slice(at) } }),
        ),
      ),
      { numRuns: 60 },
    );
  });

  it("as a text of cells", async () => {
    const piece = fc.oneof(
      fc.constantFrom(
        "Hive",
        "Bees",
        ",",
        ";",
        "\t",
        "\n",
        "\r",
        "\r\n",
        '"',
        '""',
        "\ufeff",
        "\u0000",
        "7-8",
        "=1+1",
        "__proto__",
      ),
      fc.string({ unit: "binary" }),
    );
    const text = fc.array(piece, { maxLength: 40 }).map((parts) => Buffer.from(parts.join("")));
    const bytes = fc.oneof(
      text,
      text.map((t) => Buffer.concat([Buffer.from("Hive,Bees\n"), t])),
      fc.uint8Array({ maxLength: 200 }),
    );
    await fc.assert(
      fc.asyncProperty(bytes, (file) => comesToAnEnd("yard.csv", file)),
      { numRuns: 100 },
    );
  });
});

describe("where a file cannot be written", () => {
  it("for want of room on the disk, no half of it stays, and one that was there is as it was", async () => {
    const root = await mkdtemp(join(tmpdir(), "comb-tally-"));
    onTestFinished(() => rm(root, { recursive: true }));
    const path = join(root, "yard.xlsx");
    await writeFile(path, "before");
    disk.full = true;
    const done = writeWhole(path, new Uint8Array(1000));
    await expect(done).rejects.toThrow(/yard\.xlsx could not be written: ENOSPC: no space left/);
    disk.full = false;
    expect(await readdir(root)).toEqual(["yard.xlsx"]);
  });

  it.each([
    ["its folder is a file", "yard.csv/x.xlsx"],
    ["its name is too long", `${"x".repeat(300)}.xlsx`],
  ])("because %s, that is told", async (_, name) => {
    const test = await folder({ "yard.csv": "Hive,Bees\nA,8\n" });
    const { code, err } = await test.run("grade", "yard.csv", ...STANDARD, "--out", name);
    expect([code, await test.names()]).toEqual([1, ["yard.csv"]]);
    expect(err).toMatch(/could not be (?:written|read): .*\.\n$/);
  });
});
