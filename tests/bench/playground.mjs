/* global document, performance */
/** `npm run bench:playground`: seconds to the first view of the built playground, and to its results. */
import { createServer } from "node:http";
import { fileURLToPath } from "node:url";
import sirv from "sirv";
import { runnerImport } from "vite";

const path = (/** @type {string} */ name) => fileURLToPath(new URL(name, import.meta.url));
const { module } = await runnerImport(path("../browser/browser.ts"));
const { launch } = /** @type {typeof import("../browser/browser.js")} */ (module);

const server = createServer(sirv(path("../../dist/playground")));
await new Promise((done) => server.listen(0, "127.0.0.1", () => done(undefined)));
const { port } = /** @type {import("node:net").AddressInfo} */ (server.address());

const browser = await launch();
const context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
for (const run of ["cold", "warm", "warm", "warm"]) {
  const page = await context.newPage();
  await page.goto(`http://localhost:${port}/`);
  await page.waitForFunction(() =>
    /Ready/.test(document.getElementById("status")?.textContent ?? ""),
  );
  const [view, ready] = await page.evaluate(() => [
    performance.getEntriesByName("first view")[0]?.startTime ?? NaN,
    performance.now(),
  ]);
  console.log(`${run}: sheet shown after ${seconds(view)} s, calculated after ${seconds(ready)} s`);
  await page.close();
}
await browser.close();
server.close();

function seconds(/** @type {number | undefined} */ ms = NaN) {
  return (ms / 1000).toFixed(2);
}
