import { actionOf, type Action, type Signs } from "../core/actions.js";
import type { Contract } from "../core/contract.js";
import type { Hive } from "../core/grade.js";
import { checkStoresUnit } from "./stores-unit.js";
import { PLACES } from "../core/pattern.js";
import { quote, Refusal } from "../core/refusal.js";
import { normalise } from "../core/text.js";
import type { Writing } from "../core/writing.js";
import { isBlankOrZero, toCellError, type CellError } from "./cells.js";
import { onceEach } from "./once-each.js";
import type { HiveCells } from "./hive-cells.js";
import type { YardSheet } from "./yard-sheet.js";

/** The action for the hive of a row; a sign that cannot be read gives its error instead. */
export type ActionReader = (i: number, contract: Contract, hive: Hive) => Action | CellError;

/** A score such as 3 of 5 is no percent of cells filled: less than this is asked about. */
const LEAST_FILL = 10;
const SOLID = new Set(["solid", "good", "ok"]);
const SPOTTY = new Set(["spotty", "patchy", "shot"]);
const LIGHT = new Set(["light", "low", "feed", "needs feed", "hungry", "starving"]);
const ENOUGH = new Set(["ok", "okay", "good", "fine", "fair", "medium", "heavy", "full", "plenty"]);
const NORMAL = new Set(["normal", "ok", "no", "none", "n"]);

/** @throws Refusal where a heading may be a sign and is not understood */
export function actionReader(sheet: YardSheet): ActionReader {
  const [eggs, pattern, drone] = [sheet.sign("eggs"), sheet.sign("pattern"), sheet.sign("drone")];
  const stores = sheet.column("stores");
  const checked = onceEach((contract: Contract) => checkStoresUnit(stores, contract));
  return (i, contract, hive) => {
    try {
      checked(contract);
      const signs: Signs = {
        eggs: eggs && eggsAt(eggs, i, contract),
        pattern: pattern && patternAt(pattern, i, contract),
        drone: drone && droneAt(drone, i, contract),
        stores: hive.stores === null && stores ? storesAt(stores, i) : null,
      };
      const queen = hive.queen ?? sheet.column("queen")?.judged(i) ?? null;
      const storesUnit = sheet.looks(contract).storesUnit(contract);
      return actionOf({ ...contract, storesUnit }, { ...hive, queen }, signs);
    } catch (error) {
      return toCellError(error, "");
    }
  };
}

/** Seen or not; a number of cells or combs is eggs that were seen. */
function eggsAt(column: HiveCells, i: number, writing: Writing): boolean | null {
  const cell = column.cell(i);
  if (typeof cell === "number" && cell > 0) {
    return column.estimate(i, 0, "amount", writing)!.middle > 0;
  }
  return column.judged(i);
}

function patternAt(column: HiveCells, i: number, writing: Writing): Signs["pattern"] {
  return signAt(column, i, (word) => {
    if (SOLID.has(word)) return "solid";
    if (SPOTTY.has(word)) return "spotty";
    const fill = column.estimate(i, 0, "percent", writing)!;
    if (fill.middle >= LEAST_FILL) return fill;
    throw new Refusal(
      `${quote(word)} stands where "solid", "spotty" or the percent of cells filled was expected`,
    );
  });
}

function droneAt(column: HiveCells, i: number, writing: Writing): Signs["drone"] {
  return signAt(column, i, (word) => {
    if (NORMAL.has(word)) return "normal";
    const place = PLACES.find((known) => known === word);
    return place ?? column.estimate(i, 0, "percent", writing)!;
  });
}

/** The word in place of a figure. */
function storesAt(column: HiveCells, i: number): Signs["stores"] {
  return signAt(column, i, (word) => {
    if (LIGHT.has(word)) return "light";
    if (ENOUGH.has(word)) return "enough";
    throw new Refusal(`${quote(word)} stands where a figure, "light" or "ok" was expected`);
  });
}

function signAt<T>(column: HiveCells, i: number, read: (word: string) => T): T | null {
  const cell = column.cell(i);
  if (isBlankOrZero(cell)) return null;
  const word = normalise(String(cell));
  return word === "?" ? null : column.named(i, 0, () => read(word));
}
