import { zip } from "@cj-tech-master/excelts/archive";

const HEAD = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';
const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
export const OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const PACKAGE = "http://schemas.openxmlformats.org/package/2006";
const SPREADSHEET = "application/vnd.openxmlformats-officedocument.spreadsheetml";

/** What a test puts into a file of its own, beside its sheets. */
export interface FileParts {
  /** Inside of `<worksheet>`, by sheet name. */
  sheets: Record<string, string>;
  /** Inside of `<definedNames>`. */
  names?: string;
  /** Before `<sheets>`, as `<workbookPr date1904="1"/>`. */
  properties?: string;
  /** Tables, all on the first sheet. */
  tables?: string[];
  /** Further parts by path, and what the first sheet says it needs of them. */
  parts?: Record<string, string>;
  sheetRelations?: { id: string; type: string; target: string }[];
  workbookRelations?: { id: string; type: string; target: string }[];
  types?: Record<string, string>;
}

/** A workbook with the XML that Excel writes, by hand: what a library writes would not test enough. */
export function excelFile(file: FileParts): Uint8Array {
  const archive = zip({ reproducible: true });
  for (const [path, text] of Object.entries(partsOf(file))) archive.add(path, text);
  return archive.bytesSync();
}

function partsOf({ sheets, names, properties, tables = [], parts, ...more }: FileParts) {
  const list = Object.entries(sheets);
  const types: Record<string, string> = {
    "/xl/workbook.xml": `${SPREADSHEET}.sheet.main+xml`,
    "/xl/metadata.xml": `${SPREADSHEET}.sheetMetadata+xml`,
    "/xl/styles.xml": `${SPREADSHEET}.styles+xml`,
    ...more.types,
  };
  list.forEach(
    (_, i) => (types[`/xl/worksheets/sheet${i + 1}.xml`] = `${SPREADSHEET}.worksheet+xml`),
  );
  tables.forEach((_, i) => (types[`/xl/tables/table${i + 1}.xml`] = `${SPREADSHEET}.table+xml`));
  return {
    "[Content_Types].xml": `${HEAD}<Types xmlns="${PACKAGE}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/>${Object.entries(
      types,
    )
      .map(([part, type]) => `<Override PartName="${part}" ContentType="${type}"/>`)
      .join("")}</Types>`,
    "_rels/.rels": relations([{ id: "rId1", type: "officeDocument", target: "xl/workbook.xml" }]),
    "xl/workbook.xml": `${HEAD}<workbook xmlns="${MAIN}" xmlns:r="${OFFICE}">${properties ?? ""}<sheets>${list
      .map(([name], i) => `<sheet name="${name}" sheetId="${i + 1}" r:id="rId${i + 1}"/>`)
      .join("")}</sheets>${names ? `<definedNames>${names}</definedNames>` : ""}</workbook>`,
    "xl/_rels/workbook.xml.rels": relations([
      ...list.map((_, i) => ({
        id: `rId${i + 1}`,
        type: "worksheet",
        target: `worksheets/sheet${i + 1}.xml`,
      })),
      { id: "rIdMeta", type: "sheetMetadata", target: "metadata.xml" },
      { id: "rIdStyles", type: "styles", target: "styles.xml" },
      ...(more.workbookRelations ?? []),
    ]),
    "xl/metadata.xml": METADATA,
    "xl/styles.xml": STYLES,
    ...Object.fromEntries(
      list.map(([, inside], i) => [
        `xl/worksheets/sheet${i + 1}.xml`,
        `${HEAD}<worksheet xmlns="${MAIN}" xmlns:r="${OFFICE}">${inside}${i === 0 ? tableParts(tables) : ""}</worksheet>`,
      ]),
    ),
    "xl/worksheets/_rels/sheet1.xml.rels": relations([
      ...tables.map((_, i) => ({
        id: `rIdT${i + 1}`,
        type: "table",
        target: `../tables/table${i + 1}.xml`,
      })),
      ...(more.sheetRelations ?? []),
    ]),
    ...Object.fromEntries(tables.map((table, i) => [`xl/tables/table${i + 1}.xml`, HEAD + table])),
    ...parts,
  };
}

function tableParts(tables: string[]): string {
  if (tables.length === 0) return "";
  const parts = tables.map((_, i) => `<tablePart r:id="rIdT${i + 1}"/>`).join("");
  return `<tableParts count="${tables.length}">${parts}</tableParts>`;
}

