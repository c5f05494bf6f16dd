import { BufferReader, crc32, RemoteZipReader } from "@cj-tech-master/excelts/archive";
import { Problem, reason } from "./problem.js";

/** The files of a workbook by their path in it: an .xlsx is a zip of XML. */
export type Parts = ReadonlyMap<string, Uint8Array>;

type Entry = ReturnType<RemoteZipReader["getEntries"]>[number];

/** What a file may take on the disk, in bytes: a hundred thousand hives take a tenth of it. */
export const MOST_BYTES = 100e6;
/** What the parts of a workbook may take when unpacked, together. */
const MOST_UNPACKED = 400e6;
/** Sheets are packed to a tenth, seldom to a fiftieth; only what is made to do harm to a thousandth. */
const MOST_TIMES = 200;
/** Under this size a part may be packed as tightly as it likes. */
const SMALL = 10e6;

/** Refuses a file by its size, before it is read. */
export function refuseHuge(bytes: number, name: string): void {
  if (bytes <= MOST_BYTES) return;
  throw new Problem(
    `${name} has ${megabytes(bytes)}, and at most ${megabytes(MOST_BYTES)} are read. ` +
      "Save the yard sheet and its terms in a workbook of their own.",
  );
}

/**
 * Unpacks a workbook. A small file can be made to unpack to more than any memory holds, so the
 * sizes it declares are held to a bound first, and each part then to the size it declared.
 */
export async function unpack(bytes: Uint8Array, name: string): Promise<Parts> {
  refuseHuge(bytes.length, name);
  try {
    const zip = await RemoteZipReader.fromReader(new BufferReader(bytes));
    const files = zip.getEntries().filter(({ type }) => type === "file");
    for (const file of files) refuseBomb(file.uncompressedSize, file.compressedSize, name);
    const total = files.reduce((sum, file) => sum + file.uncompressedSize, 0);
    refuseBomb(total, bytes.length, name);
    const parts = new Map<string, Uint8Array>();
    for (const file of files) {
      const packed = await zip.getRawCompressedData(file);
      parts.set(file.path, await whole(file, packed!));
    }
    return parts;
  } catch (error) {
    if (error instanceof Problem) throw error;
    throw new Problem(`${name} is not a workbook, or is damaged: ${reason(error)}.`);
  }
}

function refuseBomb(unpacked: number, packed: number, name: string): void {
  if (unpacked <= MOST_UNPACKED && (unpacked <= SMALL || unpacked <= packed * MOST_TIMES)) return;
  throw new Problem(
    `${name} would unpack to ${megabytes(unpacked)} from ${megabytes(packed)}, and is not opened: ` +
      `at most ${megabytes(MOST_UNPACKED)} are, and at most ${MOST_TIMES} times what is packed.`,
  );
}

/** A part as it was before it was packed, or an error where it is not what the file says of it. */
async function whole(file: Entry, packed: Uint8Array): Promise<Uint8Array> {
  const { path, compressionMethod, uncompressedSize } = file;
  if (file.isEncrypted) throw new Error(`the part ${path} is locked with a password`);
  if (compressionMethod !== STORED && compressionMethod !== DEFLATED) {
    throw new Error(`the part ${path} is packed in a way that is not known here`);
  }
  const part =
    compressionMethod === STORED ? packed : await inflated(packed, uncompressedSize, path);
  if (part.length !== uncompressedSize || crc32(part) !== file.crc32) {
    throw new Error(`the part ${path} is not what it was when it was packed`);
  }
  return part;
}

const STORED = 0;
const DEFLATED = 8;

async function inflated(packed: Uint8Array, size: number, path: string): Promise<Uint8Array> {
  const part = new Uint8Array(size);
  const stream = new Blob([packed as Uint8Array<ArrayBuffer>]).stream();
  const reader = stream.pipeThrough(new DecompressionStream("deflate-raw")).getReader();
  let filled = 0;
  for (;;) {
    const { value } = await reader.read();
    if (!value) return part.subarray(0, filled);
    if (filled + value.length > size) {
      await reader.cancel();
      throw new Error(`the part ${path} is larger than the file says`);
    }
    part.set(value, filled);
    filled += value.length;
  }
}

const megabytes = (bytes: number): string =>
  `${(bytes / 1e6).toLocaleString("en", { maximumFractionDigits: 1 })} MB`;
