import { xmlDecode } from "@cj-tech-master/excelts";
import { ELEMENTS, PARTS } from "./kinds.js";
import type { Parts } from "./unpack.js";
import { textOf } from "./workbook.js";

/** How often something stands in a workbook, by sheet; under "" where it belongs to no sheet. */
type Census = Map<string, Map<string, number>>;

/** What of a workbook did not come along into its copy, each a few words, the sheets named. */
export function lossesBetween(original: Parts, copy: Parts): string[] {
  const before = census(original);
  // The sheets' own parts are the large ones: read again only where one may have lost something.
  const inSheets = [...before.keys()].some((word) => IN_SHEETS.has(word));
  const after = census(inSheets ? copy : new Map([...copy].filter(([path]) => !SHEET.test(path))));
  return [...before].flatMap(([word, sheets]) => {
    const left = after.get(word) ?? new Map<string, number>();
    const lost = total(sheets) - total(left);
    if (lost <= 0) return [];
    const where = [...sheets].filter(([sheet, n]) => sheet && n > (left.get(sheet) ?? 0));
    const names = where.map(([sheet]) => `"${sheet}"`).join(", ");
    return `${word}${lost > 1 ? ` (${lost})` : ""}${names && ` on sheet ${names}`}`;
  });
}

const total = (counts: ReadonlyMap<string, number>): number =>
  [...counts.values()].reduce((sum, n) => sum + n, 0);

function census(parts: Parts): Census {
  const owners = ownersOf(parts);
  const counts: Census = new Map();
  const add = (word: string, path: string): void => {
    const sheets = counts.get(word) ?? new Map<string, number>();
    const sheet = owners.get(path) ?? "";
    counts.set(word, sheets.set(sheet, (sheets.get(sheet) ?? 0) + 1));
  };
  for (const path of parts.keys()) {
    const kind = PARTS.find(([pattern]) => pattern.test(path));
    if (kind) add(kind[1], path);
    if (!HOLDERS.test(path)) continue;
    for (const [, element, metadata] of textOf(parts, path)!.matchAll(INSIDE)) {
      add(element ? ELEMENTS[element]! : metadata ? VALUE_METADATA : DATA_TABLE, path);
    }
  }
  return counts;
}

const HOLDERS = /^xl\/(?:workbook|worksheets\/[^/]+|drawings\/[^/]+|tables\/[^/]+)\.xml$/;
const INSIDE = new RegExp(
  `<(?:\\w+:)?(${Object.keys(ELEMENTS).join("|")})[\\s/>]|<c [^>]*\\b(vm)="|<f [^>]*\\bt="(dataTable)"`,
  "g",
);

/** Cells whose value or formula the library takes for an ordinary one. */
const VALUE_METADATA = "linked data type or picture in a cell";
const DATA_TABLE = "what-if table (its values were kept)";

const SHEET = /^xl\/worksheets\/[^/]+\.xml$/;
const { definedName: _, ...inside } = ELEMENTS;
const IN_SHEETS = new Set([...Object.values(inside), VALUE_METADATA, DATA_TABLE]);

/** On which sheet a part stands, by following what each part says it needs. */
function ownersOf(parts: Parts): ReadonlyMap<string, string> {
  const owners = new Map<string, string>();
  const targets = relationsOf(parts, "xl/workbook.xml");
  const follow = (path: string, sheet: string): void => {
    if (owners.has(path)) return;
    owners.set(path, sheet);
    for (const target of relationsOf(parts, path).values()) follow(target, sheet);
  };
  for (const [tag] of (textOf(parts, "xl/workbook.xml") ?? "").matchAll(
    /<(?:\w+:)?sheet\s[^>]*>/g,
  )) {
    const path = targets.get(/\br:id="([^"]*)"|:id="([^"]*)"/.exec(tag)?.slice(1).join("") ?? "");
    const name = /\bname="([^"]*)"/.exec(tag)?.[1] ?? "";
    if (path) follow(path, xmlDecode(name));
  }
  return owners;
}

/** The parts that a part needs, by the id under which it speaks of them. */
function relationsOf(parts: Parts, path: string): Map<string, string> {
  const folder = path.slice(0, path.lastIndexOf("/"));
  const list = textOf(parts, `${folder}/_rels/${path.slice(folder.length + 1)}.rels`) ?? "";
  const relations = new Map<string, string>();
  for (const [tag] of list.matchAll(/<Relationship\s[^>]*>/g)) {
    const target = /\bTarget="([^"]*)"/.exec(tag)?.[1] ?? "";
    const id = /\bId="([^"]*)"/.exec(tag)?.[1] ?? "";
    if (/TargetMode="External"/.test(tag)) continue;
    relations.set(id, resolved(target.startsWith("/") ? target : `${folder}/${target}`));
  }
  return relations;
}

/** `xl/worksheets/../charts/chart1.xml` as the zip names it. */
function resolved(path: string): string {
  const parts: string[] = [];
  for (const part of path.split("/")) {
    if (part === "..") parts.pop();
    else if (part !== "" && part !== ".") parts.push(part);
  }
  return parts.join("/");
}
