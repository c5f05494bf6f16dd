import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import vm from "node:vm";

/** An error as Excel would show it, with the text of its tooltip. */
export interface HostError {
  readonly error: string;
  readonly message: string;
}

export type HostCell = string | number | boolean | null | HostError;

export interface Runtime {
  /** The `CustomFunctions` that an add-in sees in Excel. */
  readonly CustomFunctions: typeof CustomFunctions;
  /** Ids as they were associated. */
  readonly associated: () => string[];
  /** Runs a script in the runtime's own world. */
  readonly run: (script: string, filename: string) => void;
  /** Sends a call as Excel sends it; an error in a cell of `args` is written `{ error: "#N/A" }`. */
  readonly call: (id: string, args: readonly unknown[]) => Promise<HostCell[][] | HostError>;
}

/** Codes that the runtime reports of a call that failed; it knows no more. */
const FAILURES: Readonly<Record<number, string>> = {
  1: "#N/A",
  5: "#DIV/0!",
  6: "#NUM!",
  8: "#NULL!",
};
/** Asks the runtime to hand error cells on, as `allowErrorForDataTypeAny` in functions.json does. */
const ERRORS_ALLOWED = 4;
const INVOKE = 1000;
/** Milliseconds from which a wait is one for the page. */
const PAGE_WAIT = 10_000;

const source = fileURLToPath(
  new URL(
    "../node_modules/@microsoft/office-js/dist/custom-functions-runtime.debug.js",
    import.meta.url,
  ),
);

type Result = [id: number, ok: boolean, value: unknown, failure?: number];

/** Boots Microsoft's own custom-functions runtime, with us as the Excel that it talks to. */
export function startRuntime(): Runtime {
  const waiting = new Map<number, (result: Result) => void>();
  const bridge = createBridge((result) => {
    waiting.get(result[0])?.(result);
    waiting.delete(result[0]);
  });
  const world = createWorld(bridge);
  vm.runInContext(readFileSync(source, "utf8"), world, { filename: source });
  // The functions must not need a page, which the runtime does while it boots.
  delete world.document;

  let calls = 0;
  return {
    CustomFunctions: world.CustomFunctions,
    associated: () => Object.keys(world.CustomFunctions._association.mappings),
    run: (script, filename) => void vm.runInContext(script, world, { filename }),
    call: async (id, args) => {
      const call = ++calls;
      const result = new Promise<Result>((resolve) => waiting.set(call, resolve));
      bridge.send([call, id, toHost(args), "Sheet1!A1", ERRORS_ALLOWED]);
      return fromHost(await result);
    },
  };
}

function createBridge(onResult: (result: Result) => void) {
  const bridge = {
    /** Set by the runtime. */
    onMessageFromHost: null as unknown as (text: string) => void,
    sendMessageToHost(text: string): void {
      const { id, message } = JSON.parse(text);
      const actions = message?.body?.Actions ?? [];
      for (const { Name, ArgumentInfo } of actions) {
        if (Name === "SetInvocationArrayResults") ArgumentInfo.Arguments[0].forEach(onResult);
      }
      const Results = actions.map((action: { Id: number }) => ({
        ActionId: action.Id,
        Value: null,
      }));
      const headers = { "content-type": "application/json" };
      const reply = { statusCode: 200, headers, body: { Results } };
      queueMicrotask(() =>
        bridge.onMessageFromHost(JSON.stringify({ id, type: 2, flags: 0, message: reply })),
      );
    },
    send(invocation: unknown[]): void {
      const message = JSON.stringify(invocation);
      const entry = { messageCategory: 1, messageType: INVOKE, targetId: "", message };
      bridge.onMessageFromHost(JSON.stringify({ type: 3, message: { entries: [entry] } }));
    },
  };
  return bridge;
}

/** The least of a browser that the runtime boots in. */
function createWorld(bridge: ReturnType<typeof createBridge>): vm.Context {
  const href = "https://localhost/?_host_Info=Excel$Win32$16.01$en-US";
  const element = () => ({ style: {}, setAttribute() {}, appendChild() {} });
  const script = { src: "https://localhost/custom-functions-runtime.debug.js" };
  const silent = () => {};
  const world: Record<string, unknown> = {
    console: { log: silent, info: silent, warn: silent, error: silent },
    // It waits up to half a second between results, to spare Excel; a test need not. It gives up on
    // a page's scripts after ten seconds and more, and fails then: there is no page, and no need.
    setTimeout: (f: () => void, wait: number) => (wait < PAGE_WAIT ? setTimeout(f, 0) : 0),
    clearTimeout,
    navigator: { userAgent: "test", platform: "Win32", language: "en-US" },
    location: { href, search: new URL(href).search, protocol: "https:", hash: "" },
    history: {},
    addEventListener() {},
    Strings: { OfficeOM: {} },
    _richApiNativeBridge: bridge,
    document: {
      URL: href,
      readyState: "complete",
      getElementsByTagName: (tag: string) => (tag === "script" ? [script] : [element()]),
      createElement: element,
      addEventListener() {},
    },
  };
  world.window = world.self = world;
  return vm.createContext(world);
}

function toHost(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(toHost);
  if (typeof value !== "object" || value === null || !("error" in value)) return value;
  return { type: "CustomFunctionError", code: value.error };
}

function fromHost([, ok, value, failure]: Result): HostCell[][] | HostError {
  if (!ok) return { error: FAILURES[failure ?? 0] ?? "#VALUE!", message: String(value) };
  const rows: unknown[][] = Array.isArray(value) ? value : [[value]];
  return rows.map((row) => row.map(cellFromHost));
}

function cellFromHost(cell: unknown): HostCell {
  if (typeof cell !== "object" || cell === null) return cell as HostCell;
  const { code, message } = cell as { code: string; message?: string };
  return { error: code, message: message ?? "" };
}
