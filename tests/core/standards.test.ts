import { expect, it } from "vitest";
import { isStandard, standardContract, STANDARDS } from "../../src/core/standards.js";

it("knows a published standard by its name, however it is spelled, and no other", () => {
  expect(isStandard("Almond Board of California")).toBe(true);
  expect(isStandard(" almond board OF california")).toBe(true);
  for (const name of ["Almond", "Almond Board of California 2", "Cherry", ""]) {
    expect(isStandard(name)).toBe(false);
  }
});

it("lists the published standards where one is asked that is none", () => {
  const names = STANDARDS.map(({ name }) => `"${name}"`);
  expect(names.length).toBeGreaterThan(5);
  expect(() => standardContract("Plum")).toThrow(
    `no Terms are given, and "Plum" is no published standard: ${names.join(", ")}`,
  );
});
