import packageJson from "../../package.json" with { type: "json" };
import type { ListedFunction } from "./context.js";
import { excelWorkbook } from "./excel.js";
import { mount } from "./mount.js";
import { texts } from "./texts.js";

/** Opens the pane in an element of the page, once Excel has said that it is there. */
export async function open(into: HTMLElement): Promise<void> {
  // Office is missing where Microsoft's script could not be fetched.
  const inExcel =
    typeof Office !== "undefined" && (await Office.onReady()).host === Office.HostType.Excel;
  if (!inExcel) {
    into.querySelector("[role=status]")!.textContent = texts.host.noExcel;
    return;
  }
  followTheme(Office.context.officeTheme);
  into.replaceChildren();
  mount(into, { workbook: excelWorkbook(), version: packageJson.version, functions: listed() });
}

/** Excel's own theme may differ from the system's, which the style sheet follows by itself. */
function followTheme(theme: Office.OfficeTheme | undefined): void {
  // Excel on the web has none, and an older Excel may give the colours only.
  const isDark = theme?.isDarkTheme ?? isDarkColour(theme?.bodyBackgroundColor);
  if (isDark === null) return;
  document.documentElement.style.colorScheme = isDark ? "dark" : "light";
}

function isDarkColour(colour: string | undefined): boolean | null {
  const [, ...parts] = /^#(..)(..)(..)$/.exec(colour ?? "") ?? [];
  if (parts.length === 0) return null;
  return parts.reduce((sum, part) => sum + parseInt(part, 16), 0) < (3 * 255) / 2;
}

async function listed(): Promise<readonly ListedFunction[] | null> {
  try {
    const response = await fetch("functions.json");
    const { functions } = (await response.json()) as { functions?: readonly ListedFunction[] };
    return functions ?? null;
  } catch {
    return null;
  }
}
