import type { Contract } from "../core/contract.js";
import type { Hive } from "../core/grade.js";
import { quote, Refusal } from "../core/refusal.js";
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
    notes: null,
    isDateOwn: () => false,
    beeFrames: sizes(bees),
    broodFrames: sizes(brood),
    storesUnit: (contract) => contract.storesUnit,
    blankIsNone: false,
  };
  const checked = onceEach((contract: Contract) => refuseLooks(bees, contract));
  return eachHive([bees, contract, brood, cover, queen, stores, inspected], width, (i) => {
    const terms = contractOf(i);
    checked(terms);
    return body(terms, hiveAt(columns, i, terms));
  });
}

/** Two columns could be the looks from above and below, which are averaged, or two boxes, which are added. */
function refuseLooks({ name, width }: HiveCells, { combRule, name: contract }: Contract): void {
  if (combRule !== "cluster count" || width === 1) return;
  throw new Refusal(
    `${name} has ${width} columns, and contract ${quote(contract)} counts seams: give one column with each ` +
      "hive's cluster count, as SEAMS makes it of the looks from above and below",
  );
}
