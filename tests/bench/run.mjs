/** `npm run bench`: times the functions over growing yards, beside a bare loop over the same cells. */
import { runnerImport } from "vite";
import { fileURLToPath } from "node:url";

const entry = fileURLToPath(new URL("./bench.ts", import.meta.url));
const { module } = await runnerImport(entry);
await module.bench();
