import type { IWorkbookData } from "@univerjs/core";
import demoUrl from "../../examples/cherry-and-pear.xlsx";
import type { Readied } from "./file.js";
import { texts } from "./texts.js";

declare const DEMO: Pick<Readied, "data"> & { readonly lockedSheets: readonly string[] };

/** The demo, read as the page was built: what reads a file need not be there for the first view. */
export function demo(): Readied {
  const [, base64 = ""] = demoUrl.split(",");
  const { data, lockedSheets } = DEMO;
  return {
    file: { name: texts.demo, bytes: Uint8Array.from(atob(base64), (sign) => sign.charCodeAt(0)) },
    // The grid writes into what it is given, and the demo may be opened again.
    data: structuredClone<IWorkbookData>(data),
    lockedSheets: new Set(lockedSheets),
  };
}
