/** A piece of a hand-written figure; `text` is the piece as normalised, for messages. */
export type Token =
  | { readonly kind: "number"; readonly text: string; readonly mark: "" | "." | "," }
  | { readonly kind: "fraction"; readonly text: string; readonly value: number }
  | { readonly kind: "word"; readonly text: string }
  | { readonly kind: "sign"; readonly text: string };

const VULGAR_FRACTION = /[\u00BC-\u00BE\u2150-\u215E\u2189]/gu;
const DASH = /[\p{Pd}\u2212]/gu;
const FOREIGN_DIGIT = /[^\P{Nd}0-9]/gu;
/** What needs no respelling, as nearly all that people write. */
const PLAIN = /^[!-~]+(?: [!-~]+)*$/;
const TOKEN = /\s*(?:(\d+(?:[.,]\d+)?|[.,]\d+)|<(\d+)\/(\d+)>|(\p{L}+\.?)|([^\s\p{L}\d]))/uy;

/** The value of a digit of any script: digits stand in runs of ten, from nought to nine. */
function digitValue(digit: string): string {
  let code = digit.codePointAt(0)! - 1;
  let before = 0;
  while (/\p{Nd}/u.test(String.fromCodePoint(code))) {
    code--;
    before++;
  }
  return String(before % 10);
}

/**
 * One spelling for what means the same: lower case, plain digits, dashes and spaces. A fraction
 * sign (`½`) becomes `<1/2>`, so that `7½` is not taken for `71/2`.
 */
export function normalise(text: string): string {
  if (PLAIN.test(text)) return text.toLowerCase();
  return text
    .replace(VULGAR_FRACTION, (sign) => ` <${sign.normalize("NFKC").replace("\u2044", "/")}> `)
    .normalize("NFKC")
    .replaceAll("\u2044", "/")
    .replace(FOREIGN_DIGIT, digitValue)
    .replace(DASH, "-")
    .replaceAll("\uFE0F", "")
    .replace(/\s+/gu, " ")
    .trim()
    .toLowerCase();
}

/** Splits a normalised text into numbers, fraction signs, words and single signs; linear. */
export function tokens(text: string): Token[] {
  const found: Token[] = [];
  TOKEN.lastIndex = 0;
  for (let at = 0; at < text.length; at = TOKEN.lastIndex) {
    const match = TOKEN.exec(text);
    if (match === null) break;
    const [whole, number, top, bottom, word] = match;
    const piece = whole.trim();
    if (number !== undefined) {
      const mark = number.includes(".") ? "." : number.includes(",") ? "," : "";
      found.push({ kind: "number", text: number, mark });
    } else if (top !== undefined) {
      found.push({
        kind: "fraction",
        text: `${top}/${bottom}`,
        value: Number(top) / Number(bottom),
      });
    } else if (word !== undefined) {
      found.push({ kind: "word", text: word });
    } else {
      found.push({ kind: "sign", text: piece });
    }
    TOKEN.lastIndex = match.index + whole.length;
  }
  return found;
}
