/**
 * Office.js as far as the pane uses it, over an object that plays Excel: nothing happens before a
 * sync, what was not loaded cannot be read, commands are made one after the other and stop at the
 * first that fails, with what was made before it left as it is (that a batch is no transaction is
 * how Microsoft describes it).
 */

/** What Excel's side throws, and what a sync then rejects with. */
export class OfficeError extends Error {
  readonly debugInfo: { readonly errorLocation: string };

  constructor(
    readonly code: string,
    errorLocation = "",
  ) {
    super(`localised: ${code}`);
    this.debugInfo = { errorLocation };
  }
}

export interface Host {
  readonly workbook: object;
  /** Called before each sync, to let a co-author type. */
  beforeSync(sync: number): void;
}

/** The sync, counted from 0, that fails once, after so many of its commands. */
export interface Failure {
  readonly sync: number;
  readonly after: number;
}

/** Excel on the web lets no more through a call. */
const MOST_BYTES = 5_000_000;

/** What leads on to another object; all else that is read is a value that must be loaded. */
const LEADS_ON = new Set(
  (
    "workbook worksheets tables names application protection format onChanged onCalculated onAdded " +
    "onDeleted onNameChanged onVisibilityChanged worksheet comments font borders pageLayout " +
    "headersFooters defaultForAllPages horizontalPageBreaks charts series title legend axes " +
    "valueAxis fill line"
  ).split(" "),
);
const METHOD = /^((get|set)[A-Z]|add$|delete$|resize$|remove$|merge$)/;

type Command = () => void;

export class FakeOffice {
  /** How many commands each sync carried. */
  readonly syncs: number[] = [];
  failure: Failure | null = null;
  /** "The network is gone": every sync from this one on fails. */
  offlineFrom = Infinity;

  constructor(private readonly host: Host) {}

  readonly run = async <T>(
    options: { readonly delayForCellEdit: boolean },
    batch: (context: FakeContext) => Promise<T>,
  ): Promise<T> => {
    if (!options.delayForCellEdit)
      throw new Error("a cell that is typed into would make this fail");
    const context = new FakeContext(this, this.host);
    const result = await batch(context);
    await context.sync();
    return result;
  };

  async send(commands: readonly Command[], sizes: { sent: number; got: number }): Promise<void> {
    const sync = this.syncs.length;
    await Promise.resolve();
    this.syncs.push(commands.length);
    if (sync >= this.offlineFrom) throw new OfficeError("GeneralException");
    if (sizes.sent > MOST_BYTES) throw new OfficeError("RequestPayloadSizeLimitExceeded");
    this.host.beforeSync(sync);
    const fails = this.failure?.sync === sync ? this.failure : null;
    if (fails !== null) this.failure = null;
    for (const [n, command] of commands.entries()) {
      if (fails?.after === n) throw new OfficeError("GeneralException");
      command();
    }
    if (fails !== null) throw new OfficeError("GeneralException");
    if (sizes.got > MOST_BYTES) throw new OfficeError("ResponsePayloadSizeLimitExceeded");
  }
}

export class FakeContext {
  private commands: Command[] = [];
  private sizes = { sent: 0, got: 0 };
  /** Values that a load brought, to be seen only once the whole sync is through. */
  private arrived: Command[] = [];
  readonly workbook: unknown;

  constructor(
    private readonly office: FakeOffice,
    host: Host,
  ) {
    this.workbook = stub(this, () => host.workbook);
  }

  queue(command: Command, sent: unknown = null): void {
    this.sizes.sent += JSON.stringify(sent)?.length ?? 0;
    this.commands.push(command);
  }

  arrive(value: unknown, show: Command): void {
    this.sizes.got += JSON.stringify(value)?.length ?? 0;
    this.arrived.push(show);
  }

