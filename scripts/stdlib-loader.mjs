/**
 * The statistics library's modules are CommonJS, all of one form: as ES modules webpack joins them into
 * one, which weighs 2 kB less gzipped. What every browser has takes the place of the library's own.
 *
 * @this {import("webpack").LoaderContext<{ native: Record<string, string> }>}
 * @param {string} source
 */
export default function stdlibLoader(source) {
  const { native } = this.getOptions();
  const module = source
    .replace(REQUIRED, (_, name, path, part) => {
      if (path in native) return name === native[path] ? "" : `const ${name} = ${native[path]};`;
      return `import ${name} from "${part ? `${path}/lib/${part}.js` : path}";`;
    })
    .replace(/^module\.exports = (\w+);$/m, "export default $1;");
  const left = /^(?!\s*(?:\/\/|\*)).*\b(?:require\(|exports\b).*$/m.exec(module);
  if (left) throw new Error(`${this.resourcePath} is of another form: ${left[0].trim()}`);
  return module;
}

/** `var main = require( './main.js' );`, and `… ).assign;` for a part that is a file beside it. */
const REQUIRED = /^var (\w+) = require\( '([^']+)' \)(?:\.(\w+))?;/gm;
