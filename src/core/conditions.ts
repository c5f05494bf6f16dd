import { quote, Refusal } from "./refusal.js";
import { sources } from "./sources.js";
import { normalise } from "./text.js";

export type TemperatureUnit = "F" | "C";

const {
  clusterBelow: { value: cold },
  foragingFrom: { value: flight },
  middayFrom: { value: start },
  middayTo: { value: end },
} = sources;

/**
 * The temperature of the air in F.
 *
 * @param cell - a number, or a text that is one (`0` written as text is 0, not blank)
 * @throws Refusal for what is no number, or no temperature of the air in that unit
 */
export function temperatureOf(cell: number | string, unit: TemperatureUnit): number {
  const text = typeof cell === "number" ? `${cell}` : normalise(cell);
  if (!/^-?\d+(?:\.\d+)?$/.test(text)) {
    throw new Refusal(
      `${quote(`${cell}`)} stands where degrees ${unit} were expected, as a number`,
    );
  }
  const fahrenheit = unit === "F" ? Number(text) : Number(text) * 1.8 + 32;
  if (fahrenheit < sources.coldestAir.value || fahrenheit > sources.hottestAir.value) {
    throw new Refusal(`${text} ${unit} is no temperature of the air: is it in another unit?`);
  }
  return fahrenheit;
}

/**
 * The hour of the day, 0 to 24, from an hour, a time as a spreadsheet keeps it, or a text.
 *
 * @param cell - from 1 on an hour (14.5), under 1 a part of the day (0.5 is noon), or a text such
 *   as `14:30` or `2 pm`
 * @throws Refusal also where an hour may be of the morning or of the afternoon and that matters
 * @example hourOf("2:30 pm") // 14.5
 */
export function hourOf(cell: number | string): number {
  const text = typeof cell === "number" ? `${cell}` : normalise(cell);
  if (Number(text) > 0 && Number(text) < 1) return Number(text) * 24;
  const [, hours, minutes, half] =
    /^(\d{1,2}(?:\.\d+)?)(?::([0-5]\d))? ?([ap]m)?$/.exec(text) ?? [];
  const hour = Number(hours) + Number(minutes ?? 0) / 60;
  if (hours === undefined || hour > 24 || (half !== undefined && (hour < 1 || hour >= 13))) {
    throw new Refusal(
      `${quote(`${cell}`)} stands where an hour from 0 to 24 or a time was expected`,
    );
  }
  if (half !== undefined) return (hour % 12) + (half === "pm" ? 12 : 0);
  if (hour >= 1 && hour + 12 < end) {
    const other = minutes === undefined ? `${hour + 12}` : `${Number(hours) + 12}:${minutes}`;
    throw new Refusal(`${text} may be at night or after noon: write ${text} am, or ${other}`);
  }
  return hour;
}

/**
 * What the weather does to a count by eye, as a sentence; empty where it does nothing that is known.
 * A caution only: no count is corrected, since no source says by how much.
 *
 * @param temperature - of the air, in F
 * @param hour - of the day, 0 to 24; null where it is not known
 */
export function caution(temperature: number, hour: number | null): string {
  if (temperature < cold) {
    return "cold: bees draw into a cluster, so fewer combs look covered than in warmth";
  }
  if (temperature >= flight && hour !== null && hour >= start && hour < end) {
    return "midday and warm: foragers are out, so fewer bees are seen than the hive has";
  }
  return "";
}
