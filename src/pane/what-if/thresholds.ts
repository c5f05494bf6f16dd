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

/** The draft with another figure at one of its thresholds. */
export function withFrames(draft: Draft, label: string, text: string): Draft {
  const grade = /^grade (\d+) frames$/.exec(label);
  if (grade === null) return { ...draft, terms: new Map(draft.terms).set(label, text) };
  const at = Number(grade[1]) - 1;
  return {
    ...draft,
    grades: draft.grades.map((g, i) => (i === at ? { ...g, frames: text } : g)),
  };
}
