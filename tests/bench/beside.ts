import type { Contest } from "./contests.js";
import { megabytes, nanoseconds } from "./measure.js";

const SIZES = [1e3, 1e4, 1e5, 1e6];
/** Under this the engine has no need to collect anything, and what stands there says little. */
const LEAST_WEIGHED = 1e5;

export const HEADING =
  "the floor reads the same cells and fills a result of the same shape\n" +
  "                       hives   ns a hive     floor     times    growth  floor's" +
  "   MB over   cells'     times    growth";

/** Prints what a function takes over growing sheets, and what each tenfold adds a hive. */
export function beside({ name, sheet, width, run }: Contest): void {
  let [lastOurs, lastFloor, lastHeap] = [NaN, NaN, NaN];
  for (const hives of SIZES) {
    let cells: unknown[][] = [];
    const own = megabytes(() => (cells = sheet(hives)));
    const [ours = NaN, least = NaN] = nanoseconds(
      hives,
      () => sound(run(cells)),
      () => floor(cells, width),
    );
    const heap = hives < LEAST_WEIGHED ? NaN : megabytes(() => run(cells));
    const figures = [
      hives,
      Math.round(ours),
      Math.round(least),
      figure(ours / least),
      growth(ours, lastOurs),
      growth(least, lastFloor),
      figure(heap),
      figure(Number.isNaN(heap) ? NaN : own),
      figure(heap / own),
      growth(heap / 10, lastHeap),
    ];
    [lastOurs, lastFloor, lastHeap] = [ours, least, heap];
    console.log(
      name.padEnd(20) + figures.map((f, i) => String(f).padStart(i === 0 ? 8 : 10)).join(""),
    );
  }
}

function growth(now: number, before: number): string {
  return Number.isNaN(before) ? "" : `x${(now / before).toFixed(2)}`;
}

function figure(value: number): string {
  return Number.isNaN(value) ? "" : value.toFixed(1);
}

/** An answer that is one error took no time, and is no figure. */
function sound(rows: unknown[][]): unknown[][] {
  if (rows.length === 1) throw new Error(String((rows[0]![0] as Error).message));
  return rows;
}

/** The floor: reads every cell and fills a result of the same shape, and does nothing else. */
function floor(cells: unknown[][], width: number): unknown[][] {
  let filled = 0;
  return cells.map((row) => {
    for (const cell of row) if (cell !== "" && cell !== 0) filled++;
    return Array.from({ length: width }, () => filled);
  });
}
