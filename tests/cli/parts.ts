import { unzip } from "@cj-tech-master/excelts/archive";
import type { Parts } from "../../src/workbook/unpack.js";

/** The parts of a workbook that the program wrote. */
export async function partsOf(bytes: Uint8Array): Promise<Parts> {
  const parts = new Map<string, Uint8Array>();
  for await (const entry of unzip(bytes).entries()) {
    if (entry.type === "file") parts.set(entry.path, await entry.bytes());
  }
  return parts;
}
