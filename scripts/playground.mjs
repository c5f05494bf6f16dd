/** Installs what only the playground needs, where it is not yet, and builds it into dist/playground. */
import { execSync } from "node:child_process";
import { copyFileSync, existsSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("..", import.meta.url));
const own = fileURLToPath(new URL("../src/playground/", import.meta.url));

/** @param {{ development?: boolean }} options - large and soon, or small and a minute later */
export function buildPlayground({ development = false } = {}) {
  install(root);
  install(own);
  const env = development ? "--env development" : "";
  run(`npx webpack --config src/playground/webpack.config.js --mode production ${env}`, root);
}

/** `npm ci`, unless the lock file is the one that was installed. */
export function install(/** @type {string} */ folder) {
  const lock = `${folder}/package-lock.json`;
  const installed = `${folder}/node_modules/.installed-lock.json`;
  const hasModules = existsSync(`${folder}/node_modules/.package-lock.json`);
  if (existsSync(installed) && readFileSync(lock).equals(readFileSync(installed))) return;
  // The root may have been installed by hand, which leaves no mark.
  const isByHand = folder === root && hasModules && !existsSync(installed);
  if (!isByHand) run("npm ci --silent", folder);
  copyFileSync(lock, installed);
}

function run(/** @type {string} */ command, /** @type {string} */ cwd) {
  try {
    execSync(command, { cwd, stdio: "inherit" });
  } catch {
    console.error(`"${command}" failed in ${cwd}`);
    process.exit(1);
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  buildPlayground();
  console.log(
    "built the playground: open dist/playground/index.html, or put the folder on any host",
  );
}
