import packageJson from "../../package.json" with { type: "json" };
import { associateAll } from "../functions/excel.js";
import * as view from "./view.js";

associateAll();
// A runtime without a page runs the functions alone.
if (typeof document !== "undefined") void start(document);

async function start(page: Document): Promise<void> {
  view.showVersion(page, packageJson.version);
  await Promise.all([showHost(page), showFunctions(page)]);
}

async function showHost(page: Document): Promise<void> {
  // Office is missing where Microsoft's script could not be fetched.
  const inExcel =
    typeof Office !== "undefined" && (await Office.onReady()).host === Office.HostType.Excel;
  view.showHost(page, inExcel);
  const theme = inExcel ? Office.context.officeTheme : undefined;
  if (theme) view.showTheme(page, theme.isDarkTheme);
}

async function showFunctions(page: Document): Promise<void> {
  try {
    const response = await fetch("functions.json");
    const { functions } = (await response.json()) as { functions: view.ListedFunction[] };
    view.showFunctions(page, functions);
  } catch {
    view.showNoFunctions(page);
  }
}
