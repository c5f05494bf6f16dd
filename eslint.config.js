import js from "@eslint/js";
import { defineConfig, globalIgnores } from "eslint/config";
import tseslint from "typescript-eslint";

const OFFICE = ["Office", "OfficeRuntime", "Excel", "CustomFunctions"];
const WORLD = ["Date", "Intl", "document", "window", "fetch", "process", "console", "globalThis"];

const HOST = "Only the excel.ts of a folder, and its parts excel-*.ts, talk to Excel.";
const PURE = "The core is pure: the same numbers in, the same numbers out, on any machine.";

/** Which folder of src may not import what: imports point one way, towards the core. */
const DIRECTIONS = {
  core: ["functions", "workbook", "pane", "playground", "cli"],
  functions: ["workbook", "pane", "playground", "cli"],
  workbook: ["pane", "playground", "cli"],
  pane: ["workbook", "playground", "cli"],
  playground: ["cli"],
  cli: ["pane", "playground"],
};

export default defineConfig(
  globalIgnores(["dist/", "out/", "coverage/", ".stryker-tmp/"]),
  js.configs.recommended,
  tseslint.configs.recommended,
  {
    rules: {
      "@typescript-eslint/no-unused-vars": [
        "error",
        { argsIgnorePattern: "^_", varsIgnorePattern: "^_" },
      ],
    },
  },
  {
    files: ["**/*.{js,mjs}"],
    languageOptions: {
      globals: { URL: "readonly", Buffer: "readonly", console: "readonly", process: "readonly" },
    },
  },
  Object.entries(DIRECTIONS).map(([folder, others]) => ({
    files: [`src/${folder}/**/*.{ts,tsx}`],
    rules: { "no-restricted-imports": ["error", { patterns: forbidden(folder, others) }] },
  })),
  {
    files: ["src/**/*.{ts,tsx}"],
    rules: { "no-restricted-globals": ["error", ...ban(OFFICE, HOST)] },
  },
  {
    files: ["src/core/**/*.ts"],
    rules: {
      "no-restricted-globals": ["error", ...ban([...OFFICE, ...WORLD], PURE)],
      "no-restricted-properties": ["error", { object: "Math", property: "random", message: PURE }],
    },
  },
  {
    files: ["src/pane/open.ts"],
    rules: { "no-restricted-globals": ["error", ...ban(OFFICE.slice(1), HOST)] },
  },
  {
    files: ["src/functions/excel.ts", "src/pane/excel{,-*}.ts"],
    rules: { "no-restricted-globals": "off" },
  },
);

function forbidden(/** @type {string} */ folder, /** @type {string[]} */ others) {
  const inward = {
    group: others.flatMap((other) => [`**/${other}/**`]),
    message: `src/${folder} may not import what depends on it.`,
  };
  const node = { group: ["node:*"], message: `src/${folder} runs without Node.` };
  return folder === "cli" ? [inward] : [inward, node];
}

function ban(/** @type {string[]} */ names, /** @type {string} */ message) {
  return names.map((name) => ({ name, message }));
}
