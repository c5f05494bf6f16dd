import { Refusal } from "../core/refusal.js";
import type { Workbook } from "./port.js";

/** The workbook that Excel has open. */
export function excelWorkbook(): Workbook {
  throw new Refusal("not connected to Excel yet");
}
