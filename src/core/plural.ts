/**
 * How many of a thing, as it is said.
 *
 * @param count - a number, or one as it is shown
 * @example plural(1, "hive") // "1 hive"
 * @example plural(1.5, "frame") // "1.5 frames"
 */
export function plural(count: number | string, one: string): string {
  return `${count} ${one}${+count === 1 ? "" : "s"}`;
}
