import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { generateCustomFunctionsMetadata } from "custom-functions-metadata";

const SCHEMA =
  "https://developer.microsoft.com/json-schemas/office-js/custom-functions.schema.json";
const TAG = /^\s*\*\s*@customfunction\b/gm;

/**
 * What Excel needs to know of the functions in a folder, from their JSDoc.
 * @param {string} folder
 */
export async function functionsJson(folder) {
  const files = readdirSync(folder).filter((file) => file.endsWith(".ts"));
  const read = await Promise.all(files.map((file) => readFunctions(join(folder, file))));
  const functions = read.flatMap((file) => file.functions).sort((a, b) => (a.id < b.id ? -1 : 1));
  // Without this flag a range that holds one #N/A never reaches a function.
  const json = { $schema: SCHEMA, allowErrorForDataTypeAny: true, functions };
  return {
    json: JSON.stringify(json, null, 2) + "\n",
    errors: read.flatMap((file) => file.errors),
  };
}

/** @param {string} file */
async function readFunctions(file) {
  const { metadataJson, errors } = await generateCustomFunctionsMetadata(file);
  /** @type {{ functions: { id: string }[] }} */
  const { functions } = JSON.parse(metadataJson || '{"functions":[]}');
  const tags = readFileSync(file, "utf8").match(TAG)?.length ?? 0;
  if (errors.length === 0 && functions.length !== tags) {
    // The generator skips an arrow function in silence.
    errors.push(
      `${tags} @customfunction tags, but ${functions.length} functions were read; ` +
        `each tag must stand before an "export function"`,
    );
  }
  return { functions, errors: errors.map((error) => `${file}: ${error}`) };
}
