import { createHash } from "node:crypto";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { TERMS } from "../../src/core/terms.js";
import { lotStatement, type StatementAsk } from "../../src/functions/statement.js";
import type { Statement, StatementRow } from "../../src/functions/statement-model.js";
import { CHOICES } from "../../src/functions/statement-terms.js";
import { comb, serial, terms } from "./sheet.js";

const YARD: unknown[][] = [
  ["Hive", "Lot", "Pallet", "Date", "Frames of bees"],
  ["H01", "Shed", "P1", serial(2026, 3, 27), 9],
  ["H02", "Shed", "P1", serial(2026, 3, 27), "8-9"],
  ["H03", "Shed", "P2", serial(2026, 3, 28), 7],
  ["H04", "Shed", "P2", serial(2026, 3, 28), 4],
  ["K01", "Coast", "P9", serial(2026, 3, 29), "never seen"],
];
const CHERRY = terms(
  ["average frames", 8],
  ["minimum frames", 6],
  ["base fee", 50],
  ["currency", "dollars"],
  ["share opened", 60],
  ["deposit", 30],
  ["balance due", 30],
);

function made(more: Partial<StatementAsk> = {}): Statement {
  return lotStatement({
    yard: YARD,
    terms: CHERRY,
    contract: "Cherry",
    lot: "Shed",
    size: 8,
    delivered: null,
    grower: null,
    beekeeper: null,
    words: null,
    picked: null,
    paper: "letter",
    ...more,
  });
}

/** The values of a row, each line to write on as `____`. */
const values = ({ cells }: StatementRow): (string | number)[] =>
  cells.map(({ cell }) => (cell.kind === "line" ? "____" : cell.value));

function rowsOf(statement: Statement): (string | number)[][] {
  const { settlement, terms, hives } = statement;
  return [...settlement, terms, hives].flatMap(({ rows }) => rows.map(values));
}

const rowOf = (statement: Statement, label: string): (string | number)[] | undefined =>
  rowsOf(statement).find(([first]) => first === label);

