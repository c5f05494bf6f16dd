import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { functionsPage, termsPage } from "../../scripts/handbook.mjs";
import { functions } from "../../src/functions/index.js";

const read = (path: string) => readFileSync(new URL(`../../${path}`, import.meta.url), "utf8");

describe("the handbook", () => {
  it("has the functions as the sources document them (else: npm run docs)", () => {
    expect(read("docs/functions.md")).toBe(functionsPage());
  });

  it("has the terms as the core reads them (else: npm run docs)", async () => {
    expect(read("docs/terms.md")).toBe(await termsPage());
  });

  it("has a place for each function, where Excel's help link leads", () => {
    const help = read("dist/addin/help.html");
    for (const { id, parameters } of functions) {
      expect(help).toContain(`<section id="${id}">`);
      for (const { name } of parameters) expect(help).toContain(`<code>${name}</code>`);
    }
  });
});
