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
