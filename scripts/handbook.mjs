/** Writes what the handbook has from the sources and the demo: `npm run docs`. */
import { writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { runnerImport } from "vite";
import { EYE_GUIDE, eyeGuidePage } from "./eye-guide.mjs";
import { errorsOf, errorsPage } from "./errors.mjs";
import { reference, signature } from "./reference.mjs";
import { bothForms } from "./semicolons.mjs";
import { WALKTHROUGH, walkthroughPage } from "./walkthrough.mjs";

const path = (/** @type {string} */ name) => fileURLToPath(new URL(`../${name}`, import.meta.url));

export function functionsPage() {
  const entries = reference(path("src/functions"));
  const list = entries.map((e) => `- [COMB.${e.id}](#comb${e.id.toLowerCase()})`);
  const pages = entries.map((entry) => {
    const rows = entry.parameters.map(
      (p) => `| \`${p.name}\` | ${p.optional ? "may be left out" : "needed"} | ${cell(p.text)} |`,
    );
    const table = rows.length === 0 ? [] : ["| argument | | |", "|---|---|---|", ...rows, ""];
    return [
      `## COMB.${entry.id}`,
      "",
      entry.summary,
      "",
      "```",
      ...bothForms(`=${signature(entry)}`),
      "```",
      "",
      ...table,
      `Gives: ${entry.returns}`,
      "",
      ...(entry.remarks ? [entry.remarks, ""] : []),
      ...bothForms(entry.example).flatMap((line, i) => [
        `${["Example", "With `;`"][i]}: ${line}`,
        "",
      ]),
      ...errorsOf(entry.id),
    ].join("\n");
  });
  return `<!-- made by npm run docs -->

# Functions

In brackets: may be left out. Each formula stands twice where that differs: as it is typed with \`,\` between arguments, and with \`;\`. A mistake is \`#VALUE!\` with a sentence that names the argument, the row and what was expected; what nobody has judged yet is \`#N/A\`. What several functions say stands under [errors and their cures](errors.md).

${list.join("\n")}

${pages.join("\n")}`;
}

export async function termsPage() {
  const { module } = await runnerImport(path("src/core/terms.ts"));
  const { TERMS } = /** @type {typeof import("../src/core/terms.js")} */ (module);
  const rows = TERMS.map(
    ({ label, value, missing, meaning }) =>
      `| \`${label}\` | ${mayBe(value)} | ${shown(missing)} | ${cell(meaning)} |`,
  );
  return `<!-- made by npm run docs -->

# The terms of a contract

A table with the heading \`Term\` in its first cell, a term a row and a contract a column; give it the defined name \`Terms\`. A column headed \`Meaning\`, \`Unit\` or \`Notes\` is yours. A term that is left out, or holds 0, says what the third column says. Terms that are not known, stand twice or contradict each other are refused by name.

| term | what may stand there | left out | meaning |
|---|---|---|---|
${rows.join("\n")}

Grades stand best first, each with rows \`grade 1 name\`, \`grade 1 frames\`, \`grade 1 brood\`, \`grade 1 fee\`, then \`grade 2 name\` and so on, up to 99: a name of your own, its least frames of bees, its least brood in the contract's measure, its fee a hive. A contract without grades tells a hive \`at average\` from one \`at minimum\`.
`;
}

export async function sourcesPage() {
  const { module } = await runnerImport(path("src/core/sources.ts"));
  const { sources } = /** @type {typeof import("../src/core/sources.js")} */ (module);
  const rows = Object.values(sources).map(
    ({ name, value, unit, source, known }) =>
      `| ${cell(name)} | ${+value.toPrecision(6)} ${cell(unit)} | ${known} | ${cell(source)} |`,
  );
  return `<!-- made by npm run docs -->

# Where the figures come from

Every constant that is reckoned with; \`=COMB.SOURCES()\` spills the same. **read** in the source; **retold** by another text that quotes it; **worked** from values that were read; **fitted** to the data of the studies named; **practice** of the trade without a source; **memory**.

| what | value | known | source |
|---|---|---|---|
${rows.join("\n")}
`;
}

/** @param {import("../src/core/terms.js").TermKind} kind */
function mayBe(kind) {
  switch (kind.kind) {
    case "number":
      return `${kind.least} to ${kind.most.toLocaleString("en")} ${kind.unit}`;
    case "choice":
      return kind.choices.map((choice) => `\`${choice}\``).join(", ");
    case "frame":
      return "a frame's name or size";
    default:
      return kind.kind;
  }
}

/** @param {string | number | boolean} missing */
function shown(missing) {
  if (typeof missing === "boolean") return missing ? "yes" : "no";
  return missing === 0 || missing === "" ? "nothing" : `\`${missing}\``;
}

/** @param {string} text */
function cell(text) {
  return text.replaceAll("|", "\\|");
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  writeFileSync(path("docs/functions.md"), functionsPage());
  writeFileSync(path("docs/errors.md"), errorsPage());
  writeFileSync(path("docs/terms.md"), await termsPage());
  writeFileSync(path("docs/sources.md"), await sourcesPage());
  writeFileSync(WALKTHROUGH, await walkthroughPage());
  writeFileSync(EYE_GUIDE, await eyeGuidePage());
}
