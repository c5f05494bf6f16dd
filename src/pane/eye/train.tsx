import type { TargetedEvent } from "preact";
import { useMemo, useState } from "preact/hooks";
import { combWithBees, combWithBrood, type CombPicture } from "../../core/comb-picture.js";
import type { JudgedComb } from "../../core/eye.js";
import { randomFrom } from "../../core/random.js";
import { read } from "../../core/reading.js";
import { Refusal } from "../../core/refusal.js";
import { PLAIN_WRITING } from "../../core/writing.js";
import { Choice } from "../choice.js";
import { Comb } from "../comb.js";
import { shownNumber } from "../shown.js";
import { TextField } from "../text-field.js";
import { texts } from "../texts.js";
import { useSign } from "../watched.js";
import { EyeResult } from "./result.js";

const t = texts.eye;
const COMBS = 20;
const KINDS = ["bees", "brood"] as const;
type Kind = (typeof KINDS)[number];

/** Random combs to judge, one kind at a time; what was judged is kept nowhere. */
export function Train() {
  const [kind, setKind] = useState<Kind>("bees");
  const [round, setRound] = useState(0);
  return (
    <>
      <p>{t.how}</p>
      <Choice
        id="eye-kind"
        label={t.kind}
        value={kind}
        choose={(chosen) => setKind(chosen as Kind)}
        options={KINDS.map((one) => [one, t.kinds[one]])}
      />
      <Round key={`${kind} ${round}`} kind={kind} again={() => setRound(round + 1)} />
      <p class="quiet">
        <a href="eye-guide.html" target="_blank" rel="noopener">
          {t.guide}
        </a>
      </p>
    </>
  );
}

/** Twenty combs, each to judge before what it was is told. */
function Round({ kind, again }: { kind: Kind; again: () => void }) {
  const sign = useSign();
  const [first] = useState(() => Math.floor(Math.random() * 2 ** 31));
  const [at, setAt] = useState(0);
  const [typed, setTyped] = useState("");
  const [why, setWhy] = useState<string | null>(null);
  const [judged, setJudged] = useState<readonly JudgedComb[]>([]);
  const picture = useMemo(() => combAt(kind, first + at), [kind, first, at]);
  const last = judged[at];
  const isDone = judged.length === COMBS;
  const submit = (event: TargetedEvent<HTMLFormElement>) => {
    event.preventDefault();
    event.currentTarget.querySelector("input")!.focus();
    if (isDone) return again();
    if (last !== undefined) {
      setTyped("");
      return setAt(at + 1);
    }
    try {
      const { middle } = read(typed, "percent", { ...PLAIN_WRITING, decimal: sign });
      setJudged([...judged, { said: middle, was: picture.cover }]);
      setWhy(null);
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      setWhy(error.message);
    }
  };
  return (
    <form onSubmit={submit}>
      <Comb picture={picture} id="eye" label={t.comb(at + 1, COMBS)} />
      <TextField
        id="eye-said"
        label={t.ask[kind]}
        about="eye-told"
        size={10}
        value={typed}
        readOnly={last !== undefined}
        aria-invalid={why !== null}
        change={setTyped}
      >
        <button type="submit" class="main">
          {isDone ? t.again : last === undefined ? t.say : t.next}
        </button>
      </TextField>
      <p id="eye-told" role="status" class={why === null ? "" : "error"}>
        {why ?? (last === undefined ? t.at(at + 1, COMBS) : toldOf(last, sign))}
      </p>
      {isDone && <EyeResult judged={judged} sign={sign} />}
    </form>
  );
}

function toldOf({ said, was }: JudgedComb, sign: "." | ","): string {
  return t.told(shownNumber(said, sign), shownNumber(Math.round(was), sign));
}

/** A comb of 3 to 100 percent, all as likely. */
function combAt(kind: Kind, seed: number): CombPicture {
  // Of its own seed, or how a comb lies would tell how much is on it.
  const percent = 3 + 97 * randomFrom(-seed)();
  return kind === "bees"
    ? combWithBees(percent, seed, "anywhere")
    : combWithBrood("solid", percent, seed, "anywhere");
}
