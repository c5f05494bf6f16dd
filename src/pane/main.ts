import { associateAll } from "../functions/excel.js";

associateAll();
// A runtime without a page runs the functions alone.
if (typeof document !== "undefined") void openPane(document.getElementById("pane")!);

/** The pane's code is fetched once the functions stand: they go on where it cannot be had. */
async function openPane(into: HTMLElement): Promise<void> {
  const pane = await import(/* webpackChunkName: "pane" */ "./open.js").catch(() => null);
  if (pane !== null) return pane.open(into);
  const status = into.querySelector<HTMLElement>("[role=status]")!;
  status.textContent = status.dataset.unopened!;
}
