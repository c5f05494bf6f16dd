import { gradeLabel, type Draft } from "../contract/draft.js";
import { texts } from "../texts.js";

/** A threshold of a contract in frames of bees, which can be moved. */
export interface Threshold {
  readonly label: string;
  /** What stands at its handle. */
  readonly short: string;
  readonly frames: number;
}

const t = texts.whatIf;

/** The thresholds that a draft has: minimum, average, and the least frames of each grade. */
export function thresholdsOf(draft: Draft, sign: "." | ","): Threshold[] {
  const at = (label: string, short: string, text: string): Threshold[] => {
    const frames = Number(text.trim().replace(sign, "."));
    return text.trim() === "" || !Number.isFinite(frames) || frames <= 0
      ? []
      : [{ label, short, frames }];
  };
  return [
    ...at("minimum frames", t.minimum, draft.terms.get("minimum frames") ?? ""),
    ...at("average frames", t.average, draft.terms.get("average frames") ?? ""),
    ...draft.grades.flatMap((grade, i) =>
      at(gradeLabel(i, "frames"), grade.name || t.grade(i + 1), grade.frames),
    ),
  ];
}

/** The text at a threshold of a draft. */
export function textOf(draft: Draft, label: string): string {
  const grade = gradeOf(label);
  return (grade === null ? draft.terms.get(label) : draft.grades[grade]?.frames) ?? "";
}

/** The draft with another figure at one of its thresholds. */
export function withFrames(draft: Draft, label: string, text: string): Draft {
  const at = gradeOf(label);
  if (at === null) return { ...draft, terms: new Map(draft.terms).set(label, text) };
  return {
    ...draft,
    grades: draft.grades.map((g, i) => (i === at ? { ...g, frames: text } : g)),
  };
}

/** The grade that a threshold is of, counted from 0. */
function gradeOf(label: string): number | null {
  const grade = /^grade (\d+) frames$/.exec(label);
  return grade && Number(grade[1]) - 1;
}
