import { mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Workbook } from "@cj-tech-master/excelts";
import { onTestFinished } from "vitest";
import { run } from "../../src/cli/program.js";

/** A folder for one test, in which the program is run. */
export interface Folder {
  readonly path: (name: string) => string;
  readonly names: () => Promise<string[]>;
  readonly bytes: (name: string) => Promise<Buffer>;
  readonly open: (name: string) => Promise<Workbook>;
  /** Runs `comb-tally` with arguments, of which those with a file's ending are files of the folder. */
  readonly run: (...args: string[]) => Promise<Result>;
}

export interface Result {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

export async function folder(files: Record<string, Uint8Array | string>): Promise<Folder> {
  const root = await mkdtemp(join(tmpdir(), "comb-tally-"));
  onTestFinished(() => rm(root, { recursive: true, force: true }));
  const path = (name: string): string => join(root, name);
  for (const [name, content] of Object.entries(files)) await writeFile(path(name), content);
  return {
    path,
    names: async () => (await readdir(root)).sort(),
    bytes: (name) => readFile(path(name)),
    open: async (name) => {
      const workbook = new Workbook();
      await workbook.xlsx.readFile(path(name));
      return workbook;
    },
    run: async (...args) => {
      let out = "";
      let err = "";
      const code = await run(
        args.map((arg) => (/\.\w{3,4}$/.test(arg) ? path(arg) : arg)),
        { out: (text) => (out += text), err: (text) => (err += text), width: 80, watched: false },
      );
      return { code, out: out.replaceAll(root, ""), err: err.replaceAll(root, "") };
    },
  };
}
