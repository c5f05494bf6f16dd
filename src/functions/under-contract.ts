import type { Contract } from "../core/contract.js";
import type { Hive } from "../core/grade.js";
import type { Cell } from "./cells.js";
import { contractOfRow } from "./contracts.js";
import { optional, type Values } from "./declare.js";
import { boxFrames } from "./frames.js";
import { onceEach } from "./once-each.js";
import { eachHive, type HiveCells } from "./hive-cells.js";
import { hiveAt, type LookColumns } from "./look.js";
import { block, hives } from "./parameters.js";

/** The parameters of every function that holds hives, one a row, against their contract. */
export const hiveParameters = [
  hives("frames"),
  optional(block("terms")),
  optional(hives("contract")),
  optional(hives("brood")),
  optional(hives("brood_cover")),
  optional(hives("queen")),
  optional(hives("stores")),
  optional(hives("box_frames")),
  optional(hives("inspected")),
] as const;

type HiveArguments = readonly [...Values<typeof hiveParameters>, ...unknown[]];

/** A row out for each hive in: what `body` makes of the hive under its contract. */
export function underContract(
  [bees, terms, contract, brood, cover, queen, stores, boxes, inspected]: HiveArguments,
  width: number,
  body: (contract: Contract, hive: Hive) => Cell[],
): Cell[][] {
  const contractOf = contractOfRow(terms, contract);
  const sizes = (column: HiveCells | null) =>
    onceEach((contract: Contract) =>
      boxFrames(forColumns(column), column?.width ?? 0, contract.boxFrame),
    );
  // One column of brood under a row of frame sizes is that of all boxes together.
  const forColumns = (column: HiveCells | null): HiveCells | null =>
    column !== bees && column?.width === 1 && boxes?.width !== 1 ? null : boxes;
  const columns: LookColumns = {
    bees,
    beesAre: "boxes",
    brood,
    cover,
    broodIsCombs: false,
    queen,
    stores,
    inspected,
    opened: null,
    beeFrames: sizes(bees),
    broodFrames: sizes(brood),
    blankIsNone: false,
  };
  return eachHive([bees, contract, brood, cover, queen, stores, inspected], width, (i) => {
    const terms = contractOf(i);
    return body(terms, hiveAt(columns, i, terms));
  });
}
