import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { unzip } from "@cj-tech-master/excelts/archive";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { DEVELOPMENT_ORIGIN } from "../../scripts/origin.mjs";
import { faultsOf } from "../../scripts/package-check.mjs";
import { zipped } from "../../scripts/package.mjs";

const path = (name: string) => fileURLToPath(new URL(`../../${name}`, import.meta.url));
const shipped = path("tests/functions/shipped.json");

let parent: string;
let folder: string;
beforeEach(() => {
  parent = mkdtempSync(join(tmpdir(), "comb-tally-"));
  folder = join(parent, "built");
  cpSync(path("dist/addin"), folder, { recursive: true });
});
afterEach(() => rmSync(parent, { recursive: true }));

const change = (name: string, from: string | RegExp, to: string) => {
  const file = join(folder, name);
  const before = readFileSync(file, "utf8");
  const after = before.replace(from, to);
  expect(after).not.toBe(before);
  writeFileSync(file, after);
};
const faults = (origin = DEVELOPMENT_ORIGIN) => faultsOf(folder, origin, shipped);

describe("what is packed", () => {
  it("is without fault as it is built", () => {
    expect(faults()).toEqual([]);
  });

  it("has every file that the manifest names", () => {
    rmSync(join(folder, "assets/icon-80.png"));
    expect(faults()).toEqual(["the manifest names assets/icon-80.png, which is not built"]);
  });

  it("is for one address alone", () => {
    change("manifest.xml", `${DEVELOPMENT_ORIGIN}/addin.js`, "https://elsewhere.example/addin.js");
    expect(faults()).toEqual([
      `the manifest names https://elsewhere.example/addin.js, which is not at ${DEVELOPMENT_ORIGIN}`,
    ]);
    expect(faults("https://example.org").join()).toContain("functions.json still names");
  });

  it("keeps every function that workbooks rely on, and the order of its arguments", () => {
    change("functions.json", '"id": "GRADE"', '"id": "GRADES"');
    expect(faults()).toEqual(["a workbook in the world would break: GRADE is gone"]);
  });

  it("is a zip that another reader opens, the same bytes each time", async () => {
    const zip = zipped(parent, "built");
    expect(zipped(parent, "built")).toEqual(zip);
    const entries = new Map<string, Uint8Array>();
    for await (const entry of unzip(zip).entries()) {
      if (entry.type === "file") entries.set(entry.path, await entry.bytes());
    }
    const manifest = Buffer.from(entries.get("built/manifest.xml")!);
    expect(manifest).toEqual(readFileSync(join(folder, "manifest.xml")));
    expect(entries.has("built/assets/icon-32.png")).toBe(true);
  });
});
