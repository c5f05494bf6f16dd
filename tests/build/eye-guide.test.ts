import { readFileSync } from "node:fs";
import { JSDOM } from "jsdom";
import { describe, expect, it } from "vitest";
import { EYE_GUIDE, eyeGuidePage, SHEETS } from "../../scripts/eye-guide.mjs";
import { violationsIn } from "../pane/render.js";
import { BEE_COLOURS, BROOD_COLOURS, DEEP_COMB, paintedShare } from "../raster.js";

const page = readFileSync(EYE_GUIDE, "utf8");
const figures = [...page.matchAll(/<figure>.*?<\/figure>/gs)].map(([figure]) => ({
  svg: /<svg.*<\/svg>/s.exec(figure)![0],
  percent: Number(/(\d+) % (?:under bees|with brood)/.exec(figure)![1]),
  colours: figure.includes("under bees") ? BEE_COLOURS : BROOD_COLOURS,
  label: /aria-label="([^"]*)"/.exec(figure)![1]!,
}));

describe("the eye guide's page", () => {
  it("is made of the sources (else: npm run docs)", async () => {
    expect(page).toBe(await eyeGuidePage());
  });

  it.each(figures.map((figure, i) => [`picture ${i + 1}, ${figure.label}`, figure] as const))(
    "%s: the pixels inside the comb say so to 1 percent",
    (_, { svg, colours, percent }) => {
      expect(Math.abs(paintedShare(svg, colours, DEEP_COMB) - percent)).toBeLessThan(1);
    },
  );

  it("has every cover of bees that is asked, and brood by stage and pattern", () => {
    const shown = SHEETS.flatMap(({ pictures }) => pictures);
    const covers = [10, 25, 33, 50, 67, 75, 90, 100];
    expect(shown.filter(({ what }) => what === "bees").map((p) => p.percent)).toEqual(covers);
    expect(new Set(shown.map(({ what }) => what))).toEqual(
      new Set([
        ...["bees", "eggs", "young larvae", "old larvae", "clear centre"],
        ...["solid", "spotty", "drone patch", "drone scattered"],
      ]),
    );
    expect(SHEETS.map(({ pictures }) => pictures.length)).toEqual([4, 4, 4, 4, 4, 4]);
    expect(figures).toHaveLength(24);
  });

  it("is light enough to send: each picture under 40 kB, the page under 600", () => {
    for (const { svg } of figures) expect(svg.length).toBeLessThan(40_000);
    expect(Buffer.byteLength(page)).toBeLessThan(600_000);
  });

  it("stands alone, with each id once", () => {
    expect(page).not.toMatch(/<(?:a|link|img|script)\b/);
    expect(page).not.toMatch(/url\(|https?:\/\/(?!www\.w3\.org\/2000\/svg)/);
    const ids = [...page.matchAll(/ id="([^"]+)"/g)].map(([, id]) => id!);
    expect(ids.length).toBe(new Set(ids).size);
    const used = [...page.matchAll(/href="#([^"]+)"/g)].map(([, id]) => id!);
    expect(used.filter((id) => !ids.includes(id))).toEqual([]);
  });

  it("can be used by everyone, as far as axe can tell", async () => {
    const { window } = new JSDOM(page, { runScripts: "outside-only" });
    expect(await violationsIn(window)).toEqual([]);
  });

  it("is beside the handbook that ships", () => {
    const shipped = new URL("../../dist/addin/eye-guide.html", import.meta.url);
    expect(readFileSync(shipped, "utf8")).toBe(page);
  });
});
