import type { BroodMeasure } from "./brood.js";
import type { FrameSize } from "./comb.js";
import type { CombRule } from "./strength.js";
import type { Writing } from "./writing.js";

/** A grade of a contract, best first; a schedule of pay by frames is the same with more rows. */
export interface Grade {
  readonly name: string;
  /** Least frames of bees. */
  readonly frames: number;
  /** Least brood, in the contract's measure. */
  readonly brood: number;
  /** Fee of a hive of this grade, in the contract's currency. */
  readonly fee: number;
}

/** What a contract says, every term with a value; the terms table says what each means. */
export interface Contract extends Writing {
  readonly name: string;
  readonly averageFrames: number;
  readonly minimumFrames: number;
  readonly underMinimum: "left out" | "counted" | "rejects the load";
  readonly forgivenShare: number;
  readonly forgivenAgainst: "hives opened" | "hives in the lot" | "hives above the minimum";
  readonly combRule: CombRule;
  readonly frame: FrameSize;
  readonly boxFrame: FrameSize;
  readonly mostFrames: number;
  readonly partFrame: "down" | "nearest" | "as it is" | "between";
  readonly brood: number;
  readonly broodMeasure: BroodMeasure;
  readonly broodCombCover: number;
  readonly layingQueen: boolean;
  readonly stores: number;
  readonly storesUnit: "frames" | "lb" | "kg";
  /** Stores under which a hive is fed, in their unit; 0 for common practice. */
  readonly feedUnder: number;
  readonly combineUnder: number;
  readonly beesForBrood: number;
  readonly grades: readonly Grade[];
  readonly baseFee: number;
  readonly bonus: number;
  readonly bonusBy: "lot" | "hive";
  readonly bonusCeiling: number;
  readonly proRata: boolean;
  readonly currency: string;
  readonly moneyRounding: number;
  readonly hiveRounding: "exact" | "whole";
  readonly openedShare: number;
  readonly openedBy: "hives" | "pallets";
  readonly inspectFromDay: number;
  readonly inspectAbove: number;
  readonly temperatureUnit: "F" | "C";
  readonly inspectFromHour: number;
  readonly inspectToHour: number;
  readonly reinspection: boolean;
  readonly replaceDead: boolean;
  readonly deposit: number;
  readonly balanceDays: number;
  readonly shortDelivery: "paid as delivered" | "pro rata" | "refused";
  readonly observerError: number;
}
