import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { functionsJson } from "../../scripts/functions-json.mjs";

describe("functions.json", () => {
  let folder = "";
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), "comb-tally-"));
  });
  afterEach(() => rmSync(folder, { recursive: true }));

  const source = (file: string, tag: string, code: string) =>
    writeFileSync(join(folder, file), `/**\n * Made up.\n * ${tag}\n */\n${code}\n`);

  it("gathers the functions of every file, in the order of their ids", async () => {
    source(
      "b.ts",
      "@customfunction AAA",
      "export function AAA(x: unknown[][], y?: unknown): unknown[][] { return [[y]]; }",
    );
    source("a.ts", "@customfunction BBB", "export function BBB(): unknown[][] { return []; }");
    source("c.ts", "No tag, so no function.", "export function CCC(): number { return 1; }");
    const { json, errors } = await functionsJson(folder);
    expect(errors).toEqual([]);
    expect(JSON.parse(json)).toMatchObject({
      allowErrorForDataTypeAny: true,
      functions: [
        {
          id: "AAA",
          parameters: [
            { name: "x", dimensionality: "matrix" },
            { name: "y", optional: true },
          ],
        },
        { id: "BBB", parameters: [] },
      ],
    });
  });

  it("refuses a type that Excel does not pass, and names the file", async () => {
    source(
      "a.ts",
      "@customfunction AAA",
      "export function AAA(day: Date): unknown[][] { return [[day]]; }",
    );
    const { errors } = await functionsJson(folder);
    expect(errors).toEqual([expect.stringMatching(/a\.ts: .*does not support type "Date"/)]);
  });

  it("refuses a tag on what is no function declaration, which would be skipped", async () => {
    source("a.ts", "@customfunction AAA", "export const AAA = (): unknown[][] => [];");
    const { errors } = await functionsJson(folder);
    expect(errors).toEqual([
      expect.stringMatching(/a\.ts: 1 @customfunction tags, but 0 functions/),
    ]);
  });
});
