import { parseArgs, type ParseArgsConfig } from "node:util";
import { Problem, reason, USAGE } from "../workbook/problem.js";

export const SEE_HELP = "comb-tally --help tells more.";

/** The options that every command knows. */
export const COMMON = {
  out: { type: "string" },
  contract: { type: "string" },
  for: { type: "string" },
  help: { type: "boolean", short: "h" },
} as const;

/** What is given on the command line; an option that the command does not know is refused. */
export function parsed<O extends NonNullable<ParseArgsConfig["options"]>>(
  args: readonly string[],
  options: O,
) {
  try {
    return parseArgs({ args: [...args], allowPositionals: true, options });
  } catch (error) {
    throw new Problem(`${reason(error)}. ${SEE_HELP}`, USAGE);
  }
}
