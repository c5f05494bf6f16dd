import type { Workbook } from "@cj-tech-master/excelts";
import { areaAt, areaOn, valuesIn, type Area } from "./area.js";
import { CalculatedCells } from "./calculated-cells.js";
import type { Formula } from "./formulas.js";

/**
 * Blocks in which nothing is calculated, as terms are. The engine notes for each formula each cell
 * of each block that it reads: ten thousand hives graded by a large block take a gigabyte so.
 */
export class Constants {
  private readonly calculated: CalculatedCells;
  private readonly names: ReadonlyMap<string, string>;
  private readonly numbers = new Map<string, number | null>();
  private readonly blocks: unknown[][][] = [];

  constructor(
    private readonly workbook: Workbook,
    formulas: readonly Formula[],
  ) {
    this.calculated = new CalculatedCells(formulas);
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

  /** Whether nothing in a block is calculated. */
  isUntouched(area: Area): boolean {
    return !this.calculated.touch(area);
  }

  private areaNamed(text: string, sheetName: string): Area | null {
    if (text.startsWith("$")) return areaOn(this.workbook.getWorksheet(sheetName)!, text);
    if (text.includes("!")) return areaAt(this.workbook, text);
    const range = this.names.get(text.toLowerCase());
    return range === undefined ? null : areaAt(this.workbook, range);
  }

  private isConstant(area: Area): boolean {
    return (area.top < area.bottom || area.left < area.right) && this.isUntouched(area);
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
