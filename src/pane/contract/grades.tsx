import { GRADE_PARTS } from "../../core/terms.js";
import { TextField } from "../text-field.js";
import { texts } from "../texts.js";
import { gradeLabel, PARTS, type GradeDraft, type GradePart } from "./draft.js";
import { hintOf } from "./field.js";

const t = texts.contract;
const BLANK: GradeDraft = { name: "", frames: "", brood: "", fee: "" };

interface Props {
  readonly grades: readonly GradeDraft[];
  readonly faults: ReadonlyMap<string, string>;
  /** The terms whose cells hold formulas, each with its cell. */
  readonly locked: ReadonlyMap<string, string>;
  /** What fees are counted in. */
  readonly money: string;
  readonly sign: "." | ",";
  readonly change: (grades: readonly GradeDraft[]) => void;
}

/** The grades as rows, best first: to name, order, add and take away. */
export function Grades({ grades, faults, locked, money, sign, change }: Props) {
  const write = (at: number, part: GradePart, text: string) =>
    change(grades.map((grade, i) => (i === at ? { ...grade, [part]: text } : grade)));
  const swap = (a: number, b: number) =>
    change(grades.map((grade, i) => (i === a ? grades[b]! : i === b ? grades[a]! : grade)));
  return (
    <>
      <p class="quiet">{t.gradesHow}</p>
      <ul class="quiet">
        {PARTS.map((part) => (
          <li key={part} id={aboutOf(part)}>
            {t.gradeAbout[part]}{" "}
            {hintOf(GRADE_PARTS[part], part === "fee" ? money : "frames", sign)}
          </li>
        ))}
      </ul>
      {grades.map((grade, i) => (
        <fieldset key={i} class="grade">
          <legend>{t.grade(i + 1)}</legend>
          <div class="fields">
            {PARTS.map((part) => (
              <Part
                key={part}
                label={gradeLabel(i, part)}
                part={part}
                value={grade[part]}
                fault={faults.get(gradeLabel(i, part)) ?? null}
                locked={locked.has(gradeLabel(i, part))}
                change={(text) => write(i, part, text)}
              />
            ))}
          </div>
          <p class="buttons">
            <button
              type="button"
              aria-label={t.up(i + 1)}
              disabled={i === 0}
              onClick={() => swap(i, i - 1)}
            >
              {t.moveUp}
            </button>
            <button
              type="button"
              aria-label={t.down(i + 1)}
              disabled={i === grades.length - 1}
              onClick={() => swap(i, i + 1)}
            >
              {t.moveDown}
            </button>
            <button
              type="button"
              aria-label={t.remove(i + 1)}
              onClick={() => change(grades.filter((_, k) => k !== i))}
            >
              {t.takeAway}
            </button>
          </p>
        </fieldset>
      ))}
      <button
        type="button"
        disabled={grades.length === 99}
        onClick={() => change([...grades, BLANK])}
      >
        {t.addGrade}
      </button>
    </>
  );
}

interface PartProps {
  readonly label: string;
  readonly part: GradePart;
  readonly value: string;
  readonly fault: string | null;
  readonly locked: boolean;
  readonly change: (text: string) => void;
}

function Part({ label, part, value, fault, locked, change }: PartProps) {
  const id = label.replaceAll(" ", "-");
  return (
    <TextField
      id={id}
      label={t.gradeParts[part]}
      about={locked ? `${aboutOf(part)} ${id}-locked` : aboutOf(part)}
      inputMode={GRADE_PARTS[part].kind === "number" ? "decimal" : "text"}
      value={value}
      fault={fault}
      disabled={locked}
      change={change}
    >
      {locked && (
        <span class="quiet" id={`${id}-locked`}>
          {t.formula}
        </span>
      )}
    </TextField>
  );
}

function aboutOf(part: GradePart): string {
  return `grade-about-${part}`;
}
