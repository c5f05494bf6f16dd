import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { generateCustomFunctionsMetadata } from "custom-functions-metadata";
import webpack from "webpack";

const SCHEMA = "https://developer.microsoft.com/json-schemas/office-js/custom-functions.schema.json";

/** Emits functions.json, which tells Excel what each function takes, from the functions' JSDoc. */
export class FunctionsJsonPlugin {
  /** @param {{ folder: string, transform: (json: string) => string }} options */
  constructor(options) {
    this.options = options;
  }

  /** @param {webpack.Compiler} compiler */
  apply(compiler) {
    const { folder, transform } = this.options;
    const name = "FunctionsJsonPlugin";
    const stage = webpack.Compilation.PROCESS_ASSETS_STAGE_ADDITIONAL;
    compiler.hooks.thisCompilation.tap(name, (compilation) => {
      compilation.contextDependencies.add(folder);
      compilation.hooks.processAssets.tapPromise({ name, stage }, async () => {
        const { functions, errors } = await readFunctions(folder);
        for (const error of errors) compilation.errors.push(new webpack.WebpackError(error));
        // Without this flag a range that holds one #N/A never reaches a function.
        const json = { $schema: SCHEMA, allowErrorForDataTypeAny: true, functions };
        const text = transform(JSON.stringify(json, null, 2) + "\n");
        compilation.emitAsset("functions.json", new webpack.sources.RawSource(text));
      });
    });
  }
}

/** @param {string} folder */
async function readFunctions(folder) {
  const tag = /^\s*\*\s*@customfunction\b/gm;
  const sources = readdirSync(folder)
    .filter((file) => file.endsWith(".ts"))
    .map((file) => ({ path: join(folder, file), text: readFileSync(join(folder, file), "utf8") }))
    .filter(({ text }) => text.match(tag));
  const { metadataJson, errors } = await generateCustomFunctionsMetadata(
    sources.map(({ path }) => path),
  );
  const { functions } = JSON.parse(metadataJson || '{"functions":[]}');
  const tagged = sources.reduce((sum, { text }) => sum + (text.match(tag)?.length ?? 0), 0);
  if (errors.length === 0 && functions.length !== tagged) {
    // The generator skips an arrow function in silence.
    errors.push(
      `${folder}: ${tagged} @customfunction tags, but ${functions.length} functions were read; ` +
        `each must stand before an "export function"`,
    );
  }
  functions.sort((/** @type {{ id: string }} */ a, /** @type {{ id: string }} */ b) =>
    a.id < b.id ? -1 : 1,
  );
  return { functions, errors };
}
