import { fileURLToPath } from "node:url";

/** What the bundles have in common. */
export const shared = {
  context: fileURLToPath(new URL(".", import.meta.url)),
  devtool: /** @type {const} */ (false),
  performance: /** @type {const} */ (false),
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

/**
 * The statistics library brings functions of its own that every browser has, arrays for browsers that
 * had none, a formatter for the messages of mistakes that the core does not make, and a way to lock
 * properties that nothing changes: 14 kB that change no digit which a cell shows.
 */
export const native = {
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
  "@stdlib/assert-is-little-endian": "(new Uint8Array(new Uint16Array([1]).buffer)[0] === 1)",
  "@stdlib/assert-has-generator-support": "(() => true)",
  "@stdlib/string-format": "String",
  "@stdlib/utils-define-nonenumerable-read-only-property":
    "((target, name, value) => void (target[name] = value))",
};

/** A distribution alone, without what makes distributions of set parameters. */
export const plain = Object.fromEntries(
  ["normal-cdf", "t-cdf", "hypergeometric-cdf", "hypergeometric-pmf"].map((name) => [
    `@stdlib/stats-base-dists-${name}$`,
    `@stdlib/stats-base-dists-${name}/lib/main.js`,
  ]),
);