describe("a statement on a lot", () => {
  // Worked by hand: 9, 8.5 and 7 frames count and 4 is under the minimum of 6: 24.5 / 3. Three of
  // four opened are paid, so 6 of 8 hives at 50; the deposit is 30 % of 8 x 50, that is 120.
  it("says what the worked lot comes to, by the contract and in money", () => {
    const statement = made();
    expect(rowOf(statement, "Average frames")?.[1]).toBeCloseTo(24.5 / 3, 12);
    expect(rowOf(statement, "Met or not")?.[1]).toBe("met");
    expect(rowOf(statement, "Hives under the minimum")?.[1]).toBe(1);
    expect(rowOf(statement, "Share opened")).toEqual([
      "Share opened",
      0.5,
      "60 % asked: fewer were opened",
    ]);
    expect(rowOf(statement, "Grades of the hives opened")?.[1]).toBe(
      "2 at average, 1 at minimum, 1 no grade",
    );
    expect(rowOf(statement, "total")).toEqual(["total", 300]);
    expect(rowOf(statement, "less deposit, 30 % of what was agreed")?.slice(1)).toEqual([
      0.3, 400, -120,
    ]);
    expect(rowOf(statement, "balance, due 30 days after the inspection")?.[1]).toBe(180);
    expect(rowOf(statement, "due on")?.[1]).toBe(serial(2026, 4, 27));
  });

  it("holds every figure of LOT, LOT_PAY and LOT_CHANCE", () => {
    const statement = made();
    const rows = rowsOf(statement);
    const args = [YARD, 8, CHERRY, "Cherry", "Shed"] as const;
    const lot = comb("LOT", ...args).filter(
      ([label]) => !/^(?:Lot|Grade|Pay|Deposit|Bal)/.test(String(label)),
    );
    expect(lot.length).toBeGreaterThan(10);
    for (const [label, figure] of lot) {
      const isShare = String(label).endsWith(", %");
      const wanted = isShare ? Number(figure) / 100 : figure;
      const name = { "By the contract": "Met or not", "How sure": "The whole lot" }[String(label)];
      const row = rows.find(([first]) => first === (name ?? String(label).replace(/, %$/, "")));
      expect(row?.[1], String(label)).toBe(wanted);
    }
    for (const line of comb("LOT_PAY", ...args)) {
      expect(rows).toContainEqual(line.filter((cell) => cell !== ""));
    }
    const [[chance, note] = []] = comb("LOT_CHANCE", ...args, "all");
    expect(rowOf(statement, "Chance that the whole lot's average is met")).toEqual([
      "Chance that the whole lot's average is met",
      chance,
      note,
    ]);
  });

  it("lists the hives of the lot, each with what counts in the average and its note", () => {
    const [headings, ...rows] = made().hives.rows.map(values);
    expect(headings).toEqual([
      ...["Hive", "Pallet", "Frames of bees", "Brood, full frames"],
      ...["Grade", "In the average", "Note"],
    ]);
    expect(rows).toEqual([
      ["H01", "P1", 9, "at average", 9],
      ["H02", "P1", 8.5, "at average", 8.5],
      ["H03", "P2", 7, "at minimum", 7],
      ["H04", "P2", 4, "no grade", "left out", "frames 4 of 6"],
    ]);
  });

  it("shows figures just under what is asked with as many decimals as tell them apart", () => {
    // 8 and 7.9992 make 7.9996 on average; three decimals would show that as 8, as two do.
    const yard = [YARD[0]!, [...YARD[1]!.slice(0, 4), 8], [...YARD[2]!.slice(0, 4), 7.9992]];
    const { settlement, hives } = made({ yard });
    const cellsOf = (label: string) =>
      [...settlement, hives]
        .flatMap(({ rows }) => rows)
        .find(({ cells }) => cells[0]?.cell.kind === "text" && cells[0].cell.value === label)!
        .cells.map(({ cell }) => cell);
    expect(cellsOf("Average frames")[1]).toMatchObject({ value: 7.9996, decimals: 4 });
    expect(cellsOf("H02")).toContainEqual({ kind: "frames", value: 7.9992 });
    expect(cellsOf("Met or not")[2]).toMatchObject({ value: expect.stringContaining("7.9996, u") });
  });

  it("shows a hive that was looked into twice by its later row, note and all", () => {
    const yard = [...YARD, ["H04", "Shed", "P2", serial(2026, 3, 30), "about 9"]];
    const { hives } = made({ yard });
    const shown = hives.rows.map(values).filter(([id]) => id === "H04");
    expect(shown).toHaveLength(1);
    expect(shown[0]!.slice(0, 5)).toEqual(["H04", "P2", 9, "at average", 9]);
    expect(shown[0]!.join()).not.toContain("frames 4 of 6");
  });

  it("says that none is left where every hive was opened, and tells no chance", () => {
    const statement = made({ size: 4 });
    expect(rowOf(statement, "Hives not opened")).toEqual([
      "Hives not opened",
      0,
      "none left: every hive of the lot was opened",
    ]);
    expect(rowOf(statement, "Chance that the whole lot's average is met")).toBeUndefined();
    expect(rowsOf(made({ size: null }))).toEqual(rowsOf(statement));
  });

  it("says that the chance is not known where one hive alone counts", () => {
    const statement = made({ yard: YARD.slice(0, 2) });
    expect(rowOf(statement, "Chance that the whole lot's average is met")?.slice(1)).toEqual([
      "not known",
      expect.stringContaining("fewer than two"),
    ]);
  });

  it("leaves lines for what nobody said, and makes up no name", () => {
    const rows = rowsOf(made());
    expect(rows).toContainEqual(["Grower", "____"]);
    expect(rows).toContainEqual(["Beekeeper", "____"]);
    expect(rows).toContainEqual(["Picked, and by whom", "____"]);
    expect(rows).toContainEqual(["Signature", "____", "Signature", "____"]);
    const named = rowsOf(made({ grower: "G", beekeeper: "B", picked: "by lot" }));
    expect(named).toContainEqual(["Grower", "G"]);
    expect(named).toContainEqual(["Name", "B", "Name", "G"]);
    expect(named).toContainEqual(["Picked, and by whom", "by lot"]);
  });

  // The hash is the platform's own: Node's crypto.
  it("shows the ticket that each hive, or its pallet, drew by the words of the parties", () => {
    const digits = (name: string) =>
      createHash("sha256").update(`apple\nbloom\n${name}`).digest("hex").slice(0, 8);
    const words = ["Apple ", "bloom"] as const;
    const tickets = (statement: Statement) =>
      statement.hives.rows.slice(1).map((row) => values(row)[5]);
    expect(digits("h01")).toBe("f755e8a1");
    expect(tickets(made({ words }))).toEqual(["h01", "h02", "h03", "h04"].map(digits));
    const byPallet = [...CHERRY, ["opened by", "pallets"]];
    expect(tickets(made({ words, terms: byPallet }))).toEqual(["p1", "p1", "p2", "p2"].map(digits));
    expect(() => made({ words: ["Apple", " "] })).toThrow("each party gives a word");
  });

  it("gives the days of the inspection, or a line where a row has none", () => {
    expect(rowOf(made(), "Hives opened from")?.[1]).toBe(serial(2026, 3, 27));
    expect(rowOf(made(), "to")?.[1]).toBe(serial(2026, 3, 28));
    const undated = YARD.map((row, i) => row.map((cell, k) => (i === 2 && k === 3 ? "" : cell)));
    expect(rowOf(made({ yard: undated }), "Hives opened on")?.[1]).toBe("____");
    expect(rowOf(made({ yard: undated }), "due on")).toBeUndefined();
  });

  // 1904 workbooks number the same day 1,462 lower (Microsoft, "Date systems in Excel").
  it("shows the right day of a workbook that counts from 1904", () => {
    const yard = YARD.map((row, i) =>
      row.map((cell, k) => (i > 0 && k === 3 ? Number(cell) - 1462 : cell)),
    );
    const statement = made({ yard, terms: [...CHERRY, ["date system", 1904]] });
    expect(rowOf(statement, "to")?.[1]).toBe(serial(2026, 3, 28));
  });

  it("settles nothing under a contract without fees, and says so", () => {
    const free = terms(["average frames", 8], ["minimum frames", 6]);
    expect(rowsOf(made({ terms: free }))).toContainEqual([
      "The contract gives no fee: nothing is settled here.",
    ]);
    expect(() => made({ terms: free, delivered: 8 })).toThrow("no fee to settle");
  });

  it("refuses what it cannot answer, by row and term", () => {
    expect(() => made({ lot: "Coast" })).toThrow(/row 6.*never seen/);
    expect(() => made({ lot: "Hill" })).toThrow('no opened hive stands in the lot "Hill"');
    expect(() => made({ size: 3 })).toThrow("a lot of 3 hives cannot have 4 in the sheet");
    expect(() => made({ size: null, delivered: 4 })).toThrow("give the size of the lot too");
    expect(() => made({ contract: "Plum" })).toThrow("Plum");
  });
});

