import { fileURLToPath } from "node:url";
import { CURES, TOPICS } from "./cures.mjs";
import { refusals } from "./refusals.mjs";

/** A sentence that so few functions give stands with each of them. */
const FEW = 3;

const all = refusals(fileURLToPath(new URL("../src", import.meta.url)));

/** @type {Map<string, string[]>} */
const givers = new Map();
for (const [id, list] of all) {
  for (const { text } of list) givers.set(text, [...(givers.get(text) ?? []), id]);
}

/** Sentences that functions give and nobody has written a cure for, and cures of none. */
export function unmatched() {
  return {
    withoutCure: [...givers.keys()].filter((text) => !CURES.has(text)),
    ofNone: [...CURES.keys()].filter((text) => !givers.has(text)),
  };
}

/** The sentences of a function, shared ones too. */
export function sentencesOf(/** @type {string} */ id) {
  return (all.get(id) ?? []).map(({ text }) => text);
}

/**
 * What a function refuses, and the cure: its own in a table, the rest by links.
 * @param {string} id
 */
export function errorsOf(id) {
  const own = (all.get(id) ?? []).filter(({ text }) => isOwn(text));
  const shared = TOPICS.filter(({ cures }) =>
    (all.get(id) ?? []).some(({ text }) => !isOwn(text) && text in cures),
  );
  const links = shared.map(({ title }) => `[${title.toLowerCase()}](errors.md#${anchor(title)})`);
  const also = own.length > 0 ? "Besides, what is said of" : "Errors: what is said of";
  return [
    ...(own.length > 0 ? ["Errors of its own:", "", ...table(own), ""] : []),
    ...(links.length > 0 ? [`${also} ${links.join(", ")}.`, ""] : []),
  ];
}

/** The page of what several functions say. */
export function errorsPage() {
  const sections = TOPICS.flatMap(({ title, about, cures }) => {
    const shared = Object.keys(cures).filter((text) => !isOwn(text));
    if (shared.length === 0) return [];
    const rows = shared.map((text) => ({ text, kind: kindOf(text) }));
    return [`## ${title}`, "", ...(about ? [about, ""] : []), ...table(rows), ""];
  });
  return `<!-- made by npm run docs -->

# Errors and their cures

A function that cannot answer gives an error and a sentence: \`#VALUE!\` where something is to be mended, \`#N/A\` where nothing is wrong and nobody has judged yet. Point at the cell, or at the sign beside it, to read the sentence; the column \`note\` of \`YARD_COLUMNS\` and the pane say it too. It begins with the argument or the column, and the row. Here \`…\` stands for what the sentence fills in. What a single function says stands with [that function](functions.md).

An error that stands in the sheet already goes through as it is: mend that cell first.

## Every function

| it says | what to do |
|---|---|
| …: left out, and … needs it | The argument before the colon is missing. Count the commas. |
| … cells in one call; at most … fit: give the rows that are filled (B2:B400) instead of whole columns | Excel takes no more at once. Give the rows that hold hives, not the whole column. |
| terms: an error stands in the table | A cell of the Terms table holds an error. Mend that cell. |
| these cells gave no number: please tell us | A fault of ours: tell us the formula and its cells. |

${sections.join("\n")}`;
}

/** @param {string} text */
function isOwn(text) {
  return (givers.get(text) ?? []).length <= FEW;
}

/** @param {string} text */
function kindOf(text) {
  const found = [...all.values()].flat().find((one) => one.text === text);
  return found?.kind ?? "wrong";
}

/** @param {readonly { text: string, kind: string }[]} rows */
function table(rows) {
  return [
    "| it says | what to do |",
    "|---|---|",
    ...rows.map(({ text, kind }) => {
      const code = kind === "unknown" ? " (`#N/A`)" : "";
      return `| ${cell(text)}${code} | ${cell(CURES.get(text) ?? "")} |`;
    }),
  ];
}

/** As a heading's place is called where pages are read one by one. */
function anchor(/** @type {string} */ title) {
  return title.toLowerCase().replaceAll(" ", "-");
}

/** @param {string} text */
function cell(text) {
  return text.replaceAll("|", "\\|");
}
