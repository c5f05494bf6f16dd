import { describe, it } from "vitest";
import { cases } from "../cases/all.js";
import { expectCase } from "../cases/compare.js";
import { startExcel } from "./excel.js";

describe("the cases, in Microsoft's runtime with the built add-in", () => {
  const excel = startExcel();
  it.each(cases.map((c) => [`${c.id}(${JSON.stringify(c.args).slice(0, 60)})`, c] as const))(
    "%s",
    async (_, c) => expectCase(c, await excel.call(c.id, c.args)),
  );
});
