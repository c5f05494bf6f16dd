import type { SheetFunction } from "./declare.js";
import { sources } from "./sources.js";

/** Every function of the add-in, in the order of the handbook. */
export const functions: readonly SheetFunction[] = [sources];
