import axe from "axe-core";
import { JSDOM, type DOMWindow } from "jsdom";
import type { ComponentType } from "preact";
import type { Host, ListedFunction } from "../../src/pane/context.js";
import type { Step, Workbook } from "../../src/pane/port.js";

/** A view or the whole pane, drawn in jsdom over a workbook. */
export interface Drawn {
  readonly window: DOMWindow;
  readonly page: Document;
  /** What was said, oldest first, with the steps that would take it back. */
  readonly said: { readonly sentence: string; readonly undo: readonly Step[] }[];
  readonly violations: () => Promise<string[]>;
}

const FUNCTIONS: readonly ListedFunction[] = [
  { name: "GRADE", description: "A hive's grade.", helpUrl: "https://example.org/help.html#GRADE" },
];

/** Preact draws into the page that is global as it is loaded, so that each test file has one page. */
export async function draw(View: ComponentType, workbook: Workbook): Promise<Drawn> {
  const { window } = new JSDOM(
    '<!doctype html><html lang="en"><head><title>Pane</title></head><body><main id="pane"></main></body></html>',
    { runScripts: "outside-only" },
  );
  Object.assign(globalThis, { window, document: window.document });
  const [{ render }, { PaneProvider }] = await Promise.all([
    import("preact"),
    import("../../src/pane/context.js"),
  ]);
  const said: Drawn["said"] = [];
  const host: Host = { workbook, version: "0.0.0", functions: Promise.resolve(FUNCTIONS) };
  const say = (sentence: string, undo: readonly Step[] = []) => void said.push({ sentence, undo });
  const into = window.document.getElementById("pane")!;
  render(
    <PaneProvider host={host} say={say}>
      <View />
    </PaneProvider>,
    into,
  );
  return { window, page: window.document, said, violations: () => violationsIn(window) };
}

export async function violationsIn(window: DOMWindow): Promise<string[]> {
  window.eval(axe.source);
  const inPage = (window as unknown as { axe: typeof axe }).axe;
  const results = await inPage.run(window.document, {
    // jsdom draws nothing, so there is no contrast to measure.
    rules: { "color-contrast": { enabled: false } },
  });
  return results.violations.map(({ id, nodes }) => `${id}: ${nodes.map((n) => n.html).join(" ")}`);
}
