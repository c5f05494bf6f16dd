/** What stands before every function's name in a sheet: `=COMB.GRADE(...)`. */
export const NAMESPACE = "COMB";
