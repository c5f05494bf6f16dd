import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { CellError } from "../../src/functions/cells.js";
import { functions } from "../../src/functions/index.js";
import { cellsOf, comb, one, serial, terms } from "./sheet.js";

const blank = fc.constantFrom("", null, undefined, 0, " ");
const error = fc
  .constantFrom("#N/A", "#REF!", "#VALUE!", "#DIV/0!", "#NAME?", "#SPILL!")
  .map((code) => new CellError(code as "#N/A"));
const date = fc.integer({ min: serial(2000, 1, 1), max: serial(2099, 12, 31) });
const frames = fc.integer({ min: 1, max: 60 }).map((quarters) => quarters / 4);
const percent = fc.integer({ min: 1, max: 100 });
const said = fc
  .constantFrom(
    "7-8 7½ about|5 12+ half none dead - 60% ~6 5|full 8-Jul Dec-13 7/8 1/2 7,5 0.5 yes no ? 42|x|27|cm"
      .split(" ")
      .map((text) => text.replaceAll("|", " ")),
  )
  .chain((texts) => fc.constantFrom(...texts));
const longest = fc
  .constantFrom("7", "x", " ", "(", "½", "-", "\u0301", "中", "7-", "𝟕", "<", "grade ")
  .map((piece) => piece.repeat(32_767).slice(0, 32_767));
/** Anything that a host may ever hand over. */
const anything: fc.Arbitrary<unknown> = fc.oneof(
  { weight: 3, arbitrary: fc.oneof(frames, percent, said) },
  blank,
  error,
  date,
  fc.boolean(),
  fc.constantFrom(NaN, Infinity, -Infinity, -0, 5e-324, 1.7e308, -1, 1e-7),
  fc.double(),
  fc.string({ unit: "binary", maxLength: 12 }),
  fc.string({ unit: "grapheme", maxLength: 12 }),
  fc.constantFrom("__proto__", "constructor", "Term", "Cherry", "Hive", "Bees", "deep"),
);
type Parameter = (typeof functions)[number]["parameters"][number];
const blockOf = (cell: fc.Arbitrary<unknown>) =>
  fc.array(fc.array(cell, { maxLength: 4 }), { maxLength: 6 });

describe("any cells at all", () => {
  const STANDARDS = ["Almond Board of California", "Nova Scotia", "CAPA Canada"];
  const TERMS: readonly (readonly [string, unknown])[] = [
    ["minimum frames", 6],
    ["brood", 3],
    ["brood counted as", "combs"],
    ["comb rule", "three-quarters"],
    ["frame size", "42 x 27 cm"],
    ["part frame", "nearest"],
    ["laying queen", "yes"],
    ["stores", 2],
    ["decimal sign", ","],
    ["deposit", 10],
    ["grade 1 name", "A"],
    ["grade 1 frames", 10],
  ];
  const often = (usual: fc.Arbitrary<unknown>, ...rest: fc.Arbitrary<unknown>[]) =>
    fc.oneof({ weight: 12, arbitrary: usual }, ...rest);
  /** Terms that hold together, in columns named as the standards are, here and there a cell amiss. */
  const table = fc
    .subarray([...TERMS], { minLength: 0 })
    .chain((rows) =>
      fc.tuple(
        fc.constant(["Term", ...STANDARDS]),
        fc.constant(["average frames", 10, 10, 10]),
        ...rows.map(([label, value]) =>
          fc.tuple(
            fc.constant(label),
            ...STANDARDS.map(() => often(fc.constant(value), blank, anything)),
          ),
        ),
      ),
    );
  const heading = fc.constantFrom(
    ..."Bees|Top bees|Medium bees|Brood|Brood %|Queen|Stores|Date|Lot|Notes".split("|"),
  );
  const sheet = fc.uniqueArray(heading, { maxLength: 6 }).chain((columns) => {
    const row = fc.tuple(...["Hive", "Deep bees", ...columns].map(() => anything));
    return fc.array(row).map((rows) => [["Hive", "Deep bees", ...columns], ...rows]);
  });
  const three = fc.array(fc.tuple(anything), { minLength: 3, maxLength: 3 });
  const given = ({ name, matrix, optional }: Parameter): fc.Arbitrary<unknown> => {
    const odd = [anything, blockOf(anything)];
    if (name === "terms") return often(fc.oneof(table, fc.constant(null)), ...odd);
    if (name === "yard") return often(sheet, ...odd);
    if (name === "contract") return often(fc.constantFrom(...STANDARDS), ...odd);
    if (matrix && !optional) return often(fc.oneof(three, blockOf(anything)), ...odd);
    if (matrix) return often(fc.oneof(three, ...Array(4).fill(fc.constant(null))), ...odd);
    return fc.oneof({ weight: 50, arbitrary: fc.constant(null) }, ...odd);
  };

  const fit = (cell: unknown) => {
    if (cell instanceof CellError) return /^#[A-Z/0]+[!?A]$/.test(cell.code);
    return typeof cell === "number"
      ? Number.isFinite(cell)
      : /^(string|boolean)$/.test(typeof cell);
  };
  const sound = (rows: unknown[][]) => {
    expect(new Set(rows.map((row) => row.length)).size).toBe(1);
    expect(rows.flat().filter((cell) => !fit(cell))).toEqual([]);
  };

  it.each(functions.map((fn) => [fn.id, fn] as const))(
    "give %s a full rectangle of finite numbers, texts, yes or no, and errors",
    (id, fn) => {
      const values = fc.tuple(...fn.parameters.map((p) => given(p)));
      fc.assert(
        fc.property(values, (cells) => sound(cellsOf(id, cells))),
        { numRuns: 400 },
      );
    },
  );

  it("may be texts as long as a cell holds, in every place", () => {
    for (const { id, parameters } of functions) {
      parameters.forEach((_, at) =>
        fc.assert(
          fc.property(longest, (text) => {
            const values = parameters.map((p, k) =>
              k === at ? [[text, text]] : p.optional ? null : [[7, "7-8"]],
            );
            sound(cellsOf(id, values));
          }),
          { numRuns: 3 },
        ),
      );
    }
  }, 30_000);
});

