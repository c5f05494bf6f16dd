/**
 * What Excel would offer to repair in a workbook, found by reading its parts as they stand, without
 * the library that wrote them. The orders of elements are those of ECMA-376 Part 1, sections 18.2.27
 * (workbook), 18.3.1.99 (worksheet), 18.8.39 (styleSheet) and 21.2 (charts), written down from memory.
 */
import { posix } from "node:path";
import { read } from "@e965/xlsx";
import { attribute, childNames, only, parseXml } from "../manifest/xml.js";
import { partsOf } from "./parts.js";

const ORDERS: Readonly<Record<string, string>> = {
  workbook:
    "fileVersion fileSharing workbookPr workbookProtection bookViews sheets functionGroups externalReferences definedNames calcPr oleSize customWorkbookViews pivotCaches extLst",
  worksheet:
    "sheetPr dimension sheetViews sheetFormatPr cols sheetData sheetCalcPr sheetProtection protectedRanges scenarios autoFilter sortState dataConsolidate customSheetViews mergeCells phoneticPr conditionalFormatting dataValidations hyperlinks printOptions pageMargins pageSetup headerFooter rowBreaks colBreaks customProperties cellWatches ignoredErrors smartTags drawing legacyDrawing legacyDrawingHF picture oleObjects controls webPublishItems tableParts extLst",
  styleSheet:
    "numFmts fonts fills borders cellStyleXfs cellXfs cellStyles dxfs tableStyles colors extLst",
  chartSpace:
    "date1904 lang roundedCorners AlternateContent style clrMapOvr pivotSource protection chart spPr txPr externalData printSettings userShapes extLst",
  chart:
    "title autoTitleDeleted pivotFmts view3D floor sideWall backWall plotArea legend plotVisOnly dispBlanksAs extLst",
  plotArea: "layout barChart lineChart catAx valAx dTable spPr",
  barChart: "barDir grouping varyColors ser dLbls gapWidth overlap serLines axId extLst",
  lineChart:
    "grouping varyColors ser dLbls dropLines hiLowLines upDownBars marker smooth axId extLst",
  ser: "idx order tx spPr invertIfNegative pictureOptions marker dPt dLbls trendline errBars cat val smooth shape extLst",
  catAx:
    "axId scaling delete axPos majorGridlines minorGridlines title numFmt majorTickMark minorTickMark tickLblPos spPr txPr crossAx crosses crossesAt auto lblAlgn lblOffset noMultiLvlLbl extLst",
  valAx:
    "axId scaling delete axPos majorGridlines minorGridlines title numFmt majorTickMark minorTickMark tickLblPos spPr txPr crossAx crosses crossesAt crossBetween majorUnit minorUnit dispUnits extLst",
};

/** What is wrong with a file, a sentence each; none where it opens without repair as far as is seen. */
export async function faultsOf(bytes: Uint8Array): Promise<string[]> {
  const parts = await partsOf(bytes);
  const xml = new Map<string, Element>();
  const faults: string[] = [];
  for (const [path, part] of parts) {
    if (!/\.(?:xml|rels)$/.test(path)) continue;
    try {
      xml.set(path, parseXml(new TextDecoder("utf-8", { fatal: true }).decode(part)));
    } catch (error) {
      faults.push(`${path} is not well-formed: ${String(error)}`);
    }
  }
  for (const [path, root] of xml) faults.push(...orderFaults(path, root));
  return [
    ...faults,
    ...typeFaults(parts, xml),
    ...relationFaults(parts, xml),
    ...styleFaults(xml),
    ...[...xml].flatMap(([path, root]) => (isSheet(path) ? sheetFaults(path, root, xml) : [])),
    ...nameFaults(xml),
    ...chartFaults(bytes, xml),
  ];
}

const walked = new WeakMap<Element, readonly Element[]>();

/** All elements within one; lists that the page keeps up to date are too slow for a sheet. */
function within(root: Element): readonly Element[] {
  const known = walked.get(root);
  if (known) return known;
  const found: Element[] = [];
  const walk = (element: Element): void => {
    for (let e = element.firstElementChild; e; e = e.nextElementSibling) {
      found.push(e);
      walk(e);
    }
  };
  walk(root);
  walked.set(root, found);
  return found;
}

function all(root: Element, name: string): readonly Element[] {
  return name === "*" ? within(root) : within(root).filter((e) => e.localName === name);
}

const isSheet = (path: string): boolean => /^xl\/worksheets\/[^/]+\.xml$/.test(path);
const count = (xml: ReadonlyMap<string, Element>, path: string, name: string): number => {
  const root = xml.get(path);
  return root ? all(root, name).length : 0;
};

function orderFaults(path: string, root: Element): string[] {
  return [root, ...all(root, "*")].flatMap((element) => {
    const order = ORDERS[element.localName]?.split(" ");
    if (!order) return [];
    const names = childNames(element);
    const places = names.map((name) => order.indexOf(name));
    const bad = places.findIndex((at, i) => at < 0 || at < (places[i - 1] ?? 0));
    const child = names[bad];
    return child ? [`${path}: <${child}> is out of place in <${element.localName}>`] : [];
  });
}

