import type { Workbook } from "@cj-tech-master/excelts";
import { areaAt, areaOn, valuesIn, type Area } from "./area.js";
import { calculatedCells } from "./doubled.js";
import { eachCellOf, type Formula } from "./formulas.js";
import { place } from "./segments.js";

/**
 * Blocks in which nothing is calculated, as terms are. The engine notes for each formula each cell
 * of each block that it reads: ten thousand hives graded by a large block take a gigabyte so.
 */
export class Constants {
  private readonly calculated: ReadonlySet<string>;
  private readonly names: ReadonlyMap<string, string>;
  private readonly numbers = new Map<string, number | null>();
  private readonly blocks: unknown[][][] = [];

  constructor(
    private readonly workbook: Workbook,
    formulas: readonly Formula[],
  ) {
    this.calculated = calculatedCells(formulas);
    this.names = namedBlocks(workbook);
  }

  /** The number of the block that a text in a formula on a sheet names; null where it is no constant. */
  numberOf(text: string, sheetName: string): number | null {
    const key = text.startsWith("$") ? `${sheetName}!${text}` : text.toLowerCase();
    const known = this.numbers.get(key);
    if (known !== undefined) return known;
    const area = this.areaNamed(text, sheetName);
    const number = area && this.isConstant(area) ? this.blocks.push(valuesIn(area)) - 1 : null;
    this.numbers.set(key, number);
    return number;
  }

  block(number: number): unknown[][] {
    return this.blocks[number]!;
  }

  private areaNamed(text: string, sheetName: string): Area | null {
    if (text.startsWith("$")) return areaOn(this.workbook.getWorksheet(sheetName)!, text);
    if (text.includes("!")) return areaAt(this.workbook, text);
    const range = this.names.get(text.toLowerCase());
    return range === undefined ? null : areaAt(this.workbook, range);
  }

  private isConstant(area: Area): boolean {
    let constant = area.top < area.bottom || area.left < area.right;
    eachCellOf(area, (r, c) => (constant &&= !this.calculated.has(place(area.sheet, r, c))));
    return constant;
  }
}

/** Names that mean one block on every sheet, in lower case. */
function namedBlocks(workbook: Workbook): ReadonlyMap<string, string> {
  const blocks = new Map<string, string>();
  const twice = new Set<string>();
  for (const { name, ranges } of workbook.definedNames.getAllEntries()) {
    const key = name.toLowerCase();
    if (blocks.has(key) || ranges.length !== 1) twice.add(key);
    else blocks.set(key, ranges[0]!);
  }
  twice.forEach((key) => blocks.delete(key));
  return blocks;
}
