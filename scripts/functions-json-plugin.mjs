import webpack from "webpack";
import { functionsJson } from "./functions-json.mjs";

/** Emits functions.json beside the bundle. */
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
        const { json, errors } = await functionsJson(folder);
        for (const error of errors) compilation.errors.push(new webpack.WebpackError(error));
        compilation.emitAsset("functions.json", new webpack.sources.RawSource(transform(json)));
      });
    });
  }
}