describe("a column in", () => {
  // A column that is mostly dates is refused as a whole: that rule has tests of its own.
  const counts = fc.array(
    fc.oneof({ weight: 3, arbitrary: said }, frames, blank, error, fc.boolean(), fc.string()),
    { minLength: 1, maxLength: 8 },
  );
  const contract = terms(["average frames", 8], ["minimum frames", 5], ["brood", 2]);
  const calls: Record<string, (column: unknown[][]) => unknown[]> = {
    READING: (column) => [column, "text"],
    FRAMES_OF_BEES: (column) => [column],
    BEES: (column) => [column, "average"],
    BROOD_FRAMES: (column) => [column, [[60]]],
    GRADE: (column) => [column, contract, null, 3],
    SHORT_OF: (column) => [column, contract, null, 3],
    HIVE_CHECK: (column) => [column, contract, null, 3],
  };
  const withoutRow = (cell: unknown) =>
    typeof cell === "string" ? cell.replace(/, row \d+(?=[:,])|row \d+: /, "") : cell;

  it.each(Object.entries(calls))("of %s is a column out, equal to the cell calls", (id, values) => {
    fc.assert(
      fc.property(counts, (cells) => {
        const column = cells.map((cell) => [cell]);
        const alone = cells.flatMap((cell) => comb(id, ...values([[cell]])));
        expect(comb(id, ...values(column)).map((row) => row.map(withoutRow))).toEqual(alone);
      }),
    );
  });
});

describe("more cover", () => {
  const PARTS = ["low", "middle", "high"];
  const RULES = ["two-thirds", "three-quarters", "sum of parts"];
  const combs = fc.array(fc.tuple(percent, fc.nat(100), fc.nat(10)), {
    minLength: 2,
    maxLength: 10,
  });
  const written = (middle: number, doubt: number) =>
    doubt === 0 ? middle : `${Math.max(0, middle - doubt)}-${Math.min(100, middle + doubt)}`;

  it.each(RULES.flatMap((rule) => ["combs", "sides"].map((are) => [rule, are])))(
    "never makes fewer bees: %s, %s",
    (rule, are) => {
      fc.assert(
        fc.property(combs, fc.constantFrom(...PARTS), (covers, part) => {
          const even = are === "sides" ? covers.slice(0, covers.length & ~1) : covers;
          const less = even.map(([cover, , doubt]) => written(cover, doubt));
          const more = even.map(([cover, on, doubt]) => written(Math.min(100, cover + on), doubt));
          const bees = (row: unknown[]) =>
            Number(one("FRAMES_OF_BEES", [row], are, rule, null, null, part));
          expect(bees(more)).toBeGreaterThanOrEqual(bees(less) - 1e-9);
        }),
      );
    },
  );

  it("never makes fewer bees: seams of a cluster count", () => {
    const seams = fc.array(fc.tuple(frames, frames), { minLength: 2, maxLength: 2 });
    fc.assert(
      fc.property(seams, (box) => {
        const less = one("FRAMES_OF_BEES", [box.map(([n]) => n)], "seams");
        const more = one("FRAMES_OF_BEES", [box.map(([n, on]) => n + on)], "seams");
        expect(more).toBeGreaterThan(Number(less));
      }),
    );
  });

  it("never makes less brood, and a range's ends stand around its middle", () => {
    fc.assert(
      fc.property(combs, (covers) => {
        const brood = (row: unknown[], part: string) =>
          Number(one("BROOD_FRAMES", [row], null, null, "combs", null, null, null, part));
        const less = covers.map(([cover, , doubt]) => written(cover, doubt));
        const more = covers.map(([cover, on, doubt]) => written(Math.min(100, cover + on), doubt));
        const [low, middle, high] = PARTS.map((part) => brood(less, part)) as [
          number,
          number,
          number,
        ];
        expect(brood(more, "middle")).toBeGreaterThanOrEqual(middle - 1e-9);
        expect(low).toBeLessThanOrEqual(middle + 1e-9);
        expect(middle).toBeLessThanOrEqual(high + 1e-9);
      }),
    );
  });
});

