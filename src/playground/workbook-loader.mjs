/**
 * Makes of a workbook's file, as the page is built, what the grid takes: what reads files need not be
 * there for the first view. It is read in a process of its own, while webpack reads the grid.
 */
import { execFile } from "node:child_process";
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { runnerImport } from "vite";

const own = fileURLToPath(import.meta.url);

/** @this {import("webpack").LoaderContext<{ name: string }>} */
export default function load() {
  const done = this.async();
  const asked = [own, this.resourcePath, this.getOptions().name];
  execFile(process.execPath, asked, { maxBuffer: 1e8 }, (error, read) =>
    done(error, `export default ${read}`),
  );
}

if (process.argv[1] === own) {
  const [path = "", name = ""] = process.argv.slice(2);
  const file = fileURLToPath(new URL("file.ts", import.meta.url));
  const { module } = await runnerImport(file);
  const { readFile } = /** @type {typeof import("./file.js")} */ (module);
  const bytes = readFileSync(path);
  const { data, lockedSheets } = await readFile({ name, bytes });
  console.log(
    JSON.stringify({
      name,
      base64: bytes.toString("base64"),
      data,
      lockedSheets: [...lockedSheets],
    }),
  );
}
