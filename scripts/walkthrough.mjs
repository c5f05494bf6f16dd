import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { runnerImport } from "vite";
import { HEADINGS, rows, TERMS } from "../examples/yard.mjs";

/** A line `<!-- =COMB.X(…) -->`, and the block after it, which the formula fills. */
const CALCULATED = /^<!-- =COMB\.(\w+)\((.*)\) -->\n\n```\n[^]*?```\n/gm;

const WIDTH = 110;

/**
 * A page of the handbook with each formula's result as the demo's workbook gives it.
 * @param {string} text
 */
export async function calculated(text) {
  const [{ functions }, { call }, { textTable }] = await Promise.all([
    load("src/functions/index.ts"),
    load("src/functions/declare.ts"),
    load("src/cli/text-table.ts"),
  ]);
  return text.replace(CALCULATED, (_, /** @type {string} */ id, /** @type {string} */ list) => {
    const fn = functions.find((/** @type {{ id: string }} */ f) => f.id === id);
    const cells = call(fn, argumentsOf(list), 1e6);
    const shown = cells.map((/** @type {unknown[]} */ row) => row.map(show));
    return [
      `<!-- =COMB.${id}(${list}) -->\n`,
      "```",
      `=COMB.${id}(${list})`,
      "",
      ...textTable(shown, WIDTH),
      "```\n",
    ].join("\n");
  });
}

/** Texts in quotes, numbers, Terms, ranges of the yard sheet such as A1:K61, and nothing. */
function argumentsOf(/** @type {string} */ list) {
  return (list.match(/"[^"]*"|\{[^}]*\}|[^,]+|(?<=,)(?=,)/g) ?? []).map((argument) => {
    if (argument === "") return null;
    if (argument === "Terms") return TERMS;
    if (argument.startsWith('"')) return argument.slice(1, -1);
    if (argument.startsWith("{"))
      return argument
        .slice(1, -1)
        .split(";")
        .map((n) => [Number(n)]);
    const [, left, top, right, bottom] = /^([A-K])(\d+):([A-K])(\d+)$/.exec(argument) ?? [];
    if (left === undefined || right === undefined) return Number(argument);
    const first = left.charCodeAt(0) - 65;
    const last = right.charCodeAt(0) - 65;
    return yard()
      .slice(Number(top) - 1, Number(bottom))
      .map((row) => row.slice(first, last + 1));
  });
}

/** The yard sheet of the demo with its headings, as a function takes its cells. */
function yard() {
  const cells = rows.map((row) =>
    row.map((cell) => (typeof cell === "object" ? Object.values(cell)[0] : cell)),
  );
  return [HEADINGS, ...cells];
}

/** @param {unknown} cell */
function show(cell) {
  if (cell instanceof Error) return `${/** @type {{ code?: string }} */ (cell).code}`;
  return typeof cell === "number" ? String(+cell.toFixed(3)) : String(cell);
}

/** @param {string} file */
async function load(file) {
  const { module } = await runnerImport(fileURLToPath(new URL(`../${file}`, import.meta.url)));
  return /** @type {any} */ (module);
}

export const WALKTHROUGH = new URL("../docs/walkthrough.md", import.meta.url);

export async function walkthroughPage() {
  return calculated(readFileSync(WALKTHROUGH, "utf8"));
}
