import { basename, dirname, extname, join } from "node:path";
import pkg from "../../package.json" with { type: "json" };
import { COMMON, parsed, SEE_HELP } from "./arguments.js";
import { readCsv, toWorkbook } from "./csv.js";
import { readInput, refuseSameFile, refuseToReplace } from "./files.js";
import { gradeCsv } from "./grade-csv.js";
import { gradeWorkbook } from "./grade-workbook.js";
import { HELP } from "./help.js";
import type { Done, Order } from "./order.js";
import { NOT_ALL_CALCULATED, Problem, USAGE } from "../workbook/problem.js";
import { progressOn } from "./progress.js";
import { contractSource, kindOf } from "./source.js";
import { statement } from "./statement-command.js";
import { openWorkbook } from "../workbook/workbook.js";

/** The terminal, or what stands for it in a test. */
export interface Terminal {
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
  readonly width: number;
  /** Whether somebody watches what is written to `err`. */
  readonly watched: boolean;
}

/** Runs the program and returns its exit code. */
export async function run(args: readonly string[], terminal: Terminal): Promise<number> {
  const progress = progressOn(terminal.watched ? terminal.err : null);
  try {
    const done = await answerTo(args, { width: terminal.width, progress });
    progress.done();
    if (typeof done === "string") {
      terminal.out(`${done}\n`);
      return 0;
    }
    const { lines, complete } = done;
    terminal.out(`${lines.join("\n")}\n`);
    return complete ? 0 : NOT_ALL_CALCULATED;
  } catch (error) {
    progress.done();
    if (!(error instanceof Problem)) throw error;
    terminal.err(`${error.message}\n`);
    return error.exitCode;
  }
}

type Surroundings = Pick<Order, "width" | "progress">;

/** What came of a command, or the text that answers it. */
async function answerTo(args: readonly string[], around: Surroundings): Promise<Done | string> {
  const [command, ...rest] = args;
  if (command === "statement") return statement(rest, around.progress);
  const asked = parse(args);
  return typeof asked === "string" ? asked : grade({ ...asked, ...around });
}

interface Asked {
  readonly input: string;
  readonly out: string | null;
  readonly given: string | null;
  readonly under: string | null;
  readonly asValues: boolean;
  readonly isQuiet: boolean;
}

const OPTIONS = {
  ...COMMON,
  values: { type: "boolean" },
  quiet: { type: "boolean" },
  version: { type: "boolean" },
} as const;

/** What is asked for, or the text that answers it. */
function parse(args: readonly string[]): Asked | string {
  const { values, positionals } = parsed(args, OPTIONS);
  if (values.help) return HELP;
  if (values.version) return pkg.version;
  const [command, input, ...rest] = positionals;
  if (command !== "grade" || input === undefined || rest.length > 0) {
    throw new Problem(`Say which file to grade: comb-tally grade FILE. ${SEE_HELP}`, USAGE);
  }
  return {
    input,
    out: values.out ?? null,
    given: values.contract ?? null,
    under: values.for ?? null,
    asValues: values.values ?? false,
    isQuiet: values.quiet ?? false,
  };
}

async function grade({ input, out, given, ...settings }: Asked & Surroundings): Promise<Done> {
  const { progress } = settings;
  progress.step("reading");
  const kind = kindOf(input);
  const output = out ?? join(dirname(input), `${basename(input, extname(input))}-graded${kind}`);
  const target = kindOf(output);
  if (kind === ".xlsx" && target === ".csv") {
    throw new Problem("A workbook is written as a workbook: give --out a name that ends in .xlsx.");
  }
  const bytes = await readInput(input);
  await refuseSameFile(input, output);
  if (out === null) await refuseToReplace(output);
  const contract = await contractSource(given);
  if (contract.kind === "terms") await refuseSameFile(contract.path, output);
  const order: Order = { ...settings, input, output, contract };
  if (kind === ".xlsx") return gradeWorkbook(await openWorkbook(bytes, input), order);
  const csv = readCsv(bytes, input);
  const workbook = toWorkbook(csv, basename(input, extname(input)));
  if (target === ".csv") return gradeCsv(csv, workbook, order);
  return gradeWorkbook({ workbook, parts: new Map(), restore: () => {} }, order);
}
