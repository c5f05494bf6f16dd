import { basename, dirname, extname, join } from "node:path";
import { normalise } from "../core/text.js";
import type { Words } from "../functions/statement.js";
import { COMMON, parsed, SEE_HELP } from "./arguments.js";
import { readInput, refuseSameFile, refuseToReplace } from "./files.js";
import type { Done } from "./order.js";
import { Problem, USAGE } from "../workbook/problem.js";
import type { Progress } from "./progress.js";
import { kindOf } from "./source.js";
import { STATEMENT_HELP } from "./statement-help.js";
import { writeStatement } from "./statement-write.js";

/** What the user asks of a statement; null for what is left out. */
export interface StatementOrder {
  readonly input: string;
  readonly output: string;
  readonly contract: string | null;
  readonly under: string | null;
  readonly sheet: string | null;
  readonly lot: string | null;
  readonly size: number | null;
  readonly delivered: number | null;
  readonly grower: string | null;
  readonly beekeeper: string | null;
  readonly words: Words | null;
  readonly picked: string | null;
  readonly paper: "letter" | "a4";
}

const OPTIONS = {
  ...COMMON,
  sheet: { type: "string" },
  lot: { type: "string" },
  size: { type: "string" },
  delivered: { type: "string" },
  grower: { type: "string" },
  beekeeper: { type: "string" },
  "seed-one": { type: "string" },
  "seed-two": { type: "string" },
  picked: { type: "string" },
  paper: { type: "string" },
} as const;

/** `comb-tally statement FILE …`; a text where help is all that is asked for. */
export async function statement(
  args: readonly string[],
  progress: Progress,
): Promise<Done | string> {
  const { values, positionals } = parsed(args, OPTIONS);
  if (values.help) return STATEMENT_HELP;
  const [input, ...rest] = positionals;
  if (input === undefined || rest.length > 0) {
    throw new Problem(`Say which file: comb-tally statement FILE. ${SEE_HELP}`, USAGE);
  }
  const order: StatementOrder = {
    input,
    output: values.out ?? join(dirname(input), `${basename(input, extname(input))}-statement.xlsx`),
    contract: filled("contract", values.contract),
    under: filled("for", values.for),
    sheet: filled("sheet", values.sheet),
    lot: filled("lot", values.lot),
    size: wholeNumber("size", values.size),
    delivered: wholeNumber("delivered", values.delivered),
    grower: filled("grower", values.grower),
    beekeeper: filled("beekeeper", values.beekeeper),
    words: bothWords(values["seed-one"], values["seed-two"]),
    picked: filled("picked", values.picked),
    paper: paperOf(values.paper),
  };
  progress.step("reading");
  const kind = kindOf(input);
  if (kindOf(order.output) !== ".xlsx") {
    throw new Problem("A statement is a workbook: give --out a name that ends in .xlsx.");
  }
  const bytes = await readInput(input);
  await refuseSameFile(input, order.output);
  if (values.out === undefined) await refuseToReplace(order.output);
  return writeStatement(bytes, kind, order, progress);
}

function filled(name: string, value: string | undefined): string | null {
  if (value === undefined) return null;
  if (value.trim() !== "") return value.trim();
  throw new Problem(`--${name} is blank: leave it out, or say what it is. ${SEE_HELP}`, USAGE);
}

const MOST_HIVES = 1e6;

function wholeNumber(name: string, value: string | undefined): number | null {
  if (value === undefined) return null;
  const hives = Number(value);
  if (/^\d+$/.test(value.trim()) && hives > 0 && hives <= MOST_HIVES) return hives;
  throw new Problem(`--${name} ${value}: a whole number of hives was expected, from 1 on.`, USAGE);
}

function bothWords(one: string | undefined, other: string | undefined): Words | null {
  if (one === undefined && other === undefined) return null;
  if (one !== undefined && other !== undefined && normalise(one) && normalise(other)) {
    return [one, other];
  }
  throw new Problem("Give a word of each party: --seed-one and --seed-two.", USAGE);
}

function paperOf(value: string | undefined): "letter" | "a4" {
  const paper = normalise(value ?? "letter");
  if (paper === "letter" || paper === "a4") return paper;
  throw new Problem(`--paper ${value}: letter or a4 was expected.`, USAGE);
}
