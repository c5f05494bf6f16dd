/**
 * The statistics library's modules are CommonJS, all of one form: as ES modules webpack joins them into
 * one, which weighs 2 kB less gzipped. What every browser has takes the place of the library's own.
 *
 * @this {import("webpack").LoaderContext<object>}
 * @param {string} source
 */
export default function stdlibLoader(source) {
  const module = source
    .replace(REQUIRED, (_, name, path, part) => {
      if (path in NATIVE) return name === NATIVE[path] ? "" : `const ${name} = ${NATIVE[path]};`;
      return `import ${name} from "${part ? `${path}/lib/${part}.js` : path}";`;
    })
    .replace(/^module\.exports = (\w+);$/m, "export default $1;");
  const left = /^(?!\s*(?:\/\/|\*)).*\b(?:require\(|exports\b).*$/m.exec(module);
  if (left) throw new Error(`${this.resourcePath} is of another form: ${left[0].trim()}`);
  return module;
}

/** `var main = require( './main.js' );`, and `… ).assign;` for a part that is a file beside it. */
const REQUIRED = /^var (\w+) = require\( '([^']+)' \)(?:\.(\w+))?;/gm;

/**
 * The statistics library brings functions of its own that every browser has, arrays for browsers that
 * had none, a formatter for the messages of mistakes that the core does not make, and a way to lock
 * properties that nothing changes: 14 kB that change no digit which a cell shows.
 *
 * @type {Readonly<Record<string, string>>}
 */
const NATIVE = {
  ...Object.fromEntries(
    [
      ...["pow", "exp", "expm1", "log1p", "sin", "cos", "asin", "sqrt", "abs", "floor", "ceil"],
      ...["trunc", "max", "min"],
    ].map((name) => [`@stdlib/math-base-special-${name}`, `Math.${name}`]),
  ),
  ...Object.fromEntries(
    ["Uint8Array", "Uint16Array", "Uint32Array", "Float64Array"].map((name) => [
      `@stdlib/array-${name.slice(0, -5).toLowerCase()}`,
      name,
    ]),
  ),
  "@stdlib/number-ctor": "Number",
  "@stdlib/math-base-assert-is-nan": "Number.isNaN",
  "@stdlib/math-base-special-ln": "Math.log",
  "@stdlib/assert-is-little-endian": "(new Uint8Array(new Uint16Array([1]).buffer)[0] === 1)",
  "@stdlib/assert-has-generator-support": "(() => true)",
  "@stdlib/string-format": "String",
  "@stdlib/utils-define-nonenumerable-read-only-property":
    "((target, name, value) => void (target[name] = value))",
};
