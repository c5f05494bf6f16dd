import type { Worksheet } from "@cj-tech-master/excelts";
import { isIn, overlaps, type Area } from "./area.js";
import type { Formula } from "./formulas.js";

/** Cells that hold a formula or are filled by one. */
export class CalculatedCells {
  private readonly single = new Map<Worksheet, Set<number>>();
  private readonly blocks: Area[] = [];

  constructor(formulas: readonly Formula[]) {
    for (const { area } of formulas) {
      if (area.top < area.bottom || area.left < area.right) {
        this.blocks.push(area);
        continue;
      }
      const cells = this.single.get(area.sheet) ?? new Set();
      this.single.set(area.sheet, cells.add(place(area.top, area.left)));
    }
  }

  /** Whether any cell of a block is calculated. */
  touch(area: Area): boolean {
    if (this.blocks.some((block) => overlaps(block, area))) return true;
    const cells = this.single.get(area.sheet);
    if (!cells) return false;
    const [height, width] = [area.bottom - area.top + 1, area.right - area.left + 1];
    if (height * width > cells.size)
      return [...cells].some((cell) => isIn(area, Math.floor(cell / COLUMNS), cell % COLUMNS));
    for (let r = area.top; r <= area.bottom; r++) {
      for (let c = area.left; c <= area.right; c++) if (cells.has(place(r, c))) return true;
    }
    return false;
  }
}

/** A sheet has 16,384 columns, counted here from 1. */
const COLUMNS = 16_385;

const place = (row: number, column: number): number => row * COLUMNS + column;
