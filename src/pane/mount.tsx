import { render } from "preact";
import type { Host } from "./context.js";
import { CombTally } from "./pane.js";

/** Draws the pane into an element of a page, over a workbook. @returns takes it out again */
export function mount(into: HTMLElement, host: Host): () => void {
  render(<CombTally {...host} />, into);
  return () => render(null, into);
}
