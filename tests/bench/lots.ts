import { DROPS } from "../../src/functions/drops.js";
import { EMERGENCE } from "../../src/functions/emergence.js";
import { WHAT_IF } from "../../src/functions/what-if.js";
import { nanoseconds } from "./measure.js";
import { FRAMES_ONLY, LOT_TERMS, NONE, numberColumn, oneLotBlock, palletBlock } from "./sheets.js";

const THRESHOLDS = [Array.from({ length: 20 }, (_, i) => 6 + i / 10)];

/** A lot under many contracts. */
export function benchLots(): void {
  const hives = 1e5;
  const cells = oneLotBlock(hives);
  const [least = NaN] = nanoseconds(hives, () => twoPasses(cells));
  console.log(
    "\n100,000 hives, beside a bare two-pass mean and deviation: ns a hive, times the floor",
  );
  for (const term of ["average frames", "minimum frames"]) {
    const ours = once(() => WHAT_IF(cells, term, THRESHOLDS, 2 * hives, LOT_TERMS, "Cherry"));
    const each = (ours * 1e6) / hives;
    console.log(
      `${`WHAT_IF, 20 of ${term}`.padEnd(32)}${Math.round(each)}  ${(each / least).toFixed(0)} x ${least.toFixed(1)}`,
    );
  }
}

/** What looks ahead: a column of hives in one call. */
export function benchAhead(): void {
  const hives = 1e5;
  const frames = numberColumn(hives);
  const [each = NaN] = nanoseconds(hives, () => EMERGENCE(frames, NONE, NONE, [[46109]], "frames"));
  console.log("\nlooking ahead, 100,000 hives: ns a hive, ms in all");
  console.log(`EMERGENCE  ${Math.round(each)}  ${((each * hives) / 1e6).toFixed(1)}`);
}

/** 480 hives of three lots, 120 pallets, all opened or one in five, on 6 to 60 drops. */
export function benchDrops(): void {
  console.log("\nDROPS, 480 hives on 120 pallets: ms, the quickest of three");
  const lots = [["L0"], ["L1"], ["L2"]];
  for (const drops of [6, 24, 60]) {
    for (const every of [1, 5]) {
      const cells = palletBlock(480, every);
      const sizes = Array.from({ length: drops }, () => [480 / drops]);
      const run = () =>
        DROPS(cells, sizes, FRAMES_ONLY, "Cherry", lots, [[160], [160], [160]], NONE, NONE);
      const ms = Math.min(...[1, 2, 3].map(() => once(run)));
      const opened = `${every === 1 ? "all" : `1 in ${every}`} opened`;
      const remark = String(run().at(-1)!.at(-1)).split(";")[0];
      console.log(
        `${drops} drops, ${opened}`.padEnd(26) + `${ms.toFixed(0).padStart(5)}  ${remark}`,
      );
    }
  }
}

/** The floor of a lot: mean and deviation of one column in two passes. */
function twoPasses(cells: unknown[][]): number {
  const values = cells.map((row) => Number(row[3]) || 0);
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length);
}

/** Milliseconds of the processor. */
function once(work: () => unknown): number {
  const start = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(start);
  return (user + system) / 1e3;
}
