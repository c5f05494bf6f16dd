import { fileURLToPath } from "node:url";
import CopyPlugin from "copy-webpack-plugin";
import webpack from "webpack";
import { functionsJson } from "../../scripts/functions-json.mjs";
import { helpPage } from "../../scripts/help-page.mjs";
import { atOrigin } from "../../scripts/origin.mjs";
import { reference } from "../../scripts/reference.mjs";
import { shared, stdlib } from "../../webpack.shared.js";

const path = (/** @type {string} */ name) => fileURLToPath(new URL(name, import.meta.url));

/**
 * The page as one folder that works from a disk or any static host. `--env development` leaves it
 * large, and is ready several times sooner.
 *
 * @returns {Promise<webpack.Configuration>}
 */
export default async (/** @type {{ development?: boolean }} */ env) => {
  const { json } = await functionsJson(path("../functions"));
  const { functions } = JSON.parse(atOrigin(json, "."));
  return {
    ...shared,
    name: "playground",
    target: ["web", "es2022"],
    entry: "./src/playground/main.ts",
    output: {
      path: path("../../dist/playground"),
      filename: "playground.js",
      chunkFilename: "parts/[name].js",
      publicPath: "auto",
      clean: true,
    },
    optimization: {
      chunkIds: "named",
      ...(env.development && { minimize: false, concatenateModules: false, usedExports: false }),
    },
    module: {
      rules: [
        ...shared.module.rules,
        stdlib.rule,
        // Inside the code, since a page on a disk may not fetch the file beside it.
        {
          test: /\.xlsx$/,
          loader: path("workbook-loader.mjs"),
          options: { name: "the demo" },
        },
      ],
    },
    plugins: [
      stdlib.plugin,
      // Patterns to hyphenate seventy languages; the page speaks English.
      new webpack.IgnorePlugin({
        resourceRegExp: /^\.\/(?!en-)[\w-]+\.js$/,
        contextRegExp: /engine-render[\\/]lib[\\/]es$/,
      }),
      new webpack.DefinePlugin({ DESCRIBED_FUNCTIONS: JSON.stringify(functions) }),
      new CopyPlugin({
        patterns: [
          { from: "src/playground/playground.html", to: "index.html", info: { minimized: true } },
          { from: "src/playground/playground.css", info: { minimized: true }, to: "[name][ext]" },
          {
            from: path("node_modules/@univerjs/preset-sheets-core/lib/index.css"),
            to: "grid.css",
            info: { minimized: true },
          },
          {
            from: "src/pane/pane.css",
            info: { minimized: true },
            to: "[name][ext]",
            transform: (text) => beside(text.toString()),
          },
          {
            from: "src/pane/help.html",
            info: { minimized: true },
            to: "[name][ext]",
            transform: (text) =>
              helpPage(
                text.toString(),
                reference(path("../functions")),
                new URL("../../docs/", import.meta.url),
              ),
          },
          { from: "docs/eye-guide.html", to: "[name][ext]", info: { minimized: true } },
          { from: "manifest/assets/*.png", to: "assets/[name][ext]" },
        ],
      }),
    ],
  };
};

/** The pane's looks without any of them reaching into the grid, which has looks of its own. */
function beside(/** @type {string} */ css) {
  const ofThePage = css.match(/^(?::root|body) \{[^}]*\}/gm) ?? [];
  return `${ofThePage.join("\n")}\n@scope (.pane, .page-bar, dialog) {\n${css}\n}\n`;
}
