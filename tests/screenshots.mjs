/** `npm run screenshots`: the playground as it looks, narrow and wide, in each set of colours. */
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
await browser.close();