describe("more frames", () => {
  const levels = fc.uniqueArray(fc.integer({ min: 1, max: 60 }), { minLength: 1, maxLength: 5 });
  const contract = fc.record({
    levels,
    brood: fc.nat(4),
    partFrame: fc.constantFrom("down", "nearest", "between"),
    minimum: fc.nat(3),
  });

  it("never make a worse grade", () => {
    fc.assert(
      fc.property(contract, frames, frames, fc.nat(6), (terms_, some, on, combs) => {
        const halves = [...terms_.levels].sort((a, b) => b - a).map((level) => level / 4);
        const block = terms(
          ["part frame", terms_.partFrame],
          // A minimum over the best grade is refused as a contradiction.
          ["minimum frames", Math.min(terms_.minimum, halves[0]!)],
          ...halves.flatMap((level, i): [string, unknown][] => [
            [`grade ${i + 1} name`, `class ${i + 1}`],
            [`grade ${i + 1} frames`, level],
            [`grade ${i + 1} brood`, i === 0 ? terms_.brood : 0],
          ]),
        );
        const rank = (hive: number) => {
          const name = one("GRADE", hive, block, null, combs || "none", 100);
          expect(name).toMatch(/^class \d$|^no grade$/);
          return name === "no grade" ? Infinity : Number(String(name).slice(6));
        };
        expect(rank(some + on)).toBeLessThanOrEqual(rank(some));
      }),
      { numRuns: 300 },
    );
  });

  it("never leave more short of the same grade", () => {
    fc.assert(
      fc.property(frames, frames, (some, on) => {
        const block = terms(["average frames", 60]);
        const short = (hive: number) => Number(one("SHORT_OF", hive, block) || 0);
        expect(short(some + on)).toBeLessThanOrEqual(short(some));
      }),
    );
  });
});

describe("a printed reading read again", () => {
  const count = fc.integer({ min: 0, max: 5900 }).map((n) => n / 100);
  const figure = fc.oneof(
    count.map(String),
    fc.tuple(count, count).map(([a, b]) => `${Math.min(a, b)} to ${Math.max(a, b)}`),
    fc.tuple(count, count).map(([a, b]) => `${a} or ${b}`),
    count.map((n) => `${n}+`),
    count.map((n) => `about ${n}`),
    fc.tuple(fc.nat(58), fc.constantFrom(..."½⅓¼¾⅝")).map(([n, part]) => `${n}${part}`),
    fc.constantFrom("half", "a third", "seven", "five and a half", "none", "12 or more"),
  );
  const again = (written: unknown, kind: string, how: string | null) => {
    const text = one("READING", written, "text", kind, how);
    expect(text).not.toMatch(/^#/);
    for (const part of ["low", "middle", "high"]) {
      const first = one("READING", written, part, kind, how);
      const second = one("READING", text, part, kind, how);
      if (typeof first === "number") expect(second).toBeCloseTo(first, 9);
      else expect(second).toMatch(/^#N\/A .* has no upper end$/);
    }
  };

  it("is itself, as a count", () => {
    fc.assert(fc.property(figure, (text) => again(text, "count", null)));
  });

  it("is itself, with a comma for decimals", () => {
    fc.assert(
      fc.property(figure, (text) => again(text.replaceAll(".", ","), "count", "decimal comma")),
    );
  });

  it("is itself, as a percent", () => {
    const tenth = fc.integer({ min: 0, max: 1000 }).map((n) => n / 10);
    const percents = fc.oneof(
      tenth.map((n) => `${n}%`),
      fc.tuple(tenth, tenth).map(([a, b]) => `${Math.min(a, b)}-${Math.max(a, b)} %`),
      percent.map((n) => `about ${n}`),
      fc.constantFrom("full", "half", "none", "0.5% or more"),
    );
    fc.assert(fc.property(percents, (text) => again(text, "percent", null)));
  });

  it("is itself, as a count that became a date", () => {
    const pairs = fc.tuple(fc.integer({ min: 4, max: 7 }), fc.integer({ min: 1, max: 5 }));
    fc.assert(
      fc.property(pairs, ([low, wide]) => again(serial(2026, low, low + wide), "count", null)),
    );
  });

  it("is itself, as any number from next to nothing to the most frames", () => {
    const number = fc.double({ min: 1e-12, max: 60, noNaN: true });
    fc.assert(fc.property(number, (n) => again(n, "count", null)));
    again(1e-7, "count", null);
  });
});
