/** Readies what the tests need: `--no-build` leaves the builds out, for the type check. */
import { execSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { buildPlayground, install } from "../scripts/playground.mjs";

const here = (/** @type {string} */ name) => fileURLToPath(new URL(name, import.meta.url));

install(here("."));
install(here("../src/playground"));
if (!process.argv.includes("--no-build")) {
  try {
    execSync("npm run --silent build", { cwd: here(".."), stdio: "inherit" });
  } catch {
    process.exit(1);
  }
  buildPlayground({ development: true });
}
