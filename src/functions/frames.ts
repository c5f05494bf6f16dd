import { frameOf, type FrameSize } from "../core/comb.js";
import { Refusal } from "../core/refusal.js";
import type { HiveCells } from "./hive-cells.js";

/** The frame of each of `width` columns: one size for all, or a row with one for each. */
export function boxFrames(
  sizes: HiveCells | null,
  width: number,
  otherwise: FrameSize,
): readonly FrameSize[] {
  const names =
    sizes === null ? [] : Array.from({ length: sizes.width }, (_, k) => sizes.cell(0, k));
  if (sizes !== null && (sizes.rows > 1 || ![1, width].includes(names.length))) {
    throw new Refusal(
      `${sizes.name} is ${sizes.rows} by ${sizes.width}: give one frame size, or a row of ${width}`,
    );
  }
  return Array.from({ length: width }, (_, k) => {
    const name = names[names.length === 1 ? 0 : k] ?? null;
    if (sizes === null || name === null || name === 0) return otherwise;
    return sizes.named(0, 0, () => frameOf(String(name)));
  });
}
