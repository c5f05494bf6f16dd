import type { ListedFunction } from "../pane/context.js";

/** A function as functions.json describes it, its parameters with it. */
export interface DescribedFunction extends ListedFunction {
  readonly parameters: readonly {
    readonly name: string;
    readonly description: string;
    readonly optional?: boolean;
    readonly dimensionality?: "scalar" | "matrix";
  }[];
}

declare const DESCRIBED_FUNCTIONS: readonly DescribedFunction[];

/** What functions.json holds, put in as the page is built: a page on a disk may not fetch it. */
export const describedFunctions: readonly DescribedFunction[] = DESCRIBED_FUNCTIONS;
