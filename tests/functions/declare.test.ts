import { expect, it } from "vitest";
import { CellError } from "../../src/functions/cells.js";
import { call, callSafely, type SheetFunction } from "../../src/functions/declare.js";

const parameter = (name: string, optional: boolean) => ({ name, optional, matrix: false });

/** A function that asks for its first and third, and may be given its second. */
const fn: SheetFunction = {
  id: "SUM_OF",
  parameters: [parameter("one", false), parameter("two", true), parameter("three", false)],
  evaluate: (...values: never[]) => [[values.join("+")]],
};

it.each([
  [[1, null, 3], "1++3"],
  [[1, 2, 3], "1+2+3"],
  [[1, 2], "three: left out, and SUM_OF needs it"],
  [[1, 2, null], "three: left out, and SUM_OF needs it"],
  [[1, null, undefined], "three: left out, and SUM_OF needs it"],
  [[undefined, 2, 3], "one: left out, and SUM_OF needs it"],
])("a required argument is missed where it stands: %j", (values, expected) => {
  const [[cell]] = call(fn, values, 100) as [[unknown]];
  expect(cell instanceof CellError ? cell.message : cell).toBe(expected);
});

it("a fault of ours is told in the cell of the call, whatever was thrown", () => {
  const faulty = (fault: unknown): SheetFunction => ({
    id: "FAULTY",
    parameters: [],
    evaluate: () => {
      throw fault;
    },
  });
  const of = (fault: unknown) => callSafely(faulty(fault), [], 100);
  expect(of(new TypeError("x is undefined"))).toEqual([
    [new CellError("#VALUE!", "a fault in Comb Tally: x is undefined")],
  ]);
  expect(of("no memory")).toEqual([[new CellError("#VALUE!", "a fault in Comb Tally: no memory")]]);
  expect(callSafely(fn, [1, 2, 3], 100)).toEqual([["1+2+3"]]);
});
