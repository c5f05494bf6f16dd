/** Runs the property tests on new examples, minutes long: `npm run soak -- 10`. A seed that fails is said. */
import { spawnSync } from "node:child_process";
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const tests = fileURLToPath(new URL(".", import.meta.url));
const files = readdirSync(tests, { recursive: true, encoding: "utf8" })
  .filter((name) => !name.includes("node_modules") && name.endsWith(".test.ts"))
  .map((name) => join(tests, name))
  .filter((name) => readFileSync(name, "utf8").includes("fast-check"));

const minutes = Number(process.argv[2] ?? 5);
const end = Date.now() + minutes * 60_000;
let seed = Date.now() % 2 ** 31;
let rounds = 0;
for (; Date.now() < end; rounds++, seed++) {
  const { status } = spawnSync("npx", ["vitest", "run", "--reporter=dot", ...files], {
    env: { ...process.env, SEED: String(seed) },
    stdio: "inherit",
  });
  if (status !== 0) {
    console.error(`failed with SEED=${seed}: repeat it with SEED=${seed} npx vitest run`);
    process.exit(1);
  }
}
console.log(`${rounds} rounds of ${files.length} files, none failed`);
