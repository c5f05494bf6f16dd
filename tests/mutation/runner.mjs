/**
 * Runs the tests in this process, over and over, as Stryker asks: what they import is loaded once,
 * and a change is switched on in it. With a worker for each change most of the time went into loading.
 */
import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { performance } from "node:perf_hooks";
import { pathToFileURL } from "node:url";

import { collectTests, getFn } from "@vitest/runner";
import fc from "fast-check";

/** What judges src/core: its own tests, and those of the functions over it. No files, no pages. */
const JUDGES = [
  /^tests\/(core|published)\/.*\.test\.ts$/,
  /^tests\/functions\/(cases|lot|sampling|placing|statement|adapter[^/]*)\.test\.ts$/,
];
/** How many sets every drawn test draws, where that is asked. */
const MOST_DRAWN = process.env.DRAWN;
/** Of each drawn test this many, where it does not ask for its own number, and none is made smaller. */
const DRAWN = { seed: 20261125, numRuns: Number(MOST_DRAWN ?? 25), endOnFailure: true };

const ON_LOADING = process.env.STATIC !== undefined;

const TIMES = "mutation-times.json";

/** @type {any} */
const world = globalThis;
/** What the changed files look at. */
const state = (world.__stryker__ ??= {});

class InOneProcess {
  /** @type {Map<string, { name: string, run: () => unknown }>} */
  tests = new Map();

  /** Only what is worked out on loading asks for new files, and so for a new process. */
  capabilities() {
    return { reloadEnvironment: !ON_LOADING };
  }

  /** Loading is not timed, unless it is itself what a change is looked for in. */
  async init() {
    if (!ON_LOADING) await this.load();
  }

  async load() {
    if (this.tests.size > 0) return;
    const sources = ["src/core", "src/functions", "tests"].flatMap(files);
    for (const path of sources) await translate(path);
    fc.configureGlobal(DRAWN);
    /** @type {typeof this.tests} */
    const tests = new Map();
    const { BY = "" } = process.env;
    const judges = sources.filter((path) => path.includes(BY) && JUDGES.some((j) => j.test(path)));
    for (const path of judges) {
      const [file] = await collectTests([resolve(path)], /** @type {any} */ (COLLECTOR));
      if (file?.result) throw new Error(`${path}: ${file.result.errors?.[0]?.stack}`);
      for (const test of leaves(file)) {
        const id = `${path} ${tests.size}`;
        tests.set(id, { name: test.fullTestName ?? test.name, run: getFn(test) });
      }
    }
    this.tests = tests;
  }

  async dryRun() {
    await this.load();
    /** @type {Record<string, number>} */
    const times = {};
    const tests = [];
    for (const [id, { name, run }] of this.tests) {
      state.currentTestId = id;
      const began = performance.now();
      const failureMessage = await failure(run);
      times[id] = performance.now() - began;
      const result = { id, name, timeSpentMs: times[id] };
      tests.push(
        failureMessage === undefined
          ? { ...result, status: 0 }
          : { ...result, status: 1, failureMessage },
      );
    }
    state.currentTestId = undefined;
    writeFileSync(TIMES, JSON.stringify(times));
    return { status: "complete", tests, mutantCoverage: state.mutantCoverage };
  }

  async mutantRun(/** @type {any} */ { activeMutant, testFilter, hitLimit, mutantActivation }) {
    if (ON_LOADING && mutantActivation !== "static")
      return { status: "error", errorMessage: "not asked" };
    const name = activeMutant.id;
    state.hitCount = 0;
    state.hitLimit = hitLimit;
    if (mutantActivation === "static") state.activeMutant = name;
    try {
      await this.load();
      state.activeMutant = name;
      const times = JSON.parse(readFileSync(TIMES, "utf8"));
      const ids = [...(testFilter ?? this.tests.keys())].sort((a, b) => times[a] - times[b]);
      let nrOfTests = 0;
      for (const id of ids) {
        nrOfTests++;
        const failureMessage = await failure(/** @type {any} */ (this.tests.get(id)).run);
        if (hitLimit !== undefined && state.hitCount > hitLimit)
          return { status: "timeout", reason: "went on and on" };
        if (failureMessage !== undefined)
          return { status: "killed", killedBy: [id], failureMessage, nrOfTests };
      }
      return { status: "survived", nrOfTests };
    } catch (error) {
      // A change that keeps the files from loading is one that every test sees.
      const failureMessage = String(error);
      return { status: "killed", killedBy: ["loading"], failureMessage, nrOfTests: 0 };
    } finally {
      state.activeMutant = undefined;
    }
  }
}

/** As JavaScript beside the file, where the imports of the others look for it. */
async function translate(/** @type {string} */ path) {
  const beside = path.replace(/\.ts$/, ".js");
  if (existsSync(beside)) return;
  // Half of the time that a new process takes to begin.
  const { default: ts } = await import("typescript");
  const { outputText } = ts.transpileModule(readFileSync(path, "utf8"), {
    compilerOptions: { target: ts.ScriptTarget.ES2022, module: ts.ModuleKind.ESNext },
  });
  const shim = new URL("vitest.mjs", import.meta.url).href;
  const drawn = outputText.replace(/numRuns: \d+/g, (own) =>
    MOST_DRAWN === undefined ? own : `numRuns: ${MOST_DRAWN}`,
  );
  writeFileSync(beside, drawn.replace(/from "vitest"/g, `from "${shim}"`));
}

const COLLECTOR = {
  config: {
    root: ".",
    setupFiles: [],
    sequence: { hooks: "stack" },
    // Watched, a search takes many times as long as it does.
    testTimeout: 600_000,
    tags: [],
  },
  trace: (/** @type {string} */ _, /** @type {any} */ ...rest) => rest.at(-1)(),
  importFile: (/** @type {string} */ path) =>
    import(pathToFileURL(path.replace(/\.ts$/, ".js")).href),
};

function files(/** @type {string} */ folder) {
  return readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((name) => /^[^.].*\.ts$/.test(name) && !/(^|\/)node_modules\//.test(name))
    .map((name) => join(folder, name));
}

/** @returns {any[]} the tests of a file or a group that are to run */
function leaves(/** @type {any} */ task) {
  if (task.type === "test") return task.mode === "skip" ? [] : [task];
  return task.tasks.flatMap(leaves);
}

async function failure(/** @type {() => unknown} */ run) {
  try {
    await run();
    return undefined;
  } catch (error) {
    return String(error);
  }
}

export const strykerPlugins = [
  { kind: "TestRunner", name: "one-process", injectableClass: InOneProcess },
];
