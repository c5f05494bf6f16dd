import { COVER_TO_BEES } from "../../src/functions/bees.js";
import { LOT } from "../../src/functions/lot.js";
import { WHAT_IF } from "../../src/functions/what-if.js";
import { GRADE } from "../../src/functions/grade.js";
import { READING } from "../../src/functions/reading.js";
import { YARD_COLUMNS } from "../../src/functions/yard.js";
import { DROPS } from "../../src/functions/drops.js";
import { EMERGENCE } from "../../src/functions/emergence.js";
import { FORECAST } from "../../src/functions/forecast.js";
import {
  coverBlock,
  numberColumn,
  palletBlock,
  TERMS,
  writtenColumn,
  yardBlock,
} from "./sheets.js";

const SIZES = [1e3, 1e4, 1e5, 1e6];
const FRAMES_ONLY = TERMS.filter(([term]) => term !== "brood" && term !== "laying queen");
const NONE = undefined as unknown as unknown[][];
const LOT_TERMS = [...TERMS, ["grade 1 fee", 68], ["grade 2 fee", 60], ["grade 3 fee", 45]];

interface Contest {
  readonly name: string;
  readonly sheet: (hives: number) => unknown[][];
  readonly width: number;
  readonly run: (cells: unknown[][]) => unknown[][];
}

const contests: Contest[] = [
  { name: "READING, as written", sheet: writtenColumn, width: 1, run: (cells) => READING(cells) },
  {
    name: "GRADE, number cells",
    sheet: numberColumn,
    width: 1,
    run: (cells) => GRADE(cells, FRAMES_ONLY, [["Cherry"]]),
  },
  {
    name: "GRADE, as written",
    sheet: writtenColumn,
    width: 1,
    run: (cells) => GRADE(cells, FRAMES_ONLY, [["Cherry"]]),
  },
  {
    name: "COVER_TO_BEES, 10",
    sheet: coverBlock,
    width: 10,
    run: (cells) => COVER_TO_BEES(cells),
  },
  {
    name: "YARD_COLUMNS",
    sheet: yardBlock,
    width: 7,
    run: (cells) => YARD_COLUMNS(cells, TERMS, NONE),
  },
  {
    name: "LOT",
    sheet: yardBlock,
    width: 1,
    run: (cells) => sound(LOT(cells, cells.length - 1, LOT_TERMS, "Cherry")),
  },
  {
    name: "FORECAST",
    sheet: numberColumn,
    width: 1,
    run: (cells) => FORECAST(cells, [[46109]], [[46123]], cells, [[60]]),
  },
];
const THRESHOLDS = [Array.from({ length: 20 }, (_, i) => 6 + i / 10)];

/** The lot's floor: mean and deviation of one column in two passes. */
function twoPasses(cells: unknown[][]): number {
  const values = cells.map((row) => Number(row[3]) || 0);
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length);
}

function benchLots(): void {
  const hives = 1e5;
  const cells = yardBlock(hives);
  const least = nanoseconds(hives, () => twoPasses(cells));
  const works: [string, () => unknown][] = [
    [
      "WHAT_IF, 20 averages",
      () => WHAT_IF(cells, "average frames", THRESHOLDS, 2 * hives, LOT_TERMS, "Cherry"),
    ],
    [
      "WHAT_IF, 20 minimums",
      () => WHAT_IF(cells, "minimum frames", THRESHOLDS, 2 * hives, LOT_TERMS, "Cherry"),
    ],
  ];
  console.log(
    "\n100,000 hives, beside a bare two-pass mean and deviation: ns a hive, times the floor",
  );
  for (const [name, work] of works) {
    const start = performance.now();
    work();
    const ours = ((performance.now() - start) * 1e6) / hives;
    console.log(
      `${name.padEnd(22)}${Math.round(ours)}  ${(ours / least).toFixed(0)} x ${least.toFixed(1)}`,
    );
  }
}

/** What looks ahead: a column of hives in one call, and a night's loading list. */
function benchAhead(): void {
  const hives = 1e5;
  const frames = numberColumn(hives);
  const seen = [[46109]];
  const works: [string, number, () => unknown][] = [
    ["EMERGENCE", hives, () => EMERGENCE(frames, NONE, NONE, seen, "frames")],
  ];
  console.log("\nlooking ahead: ns a hive, ms in all");
  for (const [name, count, work] of works) {
    const each = nanoseconds(count, work);
    console.log(`${name.padEnd(22)}${Math.round(each)}  ${((each * count) / 1e6).toFixed(1)}`);
  }
}

/** 480 hives of three lots, 120 pallets, all opened or one in five, on 6 to 60 drops. */
function benchDrops(): void {
  console.log("\nDROPS, 480 hives on 120 pallets: ms, the quickest of three");
  const lots = [["L0"], ["L1"], ["L2"]];
  for (const drops of [6, 24, 60]) {
    for (const every of [1, 5]) {
      const cells = palletBlock(480, every);
      const sizes = Array.from({ length: drops }, () => [480 / drops]);
      const run = () =>
        DROPS(cells, sizes, FRAMES_ONLY, "Cherry", lots, [[160], [160], [160]], NONE, NONE);
      const ms = Math.min(
        ...[1, 2, 3].map(() => {
          const start = performance.now();
          run();
          return performance.now() - start;
        }),
      );
      const opened = `${every === 1 ? "all" : `1 in ${every}`} opened`;
      const remark = String(run().at(-1)!.at(-1)).split(";")[0];
      console.log(
        `${drops} drops, ${opened}`.padEnd(26) + `${ms.toFixed(0).padStart(5)}  ${remark}`,
      );
    }
  }
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

/** The quickest of several runs, in ns of the processor a hive, which others on it do not change: what the work costs when nothing else disturbs it. */
function nanoseconds(hives: number, work: () => unknown): number {
  const runs = hives >= 1e6 ? 3 : hives >= 1e5 ? 5 : 20;
  let best = Infinity;
  for (let i = 0; i < runs; i++) {
    const start = process.cpuUsage();
    work();
    const { user, system } = process.cpuUsage(start);
    best = Math.min(best, user + system);
  }
  return (best * 1e3) / hives;
}

function megabytes(work: () => unknown): number {
  globalThis.gc?.();
  const before = process.memoryUsage().heapUsed;
  const result = work();
  const used = process.memoryUsage().heapUsed - before;
  return result ? used / 1e6 : 0;
}

export function bench(): void {
  console.log(
    "ns a hive, the quickest of several runs; the floor reads and fills the same cells\n",
  );
  console.log(
    "                       hives      ours     floor     times    growth   heap MB  cells MB",
  );
  for (const { name, sheet, width, run } of contests) {
    let last = 0;
    for (const hives of SIZES) {
      let cells: unknown[][] = [];
      const own = megabytes(() => (cells = sheet(hives)));
      const ours = nanoseconds(hives, () => run(cells));
      const least = nanoseconds(hives, () => floor(cells, width));
      const heap = megabytes(() => run(cells));
      const growth = last === 0 ? "" : `x${(ours / last).toFixed(2)}`;
      last = ours;
      const figures = [
        hives,
        Math.round(ours),
        Math.round(least),
        (ours / least).toFixed(1),
        growth,
        heap.toFixed(1),
        own.toFixed(1),
      ];
      console.log(
        name.padEnd(20) + figures.map((f, i) => String(f).padStart(i === 0 ? 8 : 10)).join(""),
      );
    }
  }
  benchLots();
  benchAhead();
  benchDrops();
}
