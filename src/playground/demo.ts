import workbook from "../../examples/cherry-and-pear.xlsx";
import type { Readied } from "./file.js";

/** The demo, read as the page was built. */
export function demo(): Readied {
  const { name, base64, data, lockedSheets } = workbook;
  return {
    file: { name, bytes: Uint8Array.from(atob(base64), (sign) => sign.charCodeAt(0)) },
    // The grid writes into what it is given, and the demo may be opened again.
    data: structuredClone(data),
    lockedSheets: new Set(lockedSheets),
  };
}
