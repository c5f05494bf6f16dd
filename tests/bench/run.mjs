/**
 * `npm run bench`, or `npm run bench -- LOT`: the functions over growing yards, bundled as they are
 * shipped, each in a process of its own so that none runs on what another left behind.
 */
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "vite";

const [mode = "", script = "", name = ""] = process.argv.slice(2);
if (mode === "--part") {
  (await import(script)).bench(name);
} else {
  const folder = mkdtempSync(join(tmpdir(), "comb-tally-bench-"));
  try {
    await runAll(join(folder, "bench.js"), folder);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/**
 * @param {string} script
 * @param {string} folder
 */
async function runAll(script, folder) {
  await build({
    configFile: false,
    logLevel: "warn",
    build: {
      ssr: fileURLToPath(new URL("./bench.ts", import.meta.url)),
      outDir: folder,
      emptyOutDir: true,
    },
    ssr: { noExternal: true },
  });
  const { names, HEADING } = await import(script);
  console.log(HEADING);
  for (const name of names.filter((/** @type {string} */ n) => n.startsWith(mode))) {
    const args = ["--expose-gc", fileURLToPath(import.meta.url), "--part", script, name];
    const { status } = spawnSync(process.execPath, args, { stdio: "inherit" });
    if (status !== 0) throw new Error(`${name} ended with ${status}`);
  }
}
