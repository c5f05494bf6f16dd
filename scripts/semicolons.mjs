const START = /=COMB\.\w+\(/g;

/**
 * A text whose formulas are typed where `;` stands between arguments and the comma is the decimal
 * sign; null where that is the same.
 * @param {string} text
 * @example withSemicolons("=COMB.BEES(7.5,,\"low\") gives 16800") // =COMB.BEES(7,5;;"low") gives 16800
 */
export function withSemicolons(text) {
  let out = "";
  let at = 0;
  for (const { index } of text.matchAll(START)) {
    const end = endOf(text, index);
    out += text.slice(at, index) + typed(text.slice(index, end));
    at = end;
  }
  out += text.slice(at);
  return out === text ? null : out;
}

/**
 * The text, and the same with semicolons where that differs.
 * @param {string} text
 */
export function bothForms(text) {
  const other = withSemicolons(text);
  return other === null ? [text] : [text, other];
}

/** Behind the bracket that closes the formula. */
function endOf(/** @type {string} */ text, /** @type {number} */ from) {
  let depth = 0;
  let inQuotes = false;
  for (let i = from; i < text.length; i++) {
    if (text[i] === '"') inQuotes = !inQuotes;
    if (inQuotes) continue;
    if (text[i] === "(") depth++;
    if (text[i] === ")" && --depth === 0) return i + 1;
  }
  return text.length;
}

/** Texts in quotes stay as they are. */
function typed(/** @type {string} */ formula) {
  return formula
    .split(/("[^"]*")/)
    .map((part, i) =>
      i % 2 === 1 ? part : part.replaceAll(",", ";").replace(/(\d)\.(\d)/g, "$1,$2"),
    )
    .join("");
}
