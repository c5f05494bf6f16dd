import { describe, expect, it } from "vitest";
import type { Content } from "../../src/core/comb-brood.js";
import { drawComb } from "../../src/core/comb-drawing.js";
import { combWithBees, combWithBrood } from "../../src/core/comb-picture.js";
import { frameOf } from "../../src/core/comb.js";
import { BEE_COLOURS, DEEP_COMB, paintedShare } from "../raster.js";

const EGG = ["#c9a46a", "#7d572c", "#ffffff"];
const WORKER = ["#a8702f", "#b98040"];
const DRONE = ["#7c4d1c", "#cf9f60", "#f2dcb4"];
const HONEY = ["#f3e6c4", "#fcf5e1"];
const WOOD = ["#cfae7c", "#8d6b3c"];
const [, , WIDTH, HEIGHT] = DEEP_COMB;

/** The lines of a drawing by their ids. */
const pathsOf = (svg: string) =>
  new Map([...svg.matchAll(/<path id="([^"]*)" d="([^"]*)"/g)].map(([, id, d]) => [id!, d!]));

describe("a drawn comb", () => {
  it.each([
    ["clear centre", "egg", EGG],
    ["clear centre", "capped worker", WORKER],
    ["drone patch", "capped drone", DRONE],
    ["solid", "honey", HONEY],
  ] as const)("%s: shows as much %s as its cells hold", (pattern, content, colours) => {
    const picture = combWithBrood(pattern, 40, 3);
    const held = picture.contents.filter((cell: Content) => cell === content).length;
    const painted = paintedShare(drawComb(picture, "t"), colours, DEEP_COMB);
    expect(held).toBeGreaterThan(100);
    expect(Math.abs(painted - (100 * held) / picture.contents.length)).toBeLessThan(1);
  });

  it("stands in its wood, and the wood not in it", () => {
    const svg = drawComb(combWithBrood("solid", 40, 3), "t");
    expect(paintedShare(svg, WOOD, DEEP_COMB)).toBeLessThan(0.5);
    for (const bar of [
      [0, -48, WIDTH, 45],
      [0, HEIGHT + 3, WIDTH, 30],
      [-27, 0, 24, HEIGHT],
      [WIDTH + 3, 0, 24, HEIGHT],
      [-67, -48, 60, 36],
      [WIDTH + 7, -48, 60, 36],
    ] as const) {
      expect(paintedShare(svg, WOOD, bar)).toBeGreaterThan(97);
    }
    // Under the lugs there is none.
    expect(paintedShare(svg, WOOD, [-67, 0, 30, HEIGHT])).toBe(0);
    expect(paintedShare(svg, WOOD, [WIDTH + 37, 0, 30, HEIGHT])).toBe(0);
  });

  it("is as large as its frame makes it, with room for the wood", () => {
    // 79 cells of 15 and 25 rows of 13 (a shallow), 70 to each side, 50 above and 40 below.
    const svg = drawComb(combWithBees(0, 1, "middle", frameOf("shallow")), "t");
    expect(svg).toContain('viewBox="-70 -50 1325 415"');
  });

  it("uses only what it has defined itself, under the id that it was given", () => {
    for (const picture of [combWithBees(40, 1), combWithBrood("clear centre", 40, 1)]) {
      const svg = drawComb(picture, "one");
      const defined = [...svg.matchAll(/ id="([^"]*)"/g)].map(([, id]) => id);
      const used = [...svg.matchAll(/ href="#([^"]*)"/g)].map(([, id]) => id);
      expect(new Set(used)).toEqual(new Set(defined));
      expect(new Set(defined).size).toBe(defined.length);
      for (const id of defined) expect(id).toMatch(/^one[bc]\d$/);
    }
  });

  it("draws each bee once, with those of its layer", () => {
    const { bees, ...picture } = combWithBees(40, 1);
    const lines = pathsOf(drawComb({ ...picture, bees }, "t"));
    for (const layer of [0, 1, 2]) {
      const drawn = lines.get(`tb${layer}`)!.split("M").length - 1;
      expect(drawn).toBe(bees.filter((bee) => bee.layer === layer).length);
    }
  });

  it("has the cells of what it holds, and of nothing else, in rows half a cell apart", () => {
    const picture = combWithBrood("clear centre", 40, 1);
    const paths = pathsOf(drawComb(picture, "t"));
    expect(paths.size).toBe(new Set(picture.contents).size);
    for (const d of paths.values()) {
      expect(d).toMatch(/^(?:M-?[\d.]+ -?\d+h\d+)+$/);
      for (const [, x, y, length] of d.matchAll(/M(-?[\d.]+) (-?\d+)h(\d+)/g)) {
        const row = Number(y) / 13;
        const cell = (Number(x) - (Math.abs(row) % 2 === 1 ? 7.5 : 0)) / 15;
        expect([row, cell].every(Number.isInteger)).toBe(true);
        expect(Number(length) / 15).toBeGreaterThanOrEqual(1);
      }
    }
  });

  it("has its ground and the hole of its frame as large as the comb, and its cells in their places", () => {
    // 79 cells of 15 are 1,185, 43 rows of 13 are 559; the hole is 1 larger to every side. A run begins
    // half a cell before the middle of its first, which is at 3.75 and 6.5: 3.75 - 7.5, 6.5 - 0.
    const svg = drawComb(combWithBees(0, 1), "t");
    expect(svg).toContain('<path fill="#f0dcae" d="M0 0h1185v559h-1185z"/>');
    expect(svg).toContain('M-1-1v561h1187v-561z"/>');
    expect(svg).toContain('<g transform="translate(-3.75 6.5)">');
  });

  it("has one more cell and row at every side, which the frame cuts", () => {
    // 43 + 2 rows of (79 + 2) x 15; the uneven ones begin half a cell later.
    const rows = Array.from(
      { length: 45 },
      (_, i) => `M${i % 2 === 0 ? -7.5 : -15} ${(i - 1) * 13}h1215`,
    );
    const paths = pathsOf(drawComb(combWithBees(0, 1), "t"));
    expect([...paths.values()]).toEqual([rows.join("")]);
  });

  it("has round marks in the middle of its cells", () => {
    // A mark without length is a dash of 0.01, (15 - 0.01) / 2 after the cell's edge; an egg's 4 long.
    const svg = drawComb(combWithBrood("clear centre", 40, 3), "t");
    for (const mark of [
      'stroke="#b98040" stroke-width="11" stroke-dasharray="0.01 14.99" stroke-dashoffset="-7.495"',
      'stroke="#ffffff" stroke-width="2" stroke-dasharray="4 11" stroke-dashoffset="-5.5"',
    ]) {
      expect(svg).toContain(`${mark} stroke-linecap="round"/>`);
    }
  });

  it("is tags and nothing beside them, each dash and each gap of some length", () => {
    for (const picture of [combWithBees(40, 1), combWithBrood("clear centre", 40, 1)]) {
      const svg = drawComb(picture, "t");
      expect(svg.replace(/<[^<>]*>/g, "")).toBe("");
      expect(svg).not.toMatch(/undefined|NaN/);
      const dashes = [...svg.matchAll(/dasharray="([^"]*)"/g)].flatMap(([, all]) =>
        all!.split(" "),
      );
      for (const dash of dashes) expect(Number(dash)).toBeGreaterThan(0);
    }
  });

  it("has no colour of a bee where there is none, and all of them where there are some", () => {
    const [none, some] = [drawComb(combWithBees(0, 1), "t"), drawComb(combWithBees(5, 1), "t")];
    for (const colour of BEE_COLOURS) {
      expect(none).not.toContain(colour);
      expect(some).toContain(colour);
    }
  });
});
