import type { Workbook } from "@cj-tech-master/excelts";
import { areaAt, areaOn, valuesIn, type Area } from "./area.js";
import { eachCellOf, type Formula } from "./formulas.js";
import { place } from "./segments.js";

/**
 * Blocks in which nothing is calculated, as terms are. The engine notes for each formula each cell
 * of each block that it reads: ten thousand hives graded by a large block take a gigabyte so.
 */
export class Constants {
  private readonly calculated = new Set<string>();
  private readonly numbers = new Map<string, number | null>();
  private readonly blocks: unknown[][][] = [];

  constructor(
    private readonly workbook: Workbook,
    formulas: readonly Formula[],
  ) {
    for (const { area } of formulas) {
      eachCellOf(area, (r, c) => this.calculated.add(place(area.sheet, r, c)));
    }
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
    const entries = this.workbook.definedNames.getAllEntries();
    const [named, ...others] = entries.filter((e) => e.name.toLowerCase() === text.toLowerCase());
    const [range, ...more] = others.length === 0 ? (named?.ranges ?? []) : [];
    return range && more.length === 0 ? areaAt(this.workbook, range) : null;
  }

  private isConstant(area: Area): boolean {
    let constant = true;
    eachCellOf(area, (r, c) => (constant &&= !this.calculated.has(place(area.sheet, r, c))));
    return constant;
  }
}
