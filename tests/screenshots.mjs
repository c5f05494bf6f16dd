/**
 * `npm run screenshots`: the playground as it looks, narrow and wide, in each set of colours, and the
 * pictures of What if in the README and of the weeks ahead in docs/forecast.md.
 */
import { mkdirSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { runnerImport } from "vite";

const folder = fileURLToPath(new URL("../docs/screens/", import.meta.url));
mkdirSync(folder, { recursive: true });
const { module } = await runnerImport(
  fileURLToPath(new URL("browser/browser.ts", import.meta.url)),
);
const { launch, openPlayground } = /** @type {typeof import("./browser/browser.js")} */ (module);

/** @type {Record<string, import("./browser/browser.js").Look>} */
const COLOURS = {
  light: { colorScheme: "light" },
  dark: { colorScheme: "dark" },
  forced: { forcedColors: "active" },
};

const browser = await launch();
for (const [name, colours] of Object.entries(COLOURS)) {
  for (const [width, height] of /** @type {const} */ ([
    [1280, 720],
    [320, 640],
  ])) {
    const { page } = await openPlayground(browser, { width, height, ...colours });
    if (width === 320) await page.getByRole("button", { name: "Show the pane" }).click();
    await page.locator("#pane").getByRole("tab", { name: "What if" }).click();
    await page.waitForTimeout(1500);
    const path = `${folder}playground-${width}-${name}.png`;
    await page.screenshot({ path });
    console.log(`wrote ${path}`);
    await page.context().close();
  }
}

const { page } = await openPlayground(browser, { width: 1500, height: 1700 });
const pane = page.locator("#pane");
await pane.evaluate((element) => (element.style.width = "640px"));
await pane.getByRole("tab", { name: "What if" }).click();
await pane.getByLabel("Hives in the lot").fill("160");
await pane.getByText("The weeks ahead").click();
await page.waitForTimeout(1500);
const docs = fileURLToPath(new URL("../docs/", import.meta.url));
await pane.getByRole("tabpanel", { name: "What if" }).screenshot({ path: `${docs}what-if.png` });
await pane.locator(".ahead").screenshot({ path: `${docs}forecast.png` });
console.log(`wrote ${docs}what-if.png and forecast.png`);
await browser.close();
