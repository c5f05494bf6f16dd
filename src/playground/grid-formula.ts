import { NAMESPACE } from "../functions/namespace.js";
import { outsideTexts, pieces } from "../workbook/formula-text.js";

const OURS = new RegExp(String.raw`(?:\[\d+\]!)?_xldudf_${NAMESPACE}_(\w+)(?=\()`, "gi");

/**
 * A formula of a file as it is typed into the grid.
 *
 * @param table - the table around the cell, which `[@Bees]` leaves unsaid
 *
 * @example asTyped("_xldudf_COMB_BEES(Hives[@Frames])", null) // =COMB.BEES(Hives[[#This Row],[Frames]])
 */
export function asTyped(formula: string, table: string | null): string {
  const plain = outsideTexts(formula, (part) =>
    part
      .replace(OURS, (_, id: string) => `${NAMESPACE}.${id.toUpperCase()}`)
      .replace(/_xlfn\.SINGLE\(([^()]*)\)/gi, "@$1")
      .replace(/_xlfn\.(?:_xlws\.)?|_xlpm\./gi, ""),
  );
  return `=${withThisRow(plain, table)}`;
}

/** The grid knows a table's own row by `[#This Row]` only. */
export function withThisRow(formula: string, table: string | null): string {
  const parts = pieces(formula);
  return parts
    .map((part, i) => {
      const [, inside] = /^\[@(.*)\]$/s.exec(part) ?? [];
      if (inside === undefined) return part;
      const name = /[\p{L}\p{N}_.]$/u.test(parts[i - 1] ?? "") ? "" : (table ?? "");
      if (inside === "") return `${name}[#This Row]`;
      const columns = inside.startsWith("[") ? inside : `[${inside}]`;
      return `${name}[[#This Row],${columns}]`;
    })
    .join("");
}

/** A formula that was typed into the grid as a file holds it, without its equals sign. */
export function asInFile(typed: string): string {
  const parts = pieces(typed.replace(/^=/, ""));
  const own = ownNames(parts);
  return parts
    .map((part, i) => {
      const name = part.toUpperCase();
      if (own.has(name) && parts[i + 1] !== "!") return `_xlpm.${part}`;
      if (parts[i + 1] !== "(") return part;
      if (SHEET_FUNCTIONS.has(name)) return `_xlfn._xlws.${name}`;
      return LATER_FUNCTIONS.has(name) ? `_xlfn.${name}` : part;
    })
    .join("");
}

/** The names that LET and LAMBDA make, in capitals. */
function ownNames(parts: readonly string[]): ReadonlySet<string> {
  const names = new Set<string>();
  /** For each open bracket, whether it is one of LET or LAMBDA. */
  const makes: boolean[] = [];
  parts.forEach((part, i) => {
    if (part === "(") makes.push(/^(?:LET|LAMBDA)$/i.test(parts[i - 1] ?? ""));
    if (part === ")") makes.pop();
    const begins = part === "(" || part === ",";
    if (!begins || makes.at(-1) !== true) return;
    const rest = parts.slice(i + 1).filter((p) => p.trim() !== "");
    if (/^[\p{L}_][\p{L}\p{N}_.]*$/u.test(rest[0] ?? "") && rest[1] === ",") {
      names.add(rest[0]!.toUpperCase());
    }
  });
  return names;
}

/** Files mark the functions that came after 2007, so that an older Excel knows what it does not know. */
const SHEET_FUNCTIONS = new Set(["FILTER", "SORT"]);
const LATER_FUNCTIONS = new Set(
  (
    "LET LAMBDA UNIQUE SORTBY SEQUENCE RANDARRAY XLOOKUP XMATCH TEXTJOIN CONCAT IFS SWITCH MAXIFS MINIFS " +
    "TOCOL TOROW VSTACK HSTACK TAKE DROP CHOOSECOLS CHOOSEROWS WRAPROWS WRAPCOLS EXPAND BYROW BYCOL MAP " +
    "REDUCE SCAN MAKEARRAY TEXTSPLIT TEXTBEFORE TEXTAFTER ARRAYTOTEXT VALUETOTEXT IFNA XOR DAYS " +
    "ISOWEEKNUM NUMBERVALUE FORMULATEXT SHEET SHEETS STDEV.S STDEV.P VAR.S VAR.P MODE.SNGL MODE.MULT " +
    "PERCENTILE.INC PERCENTILE.EXC QUARTILE.INC QUARTILE.EXC RANK.EQ RANK.AVG T.INV T.INV.2T T.DIST " +
    "T.DIST.2T T.DIST.RT NORM.DIST NORM.INV NORM.S.DIST NORM.S.INV BINOM.DIST BINOM.INV CONFIDENCE.NORM " +
    "CONFIDENCE.T COVARIANCE.S COVARIANCE.P POISSON.DIST FORECAST.LINEAR CEILING.MATH FLOOR.MATH"
  ).split(" "),
);
