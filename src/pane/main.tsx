import packageJson from "../../package.json" with { type: "json" };
import { associateAll } from "../functions/excel.js";
import type { ListedFunction } from "./context.js";
import { excelWorkbook } from "./excel.js";
import { mount } from "./mount.js";
import { texts } from "./texts.js";

associateAll();
// A runtime without a page runs the functions alone.
if (typeof document !== "undefined") void start(document.getElementById("pane")!);

async function start(into: HTMLElement): Promise<void> {
  // Office is missing where Microsoft's script could not be fetched.
  const inExcel =
    typeof Office !== "undefined" && (await Office.onReady()).host === Office.HostType.Excel;
  if (!inExcel) {
    into.querySelector("[role=status]")!.textContent = texts.host.noExcel;
    return;
  }
  const theme = Office.context.officeTheme;
  // Excel's own theme may differ from the system's, which the style sheet follows by itself.
  if (theme) document.documentElement.style.colorScheme = theme.isDarkTheme ? "dark" : "light";
  into.replaceChildren();
  mount(into, { workbook: excelWorkbook(), version: packageJson.version, functions: listed() });
}

async function listed(): Promise<readonly ListedFunction[] | null> {
  try {
    const response = await fetch("functions.json");
    return ((await response.json()) as { functions: ListedFunction[] }).functions;
  } catch {
    return null;
  }
}
