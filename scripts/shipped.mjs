/**
 * What workbooks in the world rely on: once released, an id stays and its parameters stay in place.
 * @typedef {{ name: string, optional: boolean, matrix: boolean }} Parameter
 * @typedef {{ id: string, parameters: Parameter[] }} Signature
 */

/**
 * The signatures in the text of a functions.json.
 * @param {string} json
 * @returns {Signature[]}
 */
export function signatures(json) {
  /** @type {{ functions: { id: string, parameters: { name: string, optional?: boolean, dimensionality?: string }[] }[] }} */
  const { functions } = JSON.parse(json);
  return functions.map(({ id, parameters }) => ({
    id,
    parameters: parameters.map(({ name, optional, dimensionality }) => ({
      name,
      optional: optional ?? false,
      matrix: dimensionality === "matrix",
    })),
  }));
}

/**
 * What the declared functions would break in a workbook written for the recorded ones, in sentences.
 * @param {readonly Signature[]} recorded
 * @param {readonly Signature[]} declared
 * @returns {string[]}
 */
export function breaks(recorded, declared) {
  return recorded.flatMap(({ id, parameters: before }) => {
    const after = declared.find((fn) => fn.id === id)?.parameters;
    if (!after) return [`${id} is gone`];
    return [
      ...before.flatMap((parameter, i) => {
        const now = after[i];
        if (!now) return [`${id}: the parameter ${parameter.name} is gone`];
        return same(parameter, now)
          ? []
          : [`${id}: parameter ${i + 1} was ${show(parameter)}, is ${show(now)}`];
      }),
      ...after
        .slice(before.length)
        .filter((added) => !added.optional)
        .map((added) => `${id}: the parameter ${added.name} was added, but is not optional`),
    ];
  });
}

/**
 * @param {Parameter} a
 * @param {Parameter} b
 */
function same(a, b) {
  return show(a) === show(b);
}

/** @param {Parameter} parameter */
function show({ name, optional, matrix }) {
  return `${name} (${matrix ? "range" : "one cell"}${optional ? ", optional" : ""})`;
}
