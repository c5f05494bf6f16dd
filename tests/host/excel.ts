import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { readFunctionsJson } from "./functions-json.js";
import { startRuntime, type HostCell, type HostError } from "./microsoft-runtime.js";

export interface Excel {
  readonly associated: () => string[];
  /**
   * What `=COMB.ID(args)` shows: its cells, or its error. As in Excel, arguments left out arrive
   * as null, one cell given for a range as a range of one; an error cell is `{ error: "#N/A" }`.
   */
  readonly call: (id: string, args?: readonly unknown[]) => Promise<HostCell[][] | HostError>;
}

/** Excel with the built add-in in it. */
export function startExcel(): Excel {
  const runtime = startRuntime();
  const bundle = fileURLToPath(new URL("../../dist/addin/addin.js", import.meta.url));
  runtime.run(readFileSync(bundle, "utf8"), bundle);
  const declared = new Map(readFunctionsJson().functions.map((fn) => [fn.id, fn]));
  return {
    associated: runtime.associated,
    call: async (id, args = []) => {
      const parameters = declared.get(id)?.parameters;
      if (!parameters) throw new Error(`functions.json has no ${id}: Excel would show #NAME?`);
      if (args.length > parameters.length)
        throw new Error(`${id}: Excel refuses so many arguments`);
      return runtime.call(
        id,
        parameters.map(({ dimensionality }, i) => {
          const value = args[i] ?? null;
          const single = dimensionality === "matrix" && value !== null && !Array.isArray(value);
          return single ? [[value]] : value;
        }),
      );
    },
  };
}
