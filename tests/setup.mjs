/** Readies what the tests need: `--no-build` leaves the build out, for the type check. */
import { execSync } from "node:child_process";
import { copyFileSync, existsSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

const here = (/** @type {string} */ name) => fileURLToPath(new URL(name, import.meta.url));
const lock = here("package-lock.json");
const installed = here("node_modules/.installed-lock.json");

if (!existsSync(installed) || !readFileSync(lock).equals(readFileSync(installed))) {
  run("npm ci --silent", here("."));
  copyFileSync(lock, installed);
}
if (!process.argv.includes("--no-build")) run("npm run --silent build", here(".."));

function run(/** @type {string} */ command, /** @type {string} */ cwd) {
  try {
    execSync(command, { cwd, stdio: "inherit" });
  } catch {
    console.error(`"${command}" failed in ${cwd}`);
    process.exit(1);
  }
}
