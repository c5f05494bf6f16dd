import { render } from "preact";
import type { Pane } from "./context.js";
import { CombTally } from "./pane.js";

/** Draws the pane into an element of a page, over a workbook. @returns takes it out again */
export function mount(into: HTMLElement, pane: Omit<Pane, "say">): () => void {
  render(<CombTally {...pane} />, into);
  return () => render(null, into);
}
