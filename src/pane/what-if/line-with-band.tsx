import type { DateSystem } from "../../core/serial.js";
import { shownDay, shownNumber } from "../shown.js";
import { texts } from "../texts.js";

const t = texts.whatIf;
const WIDTH = 320;
const HEIGHT = 140;
const LEFT = 22;
const FLOOR = HEIGHT - 18;

export interface Point {
  readonly date: number;
  readonly low: number;
  readonly middle: number;
  readonly high: number;
}

interface Props {
  readonly points: readonly Point[];
  /** What the contract asks; null where it asks nothing. */
  readonly threshold: number | null;
  readonly sign: "." | ",";
  readonly system: DateSystem;
}

/** A forecast day by day: the line, its band, and the threshold that it is held against. */
export function LineWithBand({ points, threshold, sign, system }: Props) {
  const [first, last] = [points[0]!, points.at(-1)!];
  const most = Math.max(threshold ?? 0, ...points.map(({ high }) => high)) * 1.1 || 1;
  const x = (date: number) =>
    LEFT + ((date - first.date) / Math.max(1, last.date - first.date)) * (WIDTH - LEFT);
  const y = (frames: number) => FLOOR - (frames / most) * (FLOOR - 6);
  const path = (of: (point: Point) => number, list = points) =>
    list.map((point) => `${x(point.date).toFixed(1)},${y(of(point)).toFixed(1)}`).join(" L");
  const back = [...points].reverse();
  const ticks = [0, Math.round(most / 2), Math.floor(most)];
  return (
    <svg
      class="ahead"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label={labelOf(points, sign, system)}
    >
      <path class="band" d={`M${path(({ low }) => low)} L${path(({ high }) => high, back)} Z`} />
      <path class="line" d={`M${path(({ middle }) => middle)}`} />
      {threshold !== null && (
        <>
          <line class="asked-line" x1={LEFT} x2={WIDTH} y1={y(threshold)} y2={y(threshold)} />
          {/* On the side of its line where the average does not run. */}
          <text x={WIDTH} y={y(threshold) + (last.middle >= threshold ? 13 : -3)} text-anchor="end">
            {t.asked(shownNumber(threshold, sign))}
          </text>
        </>
      )}
      {ticks.map((frames) => (
        <text key={frames} x="0" y={y(frames) + 3}>
          {frames}
        </text>
      ))}
      <text x={LEFT} y={HEIGHT - 4}>
        {shownDay(first.date, system)}
      </text>
      <text x={WIDTH} y={HEIGHT - 4} text-anchor="end">
        {shownDay(last.date, system)}
      </text>
    </svg>
  );
}

function labelOf(points: readonly Point[], sign: "." | ",", system: DateSystem): string {
  const { date, low, middle, high } = points.at(-1)!;
  const [l, m, h] = [low, middle, high].map((frames) => shownNumber(frames, sign));
  return t.aheadLabel(shownDay(date, system), m!, l!, h!);
}
