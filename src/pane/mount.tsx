import { render } from "preact";
import type { Pane } from "./context.js";
import { CombTally } from "./pane.js";

/** Draws the pane into an element of a page, over a workbook. */
export function mount(into: HTMLElement, pane: Omit<Pane, "say">): void {
  render(<CombTally {...pane} />, into);
}
