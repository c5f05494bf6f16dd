import { describe, expect, it } from "vitest";
import { functions } from "../../src/functions/index.js";
import { startExcel } from "./excel.js";
import { readFunctionsJson } from "./functions-json.js";

const { functions: declared, allowErrorForDataTypeAny } = readFunctionsJson();
const byId = new Map(declared.map((fn) => [fn.id, fn]));

describe("functions.json", () => {
  it("declares the functions of the source, no more and no fewer", () => {
    expect(declared.map((fn) => fn.id).sort()).toEqual(functions.map((fn) => fn.id).sort());
  });

  it("lets error cells through to the functions", () => {
    expect(allowErrorForDataTypeAny).toBe(true);
  });

  it.each(functions.map((fn) => [fn.id, fn] as const))(
    "%s: takes the parameters that the code reads, in the same order",
    (id, fn) => {
      const asDeclared = byId.get(id)?.parameters.map((parameter) => ({
        name: parameter.name,
        optional: parameter.optional ?? false,
        matrix: parameter.dimensionality === "matrix",
      }));
      expect(asDeclared).toEqual(
        fn.parameters.map(({ name, optional, matrix }) => ({ name, optional, matrix })),
      );
    },
  );

  it.each(declared.map((fn) => [fn.id, fn] as const))(
    "%s: is described, with every parameter, and has a place in the help",
    (id, fn) => {
      expect(fn.name).toBe(id);
      expect(fn.description).toMatch(/\S/);
      for (const parameter of fn.parameters) expect(parameter.description).toMatch(/\S/);
      expect(fn.helpUrl).toBe(`https://localhost:3000/help.html#${id}`);
      expect(fn.result.dimensionality).toBe("matrix");
    },
  );

  it.each(declared.map((fn) => [fn.id]))("%s: has an id that Excel takes", (id) => {
    expect(id).toMatch(/^[A-Z][A-Z0-9_]{2,}$/);
    // A1 and R1C1 addresses.
    expect(id).not.toMatch(/^([A-Z]{1,3}\d+|R\d*C\d*)$/);
  });
});

describe("the add-in in Microsoft's runtime", () => {
  const excel = startExcel();

  it("has associated every function", () => {
    expect(excel.associated().sort()).toEqual(declared.map((fn) => fn.id).sort());
  });

  it("gives the cells that the function gives when it is called directly", async () => {
    const fn = functions.find(({ id }) => id === "SOURCES");
    expect(await excel.call("SOURCES")).toEqual(fn?.evaluate());
  });

  it.each(functions.filter((fn) => fn.parameters[0]?.optional === false).map((fn) => [fn.id, fn]))(
    "%s: says what is missing when it is called with nothing",
    async (id, fn) => {
      const message = expect.stringMatching(`^${fn.parameters[0]?.name}: \\w`);
      expect(await excel.call(id)).toEqual({ error: "#VALUE!", message });
    },
  );
});
