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
import { shared, stdlib } from "./webpack.shared.js";

const path = (/** @type {string} */ name) => fileURLToPath(new URL(name, import.meta.url));

const docs = new URL("docs/", import.meta.url);

/** @returns {webpack.Configuration} */
function addin(/** @type {string} */ origin) {
  const transform = (/** @type {string | Buffer} */ text) => atOrigin(text.toString(), origin);
  return {
    ...shared,
    name: "addin",
    target: ["web", "es2022"],
    entry: "./src/pane/main.ts",
    module: { rules: [...shared.module.rules, stdlib.rule] },
    output: {
      path: path("dist/addin"),
      filename: "addin.js",
      globalObject: "globalThis",
      clean: true,
    },
    optimization: {
      mangleExports: "size",
      moduleIds: "size",
      minimizeOptions: { javascript: { ecma: 2022, toplevel: true, compress: { passes: 3 } } },
    },
    plugins: [
      stdlib.plugin,
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
    const script = readFileSync(join(compiler.outputPath, "addin.js"));
    const kB = (/** @type {Buffer} */ { length }) => `${(length / 1000).toFixed(1)} kB`;
    console.log(
      `built the add-in: addin.js, ${kB(script)}, ${kB(gzipSync(script, { level: 9 }))} gzipped`,
    );
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
