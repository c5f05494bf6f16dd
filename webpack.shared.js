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
 * The statistics library brings functions of its own that every browser has, a formatter for the
 * messages of mistakes that the core does not make, and a way to lock properties that nothing changes:
 * 11 kB that change no digit which a cell shows.
 */
export const native = {
  ...Object.fromEntries(
    ["pow", "exp", "expm1", "log1p", "sin", "cos", "asin", "sqrt", "abs", "floor", "ceil"].map(
      (name) => [`@stdlib/math-base-special-${name}`, `Math.${name}`],
    ),
  ),
  "@stdlib/math-base-special-ln": "Math.log",
  "@stdlib/math-base-special-max": "Math.max",
  "@stdlib/math-base-special-min": "Math.min",
  "@stdlib/math-base-special-trunc": "Math.trunc",
  "@stdlib/math-base-assert-is-nan": "Number.isNaN",
  "@stdlib/array-float64": "Float64Array",
  "@stdlib/array-uint32": "Uint32Array",
  "@stdlib/assert-is-little-endian": "(new Uint8Array(new Uint16Array([1]).buffer)[0] === 1)",
  "@stdlib/assert-has-generator-support": "(() => true)",
  "@stdlib/string-format": "String",
  "@stdlib/utils-define-nonenumerable-read-only-property":
    "((target, name, value) => void (target[name] = value))",
};
