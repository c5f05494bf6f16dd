import { NAMESPACE } from "../functions/namespace.js";

/** A function as functions.json describes it, as far as the pane shows it. */
export interface ListedFunction {
  readonly name: string;
  readonly description: string;
  readonly helpUrl: string;
}

export function showVersion(page: Document, version: string): void {
  element(page, "version").textContent = version;
}

export function showHost(page: Document, inExcel: boolean): void {
  element(page, "host").textContent = inExcel
    ? `Type =${NAMESPACE}. in a cell, and Excel lists the functions.`
    : "This page is the pane of an Excel add-in, and Excel is not around it. " +
      "In Excel, add Comb Tally from Home > Add-ins, then open it from the Home tab.";
}

/** Excel's own theme may differ from the system's, which the style sheet follows by itself. */
export function showTheme(page: Document, dark: boolean): void {
  page.documentElement.style.colorScheme = dark ? "dark" : "light";
}

export function showFunctions(page: Document, functions: readonly ListedFunction[]): void {
  const list = element(page, "function-list");
  list.replaceChildren(...functions.flatMap((fn) => entry(page, fn)));
  list.hidden = false;
  element(page, "functions-state").hidden = true;
}

export function showNoFunctions(page: Document): void {
  element(page, "functions-state").textContent =
    "The list could not be read. The functions may work all the same; " +
    "to see them here, close the pane and open it again.";
}

function entry(page: Document, fn: ListedFunction): HTMLElement[] {
  const link = page.createElement("a");
  link.href = fn.helpUrl;
  link.textContent = `${NAMESPACE}.${fn.name}`;
  const term = page.createElement("dt");
  term.append(link);
  const description = page.createElement("dd");
  description.textContent = fn.description;
  return [term, description];
}

function element(page: Document, id: string): HTMLElement {
  const found = page.getElementById(id);
  if (!found) throw new Error(`pane.html has no element "${id}"`);
  return found;
}
