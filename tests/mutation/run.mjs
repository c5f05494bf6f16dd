/**
 * `npm run mutate -- pay-line.ts seams.ts`: changes these files of src/core in every small way, runs
 * the tests over each, and prints what no test saw. Without names, all of src/core: hours.
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

const names = process.argv.slice(2);
const files = names.length === 0 ? ["*.ts"] : names;
const results = await new Stryker({
  mutate: files.map((name) => `src/core/${name}`),
  testRunner: "vitest",
  plugins: [`${here}node_modules/@stryker-mutator/vitest-runner/dist/src/index.js`],
  vitest: { configFile: "tests/mutation/vitest.config.ts" },
  concurrency: 1,
  coverageAnalysis: "perTest",
  ignoreStatic: true,
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
  timeoutMS: 20_000,
  dryRunTimeoutMinutes: 60,
}).runMutationTest();

const counts = new Map();
for (const { status } of results) counts.set(status, (counts.get(status) ?? 0) + 1);
const of = (/** @type {string[]} */ ...states) =>
  states.reduce((sum, status) => sum + (counts.get(status) ?? 0), 0);
const [killed, alive] = [of("Killed", "Timeout"), of("Survived", "NoCoverage")];
for (const { status, fileName, location, replacement, mutatorName } of results) {
  if (status !== "Survived" && status !== "NoCoverage") continue;
  const file = fileName.split("/src/core/").at(-1);
  console.log(
    `${file}:${location.start.line + 1} ${mutatorName}: ${replacement?.replace(/\s+/g, " ")}`,
  );
}
console.log(
  `${killed} of ${killed + alive} killed, ${((100 * killed) / (killed + alive)).toFixed(1)} %; ${of("Ignored")} static ones left out`,
);
