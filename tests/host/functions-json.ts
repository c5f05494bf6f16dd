import { readFileSync } from "node:fs";

export interface DeclaredParameter {
  name: string;
  description?: string;
  dimensionality?: "matrix" | "scalar";
  optional?: boolean;
}

export interface DeclaredFunction {
  id: string;
  name: string;
  description?: string;
  helpUrl?: string;
  parameters: DeclaredParameter[];
  result: { dimensionality?: string };
}

/** What the build tells Excel about the functions. */
export function readFunctionsJson(): {
  allowErrorForDataTypeAny: boolean;
  functions: DeclaredFunction[];
} {
  return JSON.parse(
    readFileSync(new URL("../../dist/addin/functions.json", import.meta.url), "utf8"),
  );
}
