import { LOSS_SEASONS, type LossSeason } from "../core/adult-loss.js";
import { BROOD_DAYS } from "../core/forecast.js";
import { plural } from "../core/plural.js";
import { quote, Refusal } from "../core/refusal.js";
import { sources } from "../core/sources.js";
import { normalise } from "../core/text.js";
import { option } from "./parameters.js";

/** A season's word, or the share of adults that die in a day; null where the calendar is to say. */
export const seasonParameter = option<LossSeason | number | null>("season", null, (value) => {
  if (typeof value === "number" && value > 0 && value <= 50) return value / 100;
  const found = LOSS_SEASONS.find((season) => season === normalise(String(value)));
  if (found !== undefined) return found;
  throw new Refusal(
    `${quote(String(value))} stands where ${LOSS_SEASONS.map(quote).join(", ")} or a percent a day from ` +
      `over 0 to 50 was expected`,
  );
});

/** Eggs a day that go on being laid, or "today" for what today's eggs show; null where left out. */
export const layingParameter = option<number | "today" | null>("laying", null, (value) => {
  if (typeof value === "number" && value > 0 && value <= 5000) return value;
  const word = normalise(String(value));
  if (word === "today") return "today";
  if (word === "none") return 0;
  throw new Refusal(
    `${quote(String(value))} stands where "today", "none" or eggs a day up to 5,000 was expected`,
  );
});

/** Whole days from the one date to the other. */
export function daysBetween(seen: number, on: number, name: string): number {
  if (on >= seen) return on - seen;
  throw new Refusal(
    `${name}: the date lies ${plural(seen - on, "day")} before the hive was looked at`,
  );
}

/** How far to trust a forecast, in a sentence. */
export function trustIn(
  days: number,
  goesOn: number | "today" | null,
  space: number | null,
  of: "hives" | "lots" = "hives",
): string {
  const [least, most] = [sources.forecastLeastDays.value, sources.forecastMostDays.value];
  const parts = [
    `the band holds nine ${of} in ten of field studies from March to October, ${least} to ${most} ` +
      `days ahead, but 2 of the 5 hives seen in March and April, which grew faster; none were of ` +
      `pollination loads`,
  ];
  if (days > most) parts.push(`${days} days are further than any of them`);
  if (goesOn === "today") parts.push("laying is taken to go on as today");
  else if (goesOn !== null && goesOn > 0)
    parts.push(`laying is taken to go on at ${plural(goesOn, "egg")} a day`);
  else if (days > BROOD_DAYS) parts.push("no more eggs are taken to be laid");
  if (space !== null) parts.push(`no hive is taken to outgrow ${plural(space, "frame")}`);
  return parts.join("; ");
}
