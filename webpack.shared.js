import { fileURLToPath } from "node:url";
import webpack from "webpack";

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

/** The statistics library as a page's bundle takes it in. */
export const stdlib = {
  rule: {
    test: /@stdlib.*\.js$/,
    type: "javascript/esm",
    // Its packages are named without their files.
    resolve: { fullySpecified: false },
    use: fileURLToPath(new URL("scripts/stdlib-loader.mjs", import.meta.url)),
  },
  /** Each distribution without the ways to make others like it. */
  plugin: new webpack.NormalModuleReplacementPlugin(
    /^@stdlib\/stats-base-dists-[a-z-]+$/,
    (/** @type {{ request: string }} */ asked) => void (asked.request += "/lib/main.js"),
  ),
};
