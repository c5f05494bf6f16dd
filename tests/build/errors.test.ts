import { describe, expect, it } from "vitest";
import { errorsOf, errorsPage, sentencesOf, unmatched } from "../../scripts/errors.mjs";
import { GAP } from "../../scripts/refusals.mjs";
import { withSemicolons } from "../../scripts/semicolons.mjs";
import { CellError, type ErrorCode } from "../../src/functions/cells.js";
import { call } from "../../src/functions/declare.js";
import { functions } from "../../src/functions/index.js";
import { cases } from "../cases/all.js";
import { USES } from "../functions/uses.js";

/** Said by the way every function is called, and told once for all. */
const OF_ALL = [`${GAP}: left out, and ${GAP} needs it`, "terms: an error stands in the table"];

/** What a sentence of the handbook may come to in a cell, with the place before it or without. */
function patternOf(sentence: string): RegExp {
  const parts = sentence.split(GAP).map((part) => part.replace(/[.*+?^${}()|[\]\\]/g, "\\$&"));
  return new RegExp(`^(?:[^]*: )?${parts.join("[^]*")}$`);
}

function toCell(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(toCell);
  if (typeof value !== "object" || value === null || value instanceof CellError) return value;
  return new CellError((value as { error: ErrorCode }).error);
}

/** Arguments of each kind that no function can do with, to hear what it says. */
const RUBBISH = ["rubbish", -3, "12+", "", 99_999, true, "8-7", "7,5", "1/2", 0.5, "3/4/2026"];

/** Every sentence that a function was heard to say in the cases, and with one argument spoilt. */
function heard(): Map<string, Set<string>> {
  const said = new Map<string, Set<string>>();
  const listen = (id: string, args: readonly unknown[]): void => {
    const fn = functions.find((one) => one.id === id)!;
    for (const cell of call(fn, args, 1e6).flat()) {
      if (!(cell instanceof CellError) || cell.message === "") continue;
      said.set(id, (said.get(id) ?? new Set()).add(cell.message));
    }
  };
  const calls = [
    ...cases.map(({ id, args }) => ({ id, args: args.map(toCell) })),
    ...USES.map(({ id, values }) => ({ id, args: [...values] })),
  ];
  for (const { id, args } of calls) {
    listen(id, args);
    args.forEach((_, at) => {
      for (const spoilt of [null, ...RUBBISH]) {
        listen(
          id,
          args.map((arg, k) => (k === at ? spoilt : arg)),
        );
        if (Array.isArray(args[at])) {
          const [first, ...rest] = args[at] as unknown[][];
          const cells = [
            first,
            ...rest.map((row) => row.map((cell, c) => (c === 2 ? spoilt : cell))),
          ];
          listen(
            id,
            args.map((arg, k) => (k === at ? cells : arg)),
          );
        }
      }
    });
  }
  return said;
}

describe("errors and their cures", () => {
  it("has a cure for every sentence that a function can refuse with, and for no other", () => {
    expect(unmatched()).toEqual({ withoutCure: [], ofNone: [] });
  });

  it("names every sentence that a function is heard to say", { timeout: 120_000 }, () => {
    const said = heard();
    const kinds = new Set<string>();
    const unknown: string[] = [];
    let count = 0;
    for (const [id, messages] of said) {
      const known = [...sentencesOf(id), ...OF_ALL].map((s) => [s, patternOf(s)] as const);
      for (const message of messages) {
        const found = known.find(([, pattern]) => pattern.test(message));
        if (found === undefined) unknown.push(`${id}: ${message}`);
        else kinds.add(found[0]);
        count += 1;
      }
    }
    expect(unknown).toEqual([]);
    expect(count).toBeGreaterThan(300);
    expect(kinds.size).toBeGreaterThan(60);
    expect(said.size).toBeGreaterThan(35);
  });

  it("stand with their function, or on the page of what several say", () => {
    const page = errorsPage();
    for (const { id } of functions) {
      const own = errorsOf(id).join("\n");
      for (const sentence of sentencesOf(id)) {
        const row = `| ${sentence} `;
        expect(own.includes(row) || page.includes(row), `${id}: ${sentence}`).toBe(true);
      }
    }
  });
});

it.each([
  ["=COMB.BEES(8) gives 19200", null],
  ['=COMB.BEES(7.5,,"a, b") gives 1.5', '=COMB.BEES(7,5;;"a, b") gives 1.5'],
  [
    "=COMB.EMERGE_DATE(DATE(2026,3,20),1) gives, =COMB.X(1,2)",
    "=COMB.EMERGE_DATE(DATE(2026;3;20);1) gives, =COMB.X(1;2)",
  ],
])("%s is typed with semicolons as %s", (text, other) => {
  expect(withSemicolons(text)).toBe(other);
});
