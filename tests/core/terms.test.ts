import { describe, expect, it } from "vitest";
import { readContract } from "../../src/core/contract-reading.js";
import { TERMS } from "../../src/core/terms.js";

const contract = (...rows: [string, unknown][]) =>
  readContract([["Term", "Cherry"], ...rows], "Cherry");

describe("each term of the table", () => {
  const choices = TERMS.flatMap((term) =>
    term.value.kind === "choice" ? term.value.choices.map((choice) => [term, choice] as const) : [],
  );
  it.each(choices.map(([term, choice]) => [term.label, choice, term.field] as const))(
    "%s may be %s",
    (label, choice, field) => {
      expect(String(contract([label, choice])[field])).toBe(choice);
    },
  );

  it.each(TERMS.map((term) => [term.label, term] as const))(
    "%s has a meaning and a default",
    (_, term) => {
      expect(term.meaning).toMatch(/\.$/);
      const left = contract()[term.field];
      if (term.value.kind === "frame") expect(left).toHaveProperty("name", "deep");
      else expect(String(left)).toBe(String(term.missing));
    },
  );

  it("stands once", () => {
    expect(new Set(TERMS.map((term) => term.label)).size).toBe(TERMS.length);
    expect(new Set(TERMS.map((term) => term.field)).size).toBe(TERMS.length);
  });
});