function typeFaults(parts: ReadonlyMap<string, unknown>, xml: ReadonlyMap<string, Element>) {
  const root = xml.get("[Content_Types].xml");
  if (!root) return ["there is no [Content_Types].xml"];
  const named = all(root, "Override").map((part) => attribute(part, "PartName").slice(1));
  const endings = all(root, "Default").map((part) => attribute(part, "Extension"));
  const untyped = [...parts.keys()].filter(
    (path) =>
      path !== "[Content_Types].xml" &&
      !named.includes(path) &&
      !endings.includes(path.slice(path.lastIndexOf(".") + 1)),
  );
  // An .xml part that is known by its ending alone is to Excel no part of a workbook.
  const plain = [...parts.keys()].filter(
    (path) => /^xl\/.*\.xml$/.test(path) && !named.includes(path),
  );
  return [
    ...untyped.map((path) => `${path} has no content type`),
    ...plain.map((path) => `${path} has no content type of its own`),
    ...named
      .filter((path) => !parts.has(path))
      .map((path) => `${path} has a type and is not there`),
    ...doubles(named).map((path) => `${path} has two content types`),
  ];
}

function relationFaults(parts: ReadonlyMap<string, unknown>, xml: ReadonlyMap<string, Element>) {
  return [...xml].flatMap(([path, root]) => {
    if (!path.endsWith(".rels")) return [];
    const of = path.replace("_rels/", "").replace(/\.rels$/, "");
    const relations = all(root, "Relationship");
    const ids = relations.map((relation) => attribute(relation, "Id"));
    const missing = relations
      .filter((relation) => relation.getAttribute("TargetMode") !== "External")
      .map((relation) => attribute(relation, "Target"))
      .map((target) =>
        target.startsWith("/") ? target.slice(1) : posix.join(posix.dirname(of), target),
      )
      .filter((target) => !parts.has(target));
    const owner = xml.get(of);
    const used = owner
      ? [owner, ...all(owner, "*")].flatMap((element) =>
          [...element.attributes]
            .filter(({ namespaceURI }) => namespaceURI?.endsWith("/relationships"))
            .map(({ value }) => value),
        )
      : [];
    return [
      ...missing.map((target) => `${path} leads to ${target}, which is not there`),
      ...doubles(ids).map((id) => `${path} has ${id} twice`),
      ...used
        .filter((id) => !ids.includes(id))
        .map((id) => `${of} speaks of ${id}, not in ${path}`),
    ];
  });
}

function styleFaults(xml: ReadonlyMap<string, Element>): string[] {
  const root = xml.get("xl/styles.xml");
  if (!root) return [];
  const lists = ["fonts", "fills", "borders", "cellXfs", "dxfs", "numFmts"].flatMap((name) =>
    all(root, name).filter((list) => list.parentElement === root),
  );
  const wrong = lists
    .filter((list) => list.hasAttribute("count"))
    .filter((list) => Number(attribute(list, "count")) !== list.children.length)
    .map(
      (list) => `<${list.localName}> says ${attribute(list, "count")} of ${list.children.length}`,
    );
  const sizes = Object.fromEntries(lists.map((list) => [list.localName, list.children.length]));
  const formats = new Set(all(root, "numFmt").map((format) => format.getAttribute("numFmtId")));
  const unknown = [...only(root, "cellXfs").children].flatMap((xf, i) => {
    const over = (["font", "fill", "border"] as const).filter(
      (name) => Number(xf.getAttribute(`${name}Id`) ?? 0) >= sizes[`${name}s`]!,
    );
    const format = xf.getAttribute("numFmtId") ?? "0";
    const isUnknown = Number(format) >= 164 && !formats.has(format);
    return [...over, ...(isUnknown ? ["number format"] : [])].map(
      (name) => `style ${i} has a ${name} that is not there`,
    );
  });
  return [...wrong, ...unknown];
}