describe("the terms of a statement", () => {
  it("mean something by each choice that a contract may make", () => {
    const choices = TERMS.flatMap(({ label, value }) =>
      value.kind === "choice" && CHOICES[label] ? [[label, [...value.choices]] as const] : [],
    );
    expect(choices.map(([label]) => label).sort()).toEqual(Object.keys(CHOICES).sort());
    for (const [label, of] of choices) expect(Object.keys(CHOICES[label]!)).toEqual(of);
  });

  it("stand with their values and units, without those that say how cells are written", () => {
    const rows = made({ terms: [...CHERRY, ["decimal sign", ","]] }).terms.rows.map(values);
    expect(rows).toContainEqual([
      "average frames",
      "8 frames",
      "Frames of bees that the lot must have on average.",
    ]);
    expect(rows).toContainEqual(["base fee", "50 dollars", expect.any(String)]);
    expect(rows.flat()).not.toContain("decimal sign");
  });
});

describe("the chart of a statement", () => {
  it("has the hives strongest first, and a level for each threshold", () => {
    expect(made().chart.headings).toEqual([
      ...["Hive", "Frames of bees", "8: average asked", "6: least a hive"],
    ]);
    expect(made().chart.rows[0]).toEqual(["H01", 9, 8, 6]);
    expect(made().chart.rows.map(([id]) => id)).toEqual(["H01", "H02", "H03", "H04"]);
  });

  it("names grades at their level, and leaves them out where lines would crowd", () => {
    const graded = (grades: number) =>
      Array.from({ length: grades }, (_, i) => [
        [`grade ${i + 1} name`, `g${10 - i}`],
        [`grade ${i + 1} frames`, 10 - i],
      ]).flat();
    const headings = (grades: number) =>
      made({ terms: [...CHERRY, ...graded(grades)] }).chart.headings.slice(2);
    expect(headings(3)).toEqual([
      ...["8: average asked, g8", "6: least a hive", "10: g10", "9: g9"],
    ]);
    expect(headings(5)).toEqual(["8: average asked", "6: least a hive"]);
  });
});

describe("any statement", () => {
  const hive = fc.record({
    id: fc.string({ minLength: 1, maxLength: 12 }).filter((id) => id.trim() !== ""),
    frames: fc.integer({ min: 1, max: 24 }).map((half) => half / 2),
  });

  it("adds up to its total, and no row is left without room for its text", () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(hive, { selector: ({ id }) => id.trim(), minLength: 1, maxLength: 20 }),
        fc.nat(40),
        (hives, more) => {
          const yard = [["Hive", "Frames of bees"], ...hives.map(({ id, frames }) => [id, frames])];
          const size = hives.length + more;
          const statement = made({ yard, size, lot: null });
          const pay = statement.settlement.find(({ heading }) => heading === "Pay")!.rows;
          const amounts = pay.flatMap(({ cells }) => {
            const cell = cells.find(({ column }) => column === 6)?.cell;
            return cell?.kind === "money" ? [cell.value] : [];
          });
          const at = pay.findIndex((row) => values(row)[0] === "total");
          const total = Number(values(pay[at]!).at(-1));
          const before = pay.slice(1, at).flatMap(({ cells }) => {
            const cell = cells.find(({ column }) => column === 6)?.cell;
            return cell?.kind === "money" ? [cell.value] : [];
          });
          expect(amounts.length).toBeGreaterThan(0);
          expect(before.reduce((sum, x) => sum + x, 0)).toBeCloseTo(total, 6);
          expect(statement.hives.rows).toHaveLength(hives.length + 1);
          for (const row of statement.settlement.flatMap(({ rows }) => rows)) {
            const room = (span: number, column: number) =>
              statement.widths.slice(column, column + span).reduce((sum, w) => sum + w, 0) * 1.3;
            for (const { cell, span, column } of row.cells) {
              if (cell.kind !== "text") continue;
              expect(cell.value.length).toBeLessThanOrEqual(row.lines * room(span, column));
            }
          }
        },
      ),
      { numRuns: 60 },
    );
  });
});
