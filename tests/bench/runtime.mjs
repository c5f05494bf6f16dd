/**
 * `npm run bench:runtime`: in Microsoft's own runtime for custom functions, how soon the built add-in
 * has registered its functions, and what a cell each takes over one call of their column. What
 * Excel's side of the bridge takes is ours here (tests/host) and is in both.
 */
import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { runnerImport } from "vite";

const { module } = await runnerImport(fileURLToPath(new URL("./runtime.ts", import.meta.url)));
if (process.argv[2] === "--start") {
  console.log(module.start());
} else {
  // A second start in one process would find the script compiled.
  const starts = Array.from({ length: 5 }, () => {
    const run = spawnSync(process.execPath, [fileURLToPath(import.meta.url), "--start"]);
    if (run.status !== 0) throw new Error(String(run.stderr));
    return Number(run.stdout);
  });
  console.log("in Microsoft's runtime, ms of the processor, the least of five");
  console.log(`start to every function registered  ${Math.min(...starts).toFixed(1)}`);
  const { hives, cells, column } = await module.calls();
  console.log(`GRADE, ${hives} cells, a call each     ${cells.toFixed(0)}`);
  console.log(`GRADE, ${hives} hives in one column    ${column.toFixed(1)}`);
  console.log(`a cell each over their column       x${(cells / column).toFixed(0)}`);
}
