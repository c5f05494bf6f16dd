import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { functionsPage, sourcesPage, termsPage } from "../../scripts/handbook.mjs";
import { WALKTHROUGH, walkthroughPage } from "../../scripts/walkthrough.mjs";
import { functions } from "../../src/functions/index.js";

const read = (path: string) => readFileSync(new URL(`../../${path}`, import.meta.url), "utf8");

describe("the handbook", () => {
  it("has the functions as the sources document them (else: npm run docs)", () => {
    expect(read("docs/functions.md")).toBe(functionsPage());
  });

  it("has the terms as the core reads them (else: npm run docs)", async () => {
    expect(read("docs/terms.md")).toBe(await termsPage());
  });

  it("has every constant as the core reads it (else: npm run docs)", async () => {
    expect(read("docs/sources.md")).toBe(await sourcesPage());
  });

  it("goes from an inspection to a settlement as the demo does (else: npm run docs)", async () => {
    expect(readFileSync(WALKTHROUGH, "utf8")).toBe(await walkthroughPage());
  });

  it("has a place for each function, where Excel's help link leads", () => {
    const help = read("dist/addin/help.html");
    for (const { id, parameters } of functions) {
      expect(help).toContain(`<section id="${id}">`);
      for (const { name } of parameters) expect(help).toContain(`<code>${name}</code>`);
    }
  });

  it("has each place once, and leads nowhere but to its own places", () => {
    const help = read("dist/addin/help.html");
    const ids = [...help.matchAll(/ id="([^"]+)"/g)].map(([, id]) => id);
    expect(ids.length).toBe(new Set(ids).size);
    const links = [...help.matchAll(/<a href="([^"]+)"/g)].map(([, href]) => href!);
    expect(links.filter((href) => !href.startsWith("#") || !ids.includes(href.slice(1)))).toEqual(
      [],
    );
    expect(help).not.toMatch(/<(?:link|img|script)[^>]+(?:src|href)=/);
  });
});
