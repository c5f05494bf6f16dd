import { droneShare, droneVerdict, PLACES, BROOD_SEASONS, solidness } from "../core/pattern.js";
import { quote, Refusal } from "../core/refusal.js";
import { normalise } from "../core/text.js";
import type { Cell } from "./cells.js";
import { answer, optional, type SheetFunction } from "./declare.js";
import { eachHive, type HiveCells } from "./hive-cells.js";
import { choice, hives } from "./parameters.js";
import { amountAt, beside, checkSingle } from "./rows.js";
import { writtenParameter } from "./written.js";

const SHARE_PARTS = ["by cells", "by area", "verdict", "note"] as const;

const shareParameters = [
  hives("drone"),
  hives("worker"),
  choice("counted_in", ["cells", "area"]),
  optional(hives("season")),
  optional(hives("place")),
  choice("part", ["share", ...SHARE_PARTS, "all"]),
  writtenParameter,
] as const;

/**
 * Percent of the brood that is drone brood, by cells or by area, and what it means in its season and place.
 *
 * @remarks By cells the share is less than by area: a cm2 has 3.96 worker cells but 2.45 drone cells
 * (the middle of 2.3 to 2.6, COLOSS BEEBOOK). The verdict takes the share by area. No drone brood at
 * the end of winter is normal, up to about 10 % together in build-up too (common practice, no
 * source); domed caps scattered in worker cells are a warning at any share. It is no diagnosis: look
 * again, and ask someone who knows, such as the apiary inspector.
 * @example =COMB.DRONE_SHARE(5,95,"area") gives 5; =COMB.DRONE_SHARE(5,95,"area",,,"by cells") gives 3.15.
 * @customfunction DRONE_SHARE
 * @helpurl https://localhost:3000/help.html#DRONE_SHARE
 * @param drone A row a hive: cells or area of drone brood, blank for none; several columns are a hive's boxes and are added.
 * @param worker A row a hive: the same of worker brood; write none for none.
 * @param counted_in "cells" (also where left out), or "area": percent, cm2 or any unit, the same for both.
 * @param season "end of winter", "build-up", "summer" or "autumn"; one, or a row each.
 * @param place "together", or "scattered" in worker cells; one, or a row each.
 * @param part "share" in what was counted (also where left out), "by cells", "by area", "verdict" (normal, look again, or blank), "note", or "all" four beside each other.
 * @param written How figures are written, where not plainly: "decimal comma".
 * @returns Percent or the part asked for, a row a hive; blank for a hive that was not opened.
 */
export function DRONE_SHARE(
  drone: unknown[][],
  worker: unknown[][],
  counted_in?: unknown,
  season?: unknown[][],
  place?: unknown[][],
  part?: unknown,
  written?: unknown,
): unknown[][] {
  const values = [drone, worker, counted_in, season, place, part, written];
  return answer(
    shareParameters,
    values,
    (drone, worker, countedIn, seasons, places, part, writing) => {
      checkSingle([seasons, places]);
      const asked = part === "share" ? (`by ${countedIn}` as const) : part;
      const parts = asked === "all" ? SHARE_PARTS : [asked];
      return eachHive([beside([drone, worker]), seasons, places], parts.length, (i) => {
        const workers = amountAt(worker, i, writing);
        if (workers === null) {
          throw new Refusal(
            "worker is blank, and a share needs it: write none for none",
            "unknown",
          );
        }
        const share = droneShare(amountAt(drone, i, writing) ?? 0, workers, countedIn);
        const { verdict, note } = droneVerdict(
          share.byArea,
          wordAt(seasons, i, BROOD_SEASONS),
          wordAt(places, i, PLACES),
        );
        const cells = { "by cells": share.byCells, "by area": share.byArea, verdict, note };
        return parts.map((p): Cell => cells[p]);
      });
    },
  );
}

function wordAt<C extends string>(
  column: HiveCells | null,
  i: number,
  words: readonly C[],
): C | null {
  const text = column?.text(i) ?? null;
  if (column === null || text === null) return null;
  return column.named(i, 0, () => {
    const word = words.find((w) => w === normalise(text));
    if (word !== undefined) return word;
    throw new Refusal(`${quote(text)} stands where ${words.map(quote).join(" or ")} was expected`);
  });
}

const PATTERN_PARTS = ["verdict", "empty", "note"] as const;

const patternParameters = [
  hives("fill"),
  choice("part", [...PATTERN_PARTS, "all"]),
  writtenParameter,
] as const;

/**
 * Whether capped brood is solid or spotty, from the percent of cells in its patch that are filled.
 *
 * @remarks Solid brood has 5 to 20 % of empty cells; from 20 % on it is spotty (from memory). Spotty
 * brood has many causes and this is no diagnosis: look again, and ask someone who knows, such as the
 * apiary inspector.
 * @example =COMB.PATTERN(90) gives solid; =COMB.PATTERN(70) gives spotty.
 * @customfunction PATTERN
 * @helpurl https://localhost:3000/help.html#PATTERN
 * @param fill A row a hive: percent of the cells in the patch that are filled, 0 to 100.
 * @param part "verdict" (also where left out), "empty" (percent of empty cells), "note", or "all" three beside each other.
 * @param written How figures are written, where not plainly: "decimal comma", "fractions" (0.6 for 60 %).
 * @returns The verdict or the part asked for, a row a hive; blank for a hive that was not judged.
 */
export function PATTERN(fill: unknown[][], part?: unknown, written?: unknown): unknown[][] {
  return answer(patternParameters, [fill, part, written], (fills, part, writing) => {
    checkSingle([fills]);
    const parts = part === "all" ? PATTERN_PARTS : [part];
    return eachHive([fills], parts.length, (i) => {
      const brood = solidness(fills.estimate(i, 0, "percent", writing)!);
      return parts.map((p): Cell => brood[p]);
    });
  });
}

export const droneShareFunction: SheetFunction = {
  id: "DRONE_SHARE",
  parameters: shareParameters,
  evaluate: DRONE_SHARE,
};
export const pattern: SheetFunction = {
  id: "PATTERN",
  parameters: patternParameters,
  evaluate: PATTERN,
};
