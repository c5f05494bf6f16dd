import { mkdir, readFile, rename, rm, stat, writeFile } from "node:fs/promises";
import { basename, dirname, join } from "node:path";
import { Problem, reason } from "../workbook/problem.js";
import { refuseHuge } from "../workbook/unpack.js";

/** The bytes of a file, refused before it is read where it is no file or too large. */
export async function readInput(path: string): Promise<Uint8Array> {
  try {
    const found = await stat(path);
    if (!found.isFile() && !found.isDirectory()) throw new Problem(`${path} is no ordinary file.`);
    refuseHuge(found.size, path);
    return await readFile(path);
  } catch (error) {
    if (error instanceof Problem) throw error;
    throw new Problem(unreadable(path, error));
  }
}

function unreadable(path: string, error: unknown): string {
  const code = codeOf(error);
  if (code === "ENOENT") return `There is no file ${path}.`;
  if (code === "EISDIR") return `${path} is a folder, not a file.`;
  return `${path} could not be read: ${reason(error)}.`;
}

/** The file behind a name, whatever links lead to it: the input must never be written over. */
export async function refuseSameFile(input: string, output: string): Promise<void> {
  const [from, to] = await Promise.all([stat(input), stat(output).catch(() => null)]);
  if (to?.isDirectory()) throw new Problem(`${output} is a folder: give --out a file's name.`);
  if (to && from.dev === to.dev && from.ino === to.ino) {
    throw new Problem(
      `${output} is the file that is read: it is never written over. Give --out another name.`,
    );
  }
}

export async function refuseToReplace(output: string): Promise<void> {
  if (await stat(output).catch(() => null)) {
    throw new Problem(
      `${output} is already there. To replace it, say so: --out ${output}, or give another name.`,
    );
  }
}

/** Writes under a temporary name beside the target first, so that no half file ever has its name. */
export async function writeWhole(path: string, bytes: Uint8Array): Promise<void> {
  const temporary = join(dirname(path), `.${basename(path)}.${process.pid}.part`);
  try {
    await mkdir(dirname(path), { recursive: true });
    await writeFile(temporary, bytes, { flag: "wx" });
    await rename(temporary, path);
  } catch (error) {
    await rm(temporary, { force: true }).catch(() => {});
    throw new Problem(unwritable(path, error));
  }
}

function unwritable(path: string, error: unknown): string {
  const code = codeOf(error);
  if (code === "EBUSY" || code === "EPERM") {
    return `${path} could not be written: is it open in Excel? Close it and try again.`;
  }
  return `${path} could not be written: ${reason(error)}.`;
}

function codeOf(error: unknown): unknown {
  return error instanceof Error && "code" in error ? error.code : null;
}
