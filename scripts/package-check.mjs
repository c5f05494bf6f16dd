import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { DEVELOPMENT_ORIGIN } from "./origin.mjs";
import { breaks, signatures } from "./shipped.mjs";

/** Files whose text may name an address of ours. */
const TEXT = /\.(?:xml|json|html|css|js|txt)$/;

/**
 * What keeps a built folder from being given to people, in sentences; none where all is well.
 * @param {string} folder - the built add-in
 * @param {string} origin - the address that it was built for
 * @param {string} shipped - the record of the functions that workbooks rely on
 * @returns {string[]}
 */
export function faultsOf(folder, origin, shipped) {
  const read = (/** @type {string} */ name) => readFileSync(join(folder, name), "utf8");
  const manifest = read("manifest.xml");
  const named = [...manifest.matchAll(/DefaultValue="(https:\/\/[^"]+)"/g)].map(([, url]) => url);
  const { functions } = JSON.parse(readFileSync(shipped, "utf8"));
  return [
    ...(named.length === 0 ? ["the manifest names no address"] : []),
    ...named.flatMap((url) => missing(url ?? "", origin, folder)),
    ...unfetchable(read("addin.js"), folder),
    ...readdirSync(folder)
      .filter((name) => TEXT.test(name) && origin !== DEVELOPMENT_ORIGIN)
      .filter((name) => read(name).includes(DEVELOPMENT_ORIGIN))
      .map((name) => `${name} still names ${DEVELOPMENT_ORIGIN}`),
    ...breaks(functions, signatures(read("functions.json"))).map(
      (fault) => `a workbook in the world would break: ${fault}`,
    ),
  ];
}

/**
 * The pane is a file of its own, which addin.js names.
 * @param {string} script
 * @param {string} folder
 */
function unfetchable(script, folder) {
  const parts = [...script.matchAll(/"(pane\.\w+\.js)"/g)].map(([, name]) => name ?? "");
  if (parts.length === 0) return ["addin.js names no file of the pane"];
  return parts
    .filter((name) => !existsSync(join(folder, name)))
    .map((name) => `addin.js names ${name}, which is not built`);
}

/**
 * @param {string} url
 * @param {string} origin
 * @param {string} folder
 */
function missing(url, origin, folder) {
  if (!url.startsWith(`${origin}/`))
    return [`the manifest names ${url}, which is not at ${origin}`];
  const file = url.slice(origin.length + 1);
  return existsSync(join(folder, file)) ? [] : [`the manifest names ${file}, which is not built`];
}
