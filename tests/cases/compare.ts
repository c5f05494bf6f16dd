import { expect } from "vitest";
import type { Case } from "./cases.js";

/** An error as any host shows it, reduced to its code. */
function code(cell: unknown): unknown {
  if (typeof cell !== "object" || cell === null) return cell;
  const { error, code } = cell as { error?: unknown; code?: unknown };
  return { error: error ?? code };
}

/** Holds what a host gave against the case: numbers to 1e-9, texts exactly, errors by their code. */
export function expectCase({ gives }: Case, got: unknown): void {
  const rows = Array.isArray(got) ? (got as unknown[][]) : [[got]];
  expect(rows.map((row) => row.map(code))).toEqual(
    gives.map((row) =>
      row.map((cell) =>
        typeof cell === "number"
          ? expect.toSatisfy((n: unknown) => near(n, cell), `${cell}`)
          : cell,
      ),
    ),
  );
}

function near(got: unknown, expected: number): boolean {
  return (
    typeof got === "number" && Math.abs(got - expected) <= 1e-9 * Math.max(1, Math.abs(expected))
  );
}