function sheetFaults(path: string, root: Element, xml: ReadonlyMap<string, Element>): string[] {
  const styles = xml.get("xl/styles.xml");
  const xfs = styles ? only(styles, "cellXfs").children.length : 1;
  const dxfs = styles ? all(styles, "dxf").length : 0;
  const strings = count(xml, "xl/sharedStrings.xml", "si");
  const metadata = count(xml, "xl/metadata.xml", "rc");
  const faults: string[] = [];
  const say = (fault: string): unknown => faults.push(`${path}: ${fault}`);
  const [left, top, right, bottom] = corners(
    all(root, "dimension")[0]?.getAttribute("ref") ?? "A1",
  );
  let lastRow = 0;
  for (const row of all(root, "row")) {
    const r = Number(attribute(row, "r"));
    if (r <= lastRow) say(`row ${r} stands after ${lastRow}`);
    lastRow = r;
    let lastColumn = 0;
    for (const cell of all(row, "c")) {
      const address = attribute(cell, "r");
      const [column, at] = corners(address);
      if (at !== r || column <= lastColumn) say(`${address} is out of place`);
      lastColumn = column;
      if (column < left || column > right || r < top || r > bottom) say(`${address} is outside`);
      if (Number(cell.getAttribute("s") ?? 0) >= xfs) say(`${address} has a style too many`);
      const value = all(cell, "v")[0]?.textContent ?? null;
      const type = cell.getAttribute("t") ?? "n";
      if (type === "s" && !(Number(value) < strings)) say(`${address} has a string too many`);
      if (type === "n" && value !== null && !Number.isFinite(Number(value)))
        say(`${address} holds ${value} as a number`);
      const formula = all(cell, "f")[0];
      if (formula && value === null) say(`${address} has a formula and no value`);
      if (formula?.textContent?.startsWith("=")) say(`${address} has a formula with a sign before`);
      const cm = Number(cell.getAttribute("cm") ?? 0);
      if (cm > metadata) say(`${address} has metadata that are not there`);
    }
  }
  const merged = all(root, "mergeCell").map((cell) => corners(attribute(cell, "ref")));
  merged.forEach((one, i) => {
    if (merged.slice(0, i).some((other) => overlap(one, other))) say("merged cells overlap");
  });
  for (const rule of all(root, "cfRule")) {
    if (Number(rule.getAttribute("dxfId") ?? -1) >= dxfs) say("a rule has a format too many");
  }
  return faults;
}

function nameFaults(xml: ReadonlyMap<string, Element>): string[] {
  const root = xml.get("xl/workbook.xml");
  if (!root) return ["there is no xl/workbook.xml"];
  const sheets = all(root, "sheet").map((sheet) => attribute(sheet, "name"));
  const long = sheets.filter((name) => name.length > 31 || /[[\]:*?/\\]/.test(name));
  const names = all(root, "definedName");
  return [
    ...long.map((name) => `no sheet may be named ${name}`),
    ...doubles(sheets.map((name) => name.toLowerCase())).map((name) => `two sheets ${name}`),
    ...doubles(names.map((n) => `${n.getAttribute("localSheetId")} ${attribute(n, "name")}`)),
    ...names
      .filter((name) => Number(name.getAttribute("localSheetId") ?? 0) >= sheets.length)
      .map((name) => `${attribute(name, "name")} is of a sheet that is not there`),
    ...names
      .filter((name) => {
        const sheet = /^(?:'((?:[^']|'')+)'|([^'!]+))!/.exec(name.textContent ?? "");
        const said = sheet?.[1]?.replaceAll("''", "'") ?? sheet?.[2];
        return said !== undefined && !sheets.includes(said);
      })
      .map((name) => `${attribute(name, "name")} names a sheet that is not there`),
  ];
}

/** What a chart keeps of its cells is what stands in them. */
function chartFaults(bytes: Uint8Array, xml: ReadonlyMap<string, Element>): string[] {
  const charts = [...xml].filter(([path]) => /^xl\/charts\/chart\d+\.xml$/.test(path));
  if (charts.length === 0) return [];
  const { Sheets } = read(bytes);
  return charts.flatMap(([path, root]) => {
    const axes = all(root, "axId").map((axis) => attribute(axis, "val"));
    const alone = axes.filter((axis) => axes.filter((other) => other === axis).length < 2);
    const references = [...all(root, "numRef"), ...all(root, "strRef")].flatMap((reference) => {
      const formula = only(reference, "f").textContent ?? "";
      const [, name = "", area = ""] = /^'?(.+?)'?!(.+)$/.exec(formula) ?? [];
      const [left, top, right, bottom] = corners(area.replaceAll("$", ""));
      const inCells: string[] = [];
      for (let r = top; r <= bottom; r++) {
        for (let c = left; c <= right; c++) {
          inCells.push(String((Sheets[name]?.[`${letters(c)}${r}`] as { v: unknown })?.v ?? ""));
        }
      }
      const kept = all(reference, "v").map((value) => value.textContent ?? "");
      return kept.join("\n") === inCells.join("\n")
        ? []
        : [`${path}: ${formula} is not as its cells`];
    });
    return [...alone.map((axis) => `${path}: axis ${axis} is used once`), ...references];
  });
}

function doubles(list: readonly string[]): string[] {
  return list.filter((item, i) => list.indexOf(item) < i);
}

type Corners = readonly [left: number, top: number, right: number, bottom: number];

function corners(ref: string): Corners {
  const [from = "", to = from] = ref.split(":");
  return [column(from), rowOf(from), column(to), rowOf(to)];
}

const rowOf = (address: string): number => Number(/\d+/.exec(address)?.[0]);

function column(address: string): number {
  const name = /[A-Z]+/.exec(address)?.[0] ?? "";
  return [...name].reduce((sum, letter) => 26 * sum + letter.charCodeAt(0) - 64, 0);
}

function letters(number: number): string {
  const before = Math.floor((number - 1) / 26);
  return (before > 0 ? letters(before) : "") + String.fromCharCode(65 + ((number - 1) % 26));
}

function overlap(a: Corners, b: Corners): boolean {
  return a[0] <= b[2] && b[0] <= a[2] && a[1] <= b[3] && b[1] <= a[3];
}
