/**
 * Builds the add-in for an address and packs it, once it has been checked:
 * `npm run package -- --origin https://example.org/comb`
 */
import { execFileSync } from "node:child_process";
import { cpSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { zipSync } from "fflate";
import { faultsOf } from "./package-check.mjs";
import { checkedOrigin } from "./origin.mjs";

const path = (/** @type {string} */ name) => fileURLToPath(new URL(`../${name}`, import.meta.url));

/** The first day that a zip can name, in local time, as the library writes it: the same bytes on each run. */
const DATE = new Date(1980, 0, 1);

/**
 * Every file of a folder under the folder's own name, as one zip.
 * @param {string} parent
 * @param {string} folder
 */
export function zipped(parent, folder) {
  const files = readdirSync(join(parent, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
    .sort();
  const entries = files.map((file) => [
    file.slice(parent.length + 1).replaceAll("\\", "/"),
    new Uint8Array(readFileSync(file)),
  ]);
  return zipSync(Object.fromEntries(entries), { level: 9, mtime: DATE });
}

function main() {
  const { values } = parseArgs({ options: { origin: { type: "string" } } });
  if (values.origin === undefined) {
    throw new Error("give the address that the files will have: --origin https://example.org/comb");
  }
  const origin = checkedOrigin(values.origin);
  execFileSync("npx", ["webpack", "--mode", "production", "--env", `origin=${origin}`], {
    cwd: path("."),
    stdio: "inherit",
    shell: process.platform === "win32",
  });
  const faults = faultsOf(path("dist/addin"), origin, path("tests/functions/shipped.json"));
  if (faults.length > 0) throw new Error(`not packed:\n${faults.join("\n")}`);

  const { version } = JSON.parse(readFileSync(path("package.json"), "utf8"));
  const folder = `comb-tally-${version}`;
  rmSync(path(`out/${folder}`), { recursive: true, force: true });
  mkdirSync(path("out"), { recursive: true });
  cpSync(path("dist/addin"), path(`out/${folder}`), { recursive: true });
  writeFileSync(path(`out/${folder}.zip`), zipped(path("out"), folder));
  console.log(`out/${folder}/ and out/${folder}.zip: put the files at ${origin}`);
  console.log(`out/${folder}/manifest.xml: what Excel is given`);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  try {
    main();
  } catch (error) {
    console.error(error instanceof Error ? error.message : error);
    process.exit(1);
  }
}
