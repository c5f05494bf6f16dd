import { useRef } from "preact/hooks";
import { shownNumber } from "../shown.js";
import { texts } from "../texts.js";
import { gripsOf, type Grip } from "./grips.js";
import { binsOf } from "./judging.js";
import type { Threshold } from "./thresholds.js";

const t = texts.whatIf;
const WIDTH = 320;
const BARS = 100;
/** Each threshold has a line of its own for its name, so that none hides another. */
const LINE = 13;
/** A quarter of a frame is as fine as a contract is written. */
const STEP = 0.25;

interface Props {
  readonly frames: readonly number[];
  readonly thresholds: readonly Threshold[];
  readonly sign: "." | ",";
  readonly move: (label: string, frames: number) => void;
}

/** How many hives have how many frames, with the contract's thresholds as handles to move. */
export function Histogram({ frames, thresholds, sign, move }: Props) {
  const svg = useRef<SVGSVGElement>(null);
  const asked = thresholds.map((threshold) => threshold.frames);
  const most = Math.max(4, Math.ceil(Math.max(0, ...frames, ...asked)) + 2);
  const bins = binsOf(frames, most);
  const highest = Math.max(1, ...bins);
  const x = (value: number) => (value / most) * WIDTH;
  const floor = thresholds.length * LINE + BARS + LINE;
  const grips = gripsOf(
    asked.map((value) => x(value)),
    { line: LINE, floor, reach: 12, near: 8 },
  );
  const height = (count: number) => (count / highest) * BARS;
  const framesAt = (clientX: number): number => {
    const { left, width } = svg.current!.getBoundingClientRect();
    return rounded(((clientX - left) / width) * most, most);
  };
  return (
    <svg
      ref={svg}
      class="histogram"
      viewBox={`0 0 ${WIDTH} ${floor + 18}`}
      role="group"
      aria-label={t.chart(frames.length)}
    >
      {bins.map((count, k) => (
        <g key={k}>
          <rect
            class="bar"
            x={x(k) + 1}
            width={WIDTH / most - 2}
            y={floor - height(count)}
            height={height(count)}
          >
            <title>{t.bar(count, k)}</title>
          </rect>
          {count > 0 && (
            <text class="count" x={x(k + 0.5)} y={floor - height(count) - 3} aria-hidden="true">
              {count}
            </text>
          )}
          {k % 2 === 0 && (
            <text class="tick" x={x(k)} y={floor + 13} aria-hidden="true">
              {k}
            </text>
          )}
        </g>
      ))}
      <line class="axis" x1="0" x2={WIDTH} y1={floor} y2={floor} />
      {thresholds.map((threshold, i) => (
        <Handle
          key={threshold.label}
          threshold={threshold}
          says={t.framesOf(shownNumber(threshold.frames, sign))}
          x={x(threshold.frames)}
          y={(i + 1) * LINE - 3}
          floor={floor}
          grip={grips[i]!}
          most={most}
          framesAt={framesAt}
          move={(value) => move(threshold.label, value)}
        />
      ))}
    </svg>
  );
}

interface HandleProps {
  readonly threshold: Threshold;
  readonly says: string;
  readonly x: number;
  readonly y: number;
  readonly floor: number;
  readonly grip: Grip;
  readonly most: number;
  readonly framesAt: (clientX: number) => number;
  readonly move: (frames: number) => void;
}

function Handle({
  threshold: { short, frames },
  says,
  x,
  y,
  floor,
  grip: { left, right, stretches, knob },
  most,
  framesAt,
  move,
}: HandleProps) {
  const onKeyDown = (event: KeyboardEvent) => {
    const by = {
      ArrowRight: STEP,
      ArrowUp: STEP,
      ArrowLeft: -STEP,
      ArrowDown: -STEP,
      PageUp: 1,
      PageDown: -1,
    }[event.key];
    if (by === undefined) return;
    event.preventDefault();
    move(rounded(frames + by, most));
  };
  return (
    <g
      class="handle"
      role="slider"
      tabindex={0}
      aria-label={short}
      aria-valuemin={STEP}
      aria-valuemax={most}
      aria-valuenow={frames}
      aria-valuetext={says}
      onKeyDown={onKeyDown}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        // So that the arrow keys go on from where it is let go.
        event.currentTarget.focus();
      }}
      onPointerMove={(event) => {
        if (event.currentTarget.hasPointerCapture(event.pointerId)) move(framesAt(event.clientX));
      }}
    >
      <title>{`${short}: ${says}`}</title>
      {stretches.map(([top, bottom]) => (
        <rect class="grip" x={left} width={right - left} y={top} height={bottom - top} key={top} />
      ))}
      <line x1={x} x2={x} y1={y} y2={floor} />
      <circle class="knob" cx={x} cy={knob} r="4" />
      <text x={x > WIDTH / 2 ? x - 3 : x + 3} y={y} text-anchor={x > WIDTH / 2 ? "end" : "start"}>
        {short}
      </text>
    </g>
  );
}

function rounded(frames: number, most: number): number {
  return Math.min(most, Math.max(STEP, Math.round(frames / STEP) * STEP));
}
