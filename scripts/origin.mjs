/** Where the add-in is served during development: every address in the sources starts with it. */
export const DEVELOPMENT_ORIGIN = "https://localhost:3000";

/**
 * The address given with `--env origin=…`, refused where the manifest could not carry it.
 * @param {string} [text]
 */
export function checkedOrigin(text = DEVELOPMENT_ORIGIN) {
  const url = URL.canParse(text) ? new URL(text) : null;
  const plain = url?.href === text || url?.href === `${text}/`;
  const bare = url?.search === "" && url.hash === "" && url.username === "";
  if (url?.protocol !== "https:" || !plain || !bare || /\/$|[&'"<>]/.test(text)) {
    throw new Error(
      `--env origin: "${text}" cannot be used; ` +
        `expected an https address without a slash at its end, such as https://example.org/comb`,
    );
  }
  return text;
}

/**
 * The same text with every address moved from the development origin to another.
 * @param {string} text
 * @param {string} origin
 */
export function atOrigin(text, origin) {
  return text.replaceAll(DEVELOPMENT_ORIGIN, origin);
}
