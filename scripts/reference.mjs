import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import ts from "typescript";

/**
 * @typedef {{ name: string, text: string, optional: boolean }} Parameter
 * @typedef {{ id: string, summary: string, remarks: string, example: string, returns: string, parameters: Parameter[] }} Entry
 */

/**
 * What the JSDoc says of every function of the add-in, by id.
 * @param {string} folder
 * @returns {Entry[]}
 */
export function reference(folder) {
  const files = readdirSync(folder).filter((file) => file.endsWith(".ts"));
  return files
    .flatMap((file) => entriesOf(join(folder, file)))
    .sort((a, b) => (a.id < b.id ? -1 : 1));
}

/**
 * @param {string} file
 * @returns {Entry[]}
 */
function entriesOf(file) {
  const source = ts.createSourceFile(
    file,
    readFileSync(file, "utf8"),
    ts.ScriptTarget.Latest,
    true,
  );
  return source.statements.filter(ts.isFunctionDeclaration).flatMap((fn) => {
    const tags = ts.getJSDocTags(fn);
    const text = (/** @type {string} */ name) => {
      const tag = tags.find((t) => t.tagName.text === name);
      return oneLine(ts.getTextOfJSDocComment(tag?.comment) ?? "");
    };
    if (!tags.some((tag) => tag.tagName.text === "customfunction")) return [];
    const parameters = tags.filter(ts.isJSDocParameterTag).map((tag, i) => ({
      name: tag.name.getText(),
      text: oneLine(ts.getTextOfJSDocComment(tag.comment) ?? ""),
      optional: fn.parameters[i]?.questionToken !== undefined,
    }));
    const doc = ts.getJSDocCommentsAndTags(fn).find(ts.isJSDoc);
    return {
      id: text("customfunction"),
      summary: oneLine(ts.getTextOfJSDocComment(doc?.comment) ?? ""),
      remarks: text("remarks"),
      example: text("example"),
      returns: text("returns"),
      parameters,
    };
  });
}

/** @param {string} text */
function oneLine(text) {
  return text.replace(/\s+/g, " ").trim();
}

/**
 * How the function is typed: optional arguments in brackets.
 * @param {Entry} entry
 */
export function signature({ id, parameters }) {
  const names = parameters.map((p) => (p.optional ? `[${p.name}]` : p.name));
  return `COMB.${id}(${names.join(", ")})`;
}