  async sync(): Promise<void> {
    const { commands, sizes } = this;
    if (commands.length === 0) return;
    [this.commands, this.sizes, this.arrived] = [[], { sent: 0, got: 0 }, []];
    // What is got is counted while the commands run.
    await this.office.send(
      commands.map((command) => () => {
        command();
        sizes.got = this.sizes.got;
      }),
      sizes,
    );
    this.sizes = { sent: 0, got: 0 };
    for (const show of this.arrived) show();
    this.arrived = [];
  }
}

/** What the pane may see of an object of Excel's: what was loaded, and objects that it leads to. */
interface Seen {
  readonly resolve: () => unknown;
  readonly loaded: Map<string, unknown>;
  readonly children: Map<string, object>;
  isNull: boolean | null;
}

const seen = new WeakMap<object, Seen>();

/** Stands in the pane for an object of Excel's that `resolve` finds while a sync runs. */
function stub(context: FakeContext, resolve: () => unknown): object {
  const own: Seen = { resolve, loaded: new Map(), children: new Map(), isNull: null };
  const load = (paths: string) => {
    context.queue(() => {
      const object = resolve();
      context.arrive(null, () => (own.isNull = object === null));
      if (object === null) return;
      for (const path of paths.split(",")) bring(context, own, object, path.split("/"));
    }, paths);
    return self;
  };
  const self: object = new Proxy(
    {},
    {
      get(_, key: string) {
        if (key === "then") return undefined;
        if (key === "load") return load;
        if (key === "context") return context;
        if (key === "isNullObject") {
          if (own.isNull === null) throw new Error("isNullObject was not loaded");
          return own.isNull;
        }
        if (own.loaded.has(key)) return own.loaded.get(key);
        if (LEADS_ON.has(key)) return childOf(context, own, key);
        if (!METHOD.test(key)) throw new Error(`${key} was not loaded`);
        return (...args: unknown[]) => {
          let result: unknown;
          context.queue(
            () => {
              const object = existing(resolve());
              const call = object[key] as (...args: unknown[]) => unknown;
              result = call.apply(object, args.map(resolved));
            },
            args.filter((arg) => typeof arg !== "function" && !seen.has(arg as object)),
          );
          return stub(context, () => result);
        };
      },
      set(_, key: string, value: unknown) {
        context.queue(() => (existing(resolve())[key] = value), value);
        return true;
      },
    },
  );
  seen.set(self, own);
  return self;
}

function childOf(context: FakeContext, { resolve, children }: Seen, key: string): object {
  const child = children.get(key) ?? stub(context, () => existing(resolve())[key]);
  children.set(key, child);
  return child;
}

/** An argument may itself stand for an object of Excel's. */
function resolved(arg: unknown): unknown {
  const own = typeof arg === "object" && arg !== null ? seen.get(arg) : undefined;
  return own === undefined ? arg : own.resolve();
}

/** What is not there cannot be asked for more. */
function existing(object: unknown): Record<string, unknown> {
  if (object === null || object === undefined) throw new OfficeError("InvalidObjectPath");
  return object as Record<string, unknown>;
}

/** Brings `name`, `items/name` or `format/protection/locked`. */
function bring(
  context: FakeContext,
  into: Seen,
  object: unknown,
  [first, ...rest]: readonly string[],
): void {
  if (first === undefined || !(first in existing(object))) {
    throw new Error(`there is nothing to load as ${first}`);
  }
  const value = existing(object)[first];
  if (rest.length === 0) {
    const copy: unknown = structuredClone(value);
    context.arrive(copy, () => into.loaded.set(first, copy));
  } else if (first === "items") {
    let items = into.loaded.get("items") as object[] | undefined;
    items ??= (value as unknown[]).map((one) => stub(context, () => one));
    into.loaded.set("items", items);
    items.forEach((one, n) => bring(context, seen.get(one)!, (value as unknown[])[n], rest));
  } else {
    bring(context, seen.get(childOf(context, into, first))!, value, rest);
  }
}
