import { has, run } from "./excel-run.js";

/** Calculation and typing come in bursts: the pane reads once they pause. */
const PAUSE_MS = 250;

type Registration = OfficeExtension.EventHandlerResult<unknown>;

/** One registration with Excel for all who watch. */
export class ExcelWatch {
  private readonly listeners = new Set<() => void>();
  private registered: Promise<readonly Registration[]> | null = null;
  private timer: ReturnType<typeof setTimeout> | null = null;

  add(changed: () => void): () => void {
    // Wrapped, so that one who watches twice is two.
    const listener = () => changed();
    this.listeners.add(listener);
    this.registered ??= register(() => this.hear());
    return () => {
      if (!this.listeners.delete(listener) || this.listeners.size > 0) return;
      if (this.timer !== null) clearTimeout(this.timer);
      this.timer = null;
      const registered = this.registered;
      this.registered = null;
      void registered?.then(unregister).catch(() => undefined);
    };
  }

  private hear(): Promise<void> {
    if (this.timer !== null) clearTimeout(this.timer);
    this.timer = setTimeout(() => {
      this.timer = null;
      for (const listener of this.listeners) listener();
    }, PAUSE_MS);
    return Promise.resolve();
  }
}

/**
 * What changes a region or a cell, by whomever: a co-author's edits come as events with the source
 * "Remote". Custom functions answer after the edit, so that the end of a calculation counts too.
 */
async function register(hear: () => Promise<void>): Promise<readonly Registration[]> {
  try {
    return await run(async (context) => {
      const { worksheets, tables } = context.workbook;
      const registrations: Registration[] = [
        worksheets.onChanged.add(hear),
        worksheets.onCalculated.add(hear),
        worksheets.onAdded.add(hear),
        worksheets.onDeleted.add(hear),
        tables.onAdded.add(hear),
        tables.onDeleted.add(hear),
      ];
      if (has("1.17")) {
        registrations.push(worksheets.onNameChanged.add(hear));
        registrations.push(worksheets.onVisibilityChanged.add(hear));
      }
      await context.sync();
      return registrations;
    });
  } catch {
    // Without events the pane still reads and writes; a write verifies what it meets.
    return [];
  }
}

/** A handler goes away only in the context that it came with. */
async function unregister(registrations: readonly Registration[]): Promise<void> {
  const [first] = registrations;
  if (first === undefined) return;
  for (const registration of registrations) registration.remove();
  await first.context.sync();
}
