import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { matchHeadings } from "../../src/core/headings.js";
import { comb } from "../functions/sheet.js";

const page = readFileSync(new URL("../../docs/yard-sheet.md", import.meta.url), "utf8");
const rowsOf = (heading: string) => {
  const [, section = ""] = page.split(`## ${heading}\n`);
  const lines = section
    .split("\n## ")[0]!
    .split("\n")
    .filter((line) => line.startsWith("| "));
  return lines.slice(2).map((line) =>
    line
      .split("|")
      .slice(1, -1)
      .map((cell) => cell.trim()),
  );
};

it.each(rowsOf("Headings it understands"))(
  "the handbook's headings of %s are understood: %s",
  (role, headings) => {
    for (const heading of headings!.split("; ")) {
      expect(matchHeadings([heading]), heading).toEqual({ roles: [role], doubts: [] });
    }
  },
);

it.each(rowsOf("What may stand in a cell"))(
  "the handbook's %s is read as it says: %s",
  (texts, says) => {
    const figures = says!
      .split(", ")
      .map((figure) => (figure === "no end" ? figure : Number(figure)));
    for (const [, text] of texts!.matchAll(/`([^`]+)`/g)) {
      const read = comb("READING", text, "all")[0]!.slice(0, 3);
      const shown = read.map((cell) => (/no upper end$/.test(String(cell)) ? "no end" : cell));
      expect(shown, text).toEqual(figures);
    }
  },
);
