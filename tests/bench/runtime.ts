import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { startExcel } from "../host/excel.js";
import { readFunctionsJson } from "../host/functions-json.js";
import { startRuntime } from "../host/microsoft-runtime.js";
import { FRAMES_ONLY, numberColumn } from "./sheets.js";

const HIVES = 10_000;
const ROUNDS = 5;

/** Milliseconds of the processor from the add-in's first line until every function is registered. */
export function start(): number {
  const bundle = fileURLToPath(new URL("../../dist/addin/addin.js", import.meta.url));
  const script = readFileSync(bundle, "utf8");
  const wanted = readFunctionsJson().functions.length;
  const runtime = startRuntime();
  const before = process.cpuUsage();
  runtime.run(script, bundle);
  const took = since(before);
  const found = runtime.associated().length;
  if (found !== wanted) throw new Error(`${found} of ${wanted} functions are registered`);
  return took;
}

/** A cell each for so many hives beside one call of their column: milliseconds of the processor. */
export async function calls(): Promise<{ hives: number; cells: number; column: number }> {
  const excel = startExcel();
  const frames = numberColumn(HIVES);
  const grade = (of: unknown) => excel.call("GRADE", [of, FRAMES_ONLY, "Cherry"]);
  let [cells, column] = [Infinity, Infinity];
  for (let round = 0; round < ROUNDS; round++) {
    const before = process.cpuUsage();
    const single = await Promise.all(frames.map(([cell]) => grade(cell)));
    cells = Math.min(cells, since(before));
    const between = process.cpuUsage();
    const spilled = await grade(frames);
    column = Math.min(column, since(between));
    if (JSON.stringify(single.flat()) !== JSON.stringify(spilled)) {
      throw new Error("a cell and its column give different grades");
    }
  }
  return { hives: HIVES, cells, column };
}

function since(before: NodeJS.CpuUsage): number {
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1e3;
}
