/**
 * `npm run mutate -- pay-line.ts grade.ts:10-40`: changes these files of src/core, or these lines of
 * them, in every small way, runs the tests over each, and prints what no test saw. Without names, all
 * of src/core. `STATIC=1` changes instead what is worked out once, on loading: seconds for each.
 * `BY=core/even` lets only the test files with that in their path judge, `DRAWN=5` lets drawn tests
 * draw only five sets.
 */
import { execFileSync } from "node:child_process";
import { existsSync } from "node:fs";
import { createRequire } from "node:module";
import { fileURLToPath } from "node:url";

const here = fileURLToPath(new URL(".", import.meta.url));
if (!existsSync(`${here}node_modules`))
  execFileSync("npm", ["ci"], { cwd: here, stdio: "inherit" });
const { Stryker } = await import(
  createRequire(`${here}package.json`).resolve("@stryker-mutator/core")
);

const onLoading = process.env.STATIC !== undefined;
const names = process.argv.slice(2);
const files = names.length === 0 ? ["*.ts"] : names;
const results = await new Stryker({
  mutate: files.map((name) => `src/core/${name}`),
  testRunner: "one-process",
  plugins: [`${here}runner.mjs`],
  concurrency: 1,
  coverageAnalysis: "perTest",
  ignoreStatic: !onLoading,
  ignorePatterns: [
    "dist",
    "out",
    "coverage",
    "docs",
    "reports",
    "tests/node_modules",
    "tests/mutation/node_modules",
  ],
  tempDirName: ".stryker-tmp",
  reporters: process.stdout.isTTY ? ["progress"] : [],
  logLevel: "error",
  timeoutMS: onLoading ? 60_000 : 10_000,
  dryRunTimeoutMinutes: 60,
}).runMutationTest();

/** @type {Map<string, { killed: number, alive: number, left: number }>} */
const counts = new Map();
for (const result of results) {
  const { status, fileName, location, replacement, mutatorName } = result;
  const file = fileName.split("/src/core/").at(-1);
  const count = counts.get(file) ?? { killed: 0, alive: 0, left: 0 };
  counts.set(file, count);
  // What is also worked out later is changed without STATIC.
  if (onLoading && (!result.static || result.coveredBy?.length)) {
    count.left++;
    continue;
  }
  if (status === "Killed" || status === "Timeout") count.killed++;
  else if (status === "Survived" || status === "NoCoverage") count.alive++;
  else count.left++;
  if (status !== "Survived" && status !== "NoCoverage") continue;
  const { line, column } = location.start;
  console.log(`${file}:${line}:${column} ${mutatorName}: ${replacement?.replace(/\s+/g, " ")}`);
}
const all = { killed: 0, alive: 0, left: 0 };
for (const [file, count] of counts) {
  tell(file, count);
  all.killed += count.killed;
  all.alive += count.alive;
  all.left += count.left;
}
if (counts.size > 1) tell("in all", all);

function tell(/** @type {string} */ what, /** @type {typeof all} */ { killed, alive, left }) {
  const percent = ((100 * killed) / (killed + alive)).toFixed(1);
  console.log(`${what}: ${killed} of ${killed + alive} killed, ${percent} %; ${left} left out`);
}
