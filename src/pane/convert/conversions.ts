import { COMB_CASTES, PATCH_SHAPES } from "../../core/cells.js";
import { CASTES, type Caste } from "../../core/clock.js";
import { FRAMES } from "../../core/comb.js";
import { BEES_PER_FRAME, WEIGHT_UNITS } from "../../core/bees.js";
import { cellsFunction, patchFunction } from "../../functions/area.js";
import { beesFunction, beeWeight, coverToBees } from "../../functions/bees.js";
import { CellError } from "../../functions/cells.js";
import { eggDateFunction, emergeDateFunction } from "../../functions/clock.js";
import type { SheetFunction } from "../../functions/declare.js";
import { dayOfSerial } from "../../core/serial.js";
import { reading } from "../../functions/reading.js";
import { evaluate, formula, literal, type Argument } from "../formula.js";

/** What one may fill in. A figure is read as every function reads it: `60`, `half`, `7-8`. */
export type Field =
  | { readonly id: string; readonly kind: "figure"; readonly start: string }
  | { readonly id: string; readonly kind: "day" }
  | { readonly id: string; readonly kind: "choice"; readonly choices: readonly string[] };

/** What stands in the fields: a figure as it was typed, a day as a serial number, null for blank. */
export type Filled = Readonly<Record<string, string | number | null>>;

/** One thing that comes of the fields: a call of a function of the sheet, and the parts it shows. */
export interface Answer {
  readonly id: string;
  readonly fn: SheetFunction;
  readonly unit: "number" | "day";
  /** The arguments, where `part` is the part of the result that is asked for. */
  readonly args: (
    filled: Filled,
    part: string | null,
    written: string | null,
  ) => readonly Argument[];
}

export interface Conversion {
  readonly id: string;
  readonly fields: readonly Field[];
  readonly answers: readonly Answer[];
  /** The share of a comb's side in percent, to draw it. */
  readonly cover?: Answer;
}

const figure = (id: string, start: string): Field => ({ id, kind: "figure", start });
const choice = (id: string, choices: readonly string[]): Field => ({ id, kind: "choice", choices });
const frames = FRAMES.map(({ name }) => name);
const STAGES = ["egg", "larva", "ready to cap", "just capped", "capped", "emerging"];

/** A figure goes in as a number where it is one plainly, else as the text that was typed. */
function typed(value: string | number | null | undefined): Argument {
  const text = String(value ?? "").trim();
  return literal(text === "" ? null : /^\d+(?:\.\d+)?$/.test(text) ? Number(text) : text);
}

/** A choice that the function takes where nothing is said is left out, so that formulas stay short. */
function unless(otherwise: string, value: string | number | null | undefined): Argument {
  return literal(value === otherwise ? null : (value ?? null));
}

/** A serial number, which a formula writes as a day, so that it can be read and changed. */
function day(value: string | number | null | undefined): Argument {
  if (typeof value !== "number") return literal(null);
  const { year, month, day } = dayOfSerial(value);
  return { text: `DATE(${year},${month},${day})`, value };
}

const none = literal(null);

const patch =
  (give: string) =>
  (f: Filled, part: string | null, written: string | null): readonly Argument[] => [
    typed(f["length"]),
    typed(f["width"]),
    unless("in", f["unit"]),
    unless("cells", give),
    unless("ellipse", f["shape"]),
    unless("worker", f["caste"]),
    none,
    none,
    unless("deep", f["frame"]),
    literal(part),
    literal(written),
  ];

const onDay = (fn: SheetFunction, id: string): Answer => ({
  id,
  fn,
  unit: "day",
  args: (f, part) => [
    day(f["day"]),
    literal(f["stage"] ?? null),
    unless("worker", f["caste"]),
    literal(part),
  ],
});

