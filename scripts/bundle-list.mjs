/**
 * `npm run bundle`: what the add-in's script is made of, group by group, and what it weighs. `npm run bundle -- core` lists the modules of that group.
 */
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { SourceMap } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import webpack from "webpack";
import configurations from "../webpack.config.js";

/** Built with source maps, which change no byte of the script itself. */
async function build(/** @type {string} */ folder) {
  const addin = configurations({}).find(({ name }) => name === "addin");
  const output = { ...addin?.output, path: folder };
  /** @type {webpack.Configuration} */
  const configuration = { ...addin, output, mode: "production", devtool: "hidden-source-map" };
  await new Promise((done, fail) => {
    webpack(configuration, (error, stats) => {
      if (error || stats?.hasErrors()) fail(error ?? new Error(stats?.toString("errors-only")));
      else done(undefined);
    });
  });
}

/**
 * The minified text that each module has in the script, by the module's path.
 * @param {string} script
 * @param {string} map
 */
function textsOf(script, map) {
  const sources = new SourceMap(JSON.parse(map));
  /** @type {Map<string, string>} */
  const texts = new Map();
  script.split("\n").forEach((line, row) => {
    for (let column = 0; column < line.length; column++) {
      const entry = sources.findEntry(row, column);
      // What webpack puts in by itself comes from no source.
      const source = ("originalSource" in entry && entry.originalSource) || "";
      const path = source.replace(/^webpack:\/\/[^/]*\/(\.\/)?/, "");
      texts.set(path, (texts.get(path) ?? "") + line[column]);
    }
  });
  return texts;
}

function groupOf(/** @type {string} */ path) {
  const [, library] = /node_modules\/(@stdlib|(?:@[^/]+\/)?[^/]+)\//.exec(path) ?? [];
  if (library !== undefined) return library;
  const [, view] = /^src\/pane\/(about|columns|contract|convert|start|what-if)\b/.exec(path) ?? [];
  if (view !== undefined) return `pane, ${view}`;
  return /^src\/(\w+)\//.exec(path)?.[1] ?? "webpack";
}

/** @param {Map<string, string>} texts */
function list(texts) {
  const rows = [...texts].map(([name, text]) => ({ name, ...sizes(text) }));
  for (const { name, minified, gzipped } of rows.sort((a, b) => b.minified - a.minified)) {
    console.log(`${kB(minified)} ${kB(gzipped)}  ${name}`);
  }
}

/** @param {string | Buffer} text */
function sizes(text) {
  return { minified: Buffer.byteLength(text), gzipped: gzipSync(text, { level: 9 }).length };
}

function kB(/** @type {number} */ bytes) {
  return (bytes / 1000).toFixed(1).padStart(8);
}

const folder = mkdtempSync(join(tmpdir(), "comb-tally-"));
try {
  await build(folder);
  const read = (/** @type {string} */ file) => readFileSync(join(folder, file), "utf8");
  const script = read("addin.js");
  const wanted = process.argv[2];
  /** @type {Map<string, string>} */
  const groups = new Map();
  for (const [path, text] of textsOf(script, read("addin.js.map"))) {
    if (wanted !== undefined && groupOf(path) !== wanted) continue;
    const group = wanted === undefined ? groupOf(path) : path;
    groups.set(group, (groups.get(group) ?? "") + text);
  }
  console.log(`minified  gzipped  kB, each group gzipped alone`);
  list(groups);
  const whole = sizes(script);
  console.log(`\n${kB(whole.minified)} ${kB(whole.gzipped)}  addin.js`);
} finally {
  rmSync(folder, { recursive: true });
}