export function relations(list: { id: string; type: string; target: string }[]): string {
  const items = list.map(({ id, type, target }) => {
    const mode =
      target.startsWith("http") || target.startsWith("file") ? ' TargetMode="External"' : "";
    const full = type.startsWith("http") ? type : `${OFFICE}/${type}`;
    return `<Relationship Id="${id}" Type="${full}" Target="${target}"${mode}/>`;
  });
  return `${HEAD}<Relationships xmlns="${PACKAGE}/relationships">${items.join("")}</Relationships>`;
}

/** A table as Excel keeps it; headings as they stand in the file, line breaks as `_x000a_`. */
export function table(name: string, ref: string, columns: string[], more = ""): string {
  const list = columns.map((c, i) => `<tableColumn id="${i + 1}" name="${c}"/>`).join("");
  return `<table xmlns="${MAIN}" id="1" name="${name}" displayName="${name}" ref="${ref}" ${more}><autoFilter ref="${ref}"/><tableColumns count="${columns.length}">${list}</tableColumns></table>`;
}

/** `<sheetData>` from cells: a number, a text, or XML after the address (` cm="1"><f>..</f><v>..</v>`). */
export function sheetData(cells: Record<string, number | string>): string {
  const rows = new Map<number, string>();
  for (const [address, value] of Object.entries(cells)) {
    const row = Number(address.replace(/\D/g, ""));
    rows.set(row, (rows.get(row) ?? "") + cell(address, value));
  }
  return `<sheetData>${[...rows].map(([r, cells]) => `<row r="${r}">${cells}</row>`).join("")}</sheetData>`;
}

function cell(address: string, value: number | string): string {
  if (typeof value === "number") return `<c r="${address}"><v>${value}</v></c>`;
  if (/^( [a-z]+=|>)/.test(value)) return `<c r="${address}"${value}</c>`;
  return `<c r="${address}" t="inlineStr"><is><t xml:space="preserve">${escaped(value)}</t></is></c>`;
}

/** A formula with the result that the file holds. */
export function formula(text: string, held: number | string = 0): string {
  const type = typeof held === "string" ? ' t="str"' : "";
  return `${type}><f>${escaped(text)}</f><v>${held}</v>`;
}

/** A formula that fills `ref`, as Excel 365 keeps it. */
export function spill(text: string, ref: string, held: number | string = 0): string {
  return ` cm="1"${formula(text, held).replace("<f>", `<f t="array" ref="${ref}">`)}`;
}

export function escaped(text: string): string {
  return text.replace(/&/g, "&amp;").replace(/</g, "&lt;").replace(/>/g, "&gt;");
}

const STYLES = `${HEAD}<styleSheet xmlns="${MAIN}"><fonts count="1"><font><sz val="11"/><name val="Calibri"/></font></fonts><fills count="2"><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill></fills><borders count="1"><border><left/><right/><top/><bottom/><diagonal/></border></borders><cellStyleXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/></cellStyleXfs><cellXfs count="3"><xf numFmtId="0" fontId="0" fillId="0" borderId="0" xfId="0"/><xf numFmtId="14" fontId="0" fillId="0" borderId="0" xfId="0" applyNumberFormat="1"/><xf numFmtId="49" fontId="0" fillId="0" borderId="0" xfId="0" applyNumberFormat="1"/></cellXfs></styleSheet>`;

const METADATA = `${HEAD}<metadata xmlns="${MAIN}" xmlns:xda="http://schemas.microsoft.com/office/spreadsheetml/2017/dynamicarray"><metadataTypes count="1"><metadataType name="XLDAPR" minSupportedVersion="120000" copy="1" pasteAll="1" pasteValues="1" merge="1" splitFirst="1" rowColShift="1" clearFormats="1" clearComments="1" assign="1" coerce="1" cellMeta="1"/></metadataTypes><futureMetadata name="XLDAPR" count="1"><bk><extLst><ext uri="{bdbb8cdc-fa1e-496e-a857-3c3f30c029c3}"><xda:dynamicArrayProperties fDynamic="1" fCollapsed="0"/></ext></extLst></bk></futureMetadata><cellMetadata count="1"><bk><rc t="1" v="0"/></bk></cellMetadata></metadata>`;
