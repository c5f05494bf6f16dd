import { readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { gzipSync } from "node:zlib";
import CopyPlugin from "copy-webpack-plugin";
import webpack from "webpack";
import { FunctionsJsonPlugin } from "./scripts/functions-json-plugin.mjs";
import { helpPage } from "./scripts/help-page.mjs";
import { atOrigin, checkedOrigin } from "./scripts/origin.mjs";
import { reference } from "./scripts/reference.mjs";

const path = (/** @type {string} */ name) => fileURLToPath(new URL(name, import.meta.url));

/** @type {webpack.Configuration} */
const shared = {
  context: path("."),
  devtool: false,
  performance: false,
  stats: { all: false, errors: true, warnings: true, moduleTrace: true },
  // The sources import "./x.js", as Node does, and mean x.ts.
  resolve: { extensionAlias: { ".js": [".ts", ".tsx", ".js"] } },
  module: {
    rules: [
      {
        test: /\.tsx?$/,
        loader: "ts-loader",
        options: { transpileOnly: true, compilerOptions: { noEmit: false } },
      },
    ],
  },
};

const docs = new URL("docs/", import.meta.url);

/**
 * The statistics library brings functions of its own that every browser has, arrays for browsers that
 * had none, a formatter for the messages of mistakes that the core does not make, and a way to lock
 * properties that nothing changes: 14 kB that change no digit which a cell shows.
 */
const native = {
  ...Object.fromEntries(
    [
      ...["pow", "exp", "expm1", "log1p", "sin", "cos", "asin", "sqrt", "abs", "floor", "ceil"],
      ...["trunc", "max", "min"],
    ].map((name) => [`@stdlib/math-base-special-${name}`, `Math.${name}`]),
  ),
  ...Object.fromEntries(
    ["Uint8Array", "Uint16Array", "Uint32Array", "Float64Array"].map((name) => [
      `@stdlib/array-${name.slice(0, -5).toLowerCase()}`,
      name,
    ]),
  ),
  "@stdlib/number-ctor": "Number",
  "@stdlib/math-base-assert-is-nan": "Number.isNaN",
  "@stdlib/math-base-special-ln": "Math.log",
  "@stdlib/string-format": "String",
  "@stdlib/utils-define-nonenumerable-read-only-property":
    "((target, name, value) => void (target[name] = value))",
};

/** A distribution alone, without what makes distributions of set parameters. */
const plain = Object.fromEntries(
  ["normal-cdf", "normal-quantile", "t-cdf", "hypergeometric-cdf", "hypergeometric-pmf"].map(
    (name) => [`@stdlib/stats-base-dists-${name}$`, `@stdlib/stats-base-dists-${name}/lib/main.js`],
  ),
);

/** @returns {webpack.Configuration} */
function addin(/** @type {string} */ origin) {
  const transform = (/** @type {string | Buffer} */ text) => atOrigin(text.toString(), origin);
  return {
    ...shared,
    name: "addin",
    target: ["web", "es2022"],
    entry: "./src/pane/main.tsx",
    resolve: { ...shared.resolve, alias: plain },
    externalsType: "var",
    externals: native,
    output: { path: path("dist/addin"), filename: "addin.js", clean: true },
    plugins: [
      new FunctionsJsonPlugin({ folder: path("src/functions"), transform }),
      new CopyPlugin({
        patterns: [
          // Called minimized so that they are left as they are: webpack's minimizer rewrites colours.
          { from: "src/pane/pane.{html,css}", to: "[name][ext]", info: { minimized: true } },
          {
            from: "src/pane/help.html",
            info: { minimized: true },
            to: "[name][ext]",
            transform: (text) => helpPage(text.toString(), reference(path("src/functions")), docs),
          },
          { from: "docs/eye-guide.html", to: "[name][ext]", info: { minimized: true } },
          { from: "manifest/manifest.xml", transform },
          { from: "manifest/assets/*.png", to: "assets/[name][ext]" },
        ],
      }),
      reportSize,
    ],
  };
}

function reportSize(/** @type {webpack.Compiler} */ compiler) {
  compiler.hooks.done.tap("reportSize", (stats) => {
    if (stats.hasErrors()) return;
    const bundle = readFileSync(join(compiler.outputPath, "addin.js"));
    const [raw, gzip] = [bundle, gzipSync(bundle)].map(({ length }) => (length / 1000).toFixed(1));
    console.log(`built the add-in: addin.js ${raw} kB, ${gzip} kB gzipped`);
  });
}

/** @returns {webpack.Configuration} */
function cli() {
  return {
    ...shared,
    name: "cli",
    target: "node20",
    entry: "./src/cli/main.ts",
    output: {
      path: path("dist/cli"),
      filename: "comb-tally.js",
      module: true,
      chunkFormat: "module",
      clean: true,
    },
    optimization: { minimize: false },
    externalsType: "module",
    externals: [/^@cj-tech-master\/excelts/],
    plugins: [new webpack.BannerPlugin({ banner: "#!/usr/bin/env node", raw: true })],
  };
}

/** `npm run build -- --env origin=https://example.org/comb` builds for that address. */
export default (/** @type {{ origin?: string }} */ env) => [
  addin(checkedOrigin(env.origin)),
  cli(),
];
