/** Texts that are something else to a spreadsheet, a page, a pattern, an object or an eye. */
export const COMMON = [
  "=1+1",
  '=HYPERLINK("http://x","y")',
  "@SUM(A1)",
  "<img src=x onerror=alert(1)>",
  "</script><script>alert(1)</script>",
  "&lt;b&gt;",
  "__proto__",
  "constructor",
  "toString",
  "(a+)+$",
  ".*",
  "${1}",
  "$&",
  // From right to left, and signs that take no room.
  "\u202Etxt.\u202C \u05D0\u05D1\u05D2",
  "a\u200Bb\u2060c\u00ADd",
  "two  spaces",
] as const;
const SHORT = [...COMMON, "+1+1", "-1", "'=1+1"] as const;

/** Excel allows 32,767 signs in a cell. */
const LONGEST = 32_767;

/** How a sheet keeps a text a text: by the mark before it, or by the cell's format. */
export type Kept = "mark" | "@";

export const TEXTS: readonly (readonly [title: string, kept: Kept, text: string])[] = [
  ...SHORT.map((text) => [text, "mark", text] as const),
  ...["=1+1", "+1+1", "-1", "@SUM(A1)", "'=1+1"].map((text) => [text, "@", text] as const),
  ["a formula as long as a cell", "mark", `=${"1+".repeat(LONGEST)}`.slice(0, LONGEST)],
  ["tags as long as a cell", "mark", "<b>x".repeat(LONGEST).slice(0, LONGEST)],
  ["a pattern as long as a cell", "mark", `${"a".repeat(LONGEST - 1)}!`],
];

/** The text as the name of a sheet, where Excel allows it: without some signs, and up to 31. */
export function asSheet(text: string): string {
  return /^[^\\/?*[\]:']{1,31}$/.test(text) ? text : "Yard";
}