/** Every conversion, each by the functions of the sheet, so that the pane and a cell say the same. */
export const CONVERSIONS: readonly Conversion[] = [
  {
    id: "cover",
    fields: [figure("cover", "half"), choice("frame", frames), choice("caste", COMB_CASTES)],
    answers: [
      {
        id: "cells",
        fn: cellsFunction,
        unit: "number",
        args: (f, part, written) => [
          typed(f["cover"]),
          unless("worker", f["caste"]),
          none,
          unless("deep", f["frame"]),
          none,
          none,
          literal(part),
          literal(written),
        ],
      },
      {
        id: "bees",
        fn: coverToBees,
        unit: "number",
        args: (f, part, written) => [
          typed(f["cover"]),
          none,
          none,
          none,
          unless("deep", f["frame"]),
          none,
          literal(part),
          literal(written),
        ],
      },
    ],
    cover: {
      id: "percent",
      fn: reading,
      unit: "number",
      args: (f, part, written) => [
        typed(f["cover"]),
        literal(part),
        literal("percent"),
        literal(written),
      ],
    },
  },
  {
    id: "patch",
    fields: [
      figure("length", "10"),
      figure("width", "6"),
      choice("unit", ["in", "cm"]),
      choice("shape", PATCH_SHAPES),
      choice("frame", frames),
      choice("caste", COMB_CASTES),
    ],
    answers: [
      { id: "cells", fn: patchFunction, unit: "number", args: patch("cells") },
      { id: "percent", fn: patchFunction, unit: "number", args: patch("percent") },
    ],
    cover: { id: "percent", fn: patchFunction, unit: "number", args: patch("percent") },
  },
  {
    id: "frames",
    fields: [
      figure("frames", "7-8"),
      choice("perFrame", Object.keys(BEES_PER_FRAME)),
      choice("frame", frames),
    ],
    answers: [
      {
        id: "bees",
        fn: beesFunction,
        unit: "number",
        args: (f, part, written) => [
          typed(f["frames"]),
          unless("well covered", f["perFrame"]),
          none,
          unless("deep", f["frame"]),
          literal(part),
          literal(written),
        ],
      },
    ],
  },
  {
    id: "stage",
    fields: [
      { id: "day", kind: "day" },
      choice("stage", STAGES),
      choice("caste", CASTES satisfies readonly Caste[]),
    ],
    answers: [onDay(emergeDateFunction, "emerges"), onDay(eggDateFunction, "laid")],
  },
  {
    id: "weight",
    fields: [
      figure("amount", "3"),
      choice("from", WEIGHT_UNITS),
      choice("to", ["bees", "lb", "kg"]),
    ],
    answers: [
      {
        id: "amount",
        fn: beeWeight,
        unit: "number",
        args: (f, part, written) => [
          typed(f["amount"]),
          unless("lb", f["from"]),
          unless("bees", f["to"]),
          none,
          literal(part),
          literal(written),
        ],
      },
    ],
  },
];

/** What is likeliest, and the ends between which it lies; null where nothing sets the end. */
export interface Ends {
  readonly low: number | null;
  readonly middle: number;
  readonly high: number | null;
}

/** What a function makes of the fields, or the sentence of its refusal. */
export function resultOf(
  answer: Answer,
  filled: Filled,
  written: string | null,
): Ends | { readonly why: string } {
  const [low, middle, high] = partsOf(answer).map(
    (part) => evaluate(answer.fn, answer.args(filled, part, written))[0]![0],
  );
  if (middle instanceof CellError) return { why: middle.message || middle.code };
  if (typeof middle !== "number") return { why: "" };
  const end = (cell: unknown): number | null => (typeof cell === "number" ? cell : null);
  return { low: end(low), middle, high: end(high) };
}

/** The same call as a cell holds it. */
export function formulaFor(answer: Answer, filled: Filled, written: string | null): string {
  return formula(answer.fn, answer.args(filled, null, written));
}

function partsOf({ unit }: Answer): readonly (string | null)[] {
  return unit === "day" ? ["earliest", null, "latest"] : ["low", null, "high"];
}
