import { existsSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { chromium, type Browser, type Page } from "playwright-core";

const PLACES = [
  process.env.CHROME,
  "/usr/bin/chromium",
  "/usr/bin/chromium-browser",
  "/usr/bin/google-chrome",
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
  "C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe",
];
const OPTIONS =
  "--no-sandbox --disable-gpu --disable-quic --disable-background-networking --no-first-run " +
  "--disable-component-update --disable-sync";

declare global {
  var heard: string[];
}

/** The page as it is built: the test command builds it. */
export const PAGE = new URL("../../dist/playground/index.html", import.meta.url).href;

export async function launch(): Promise<Browser> {
  const executablePath = PLACES.find((path) => path && existsSync(path));
  if (!executablePath) {
    throw new Error("no Chromium or Chrome was found: install one, or set CHROME to its path");
  }
  return chromium.launch({ executablePath, args: OPTIONS.split(" ") });
}

/** What a page did that it should not have. */
export interface Watch {
  readonly faults: string[];
  readonly outside: string[];
}

export interface Look {
  readonly width?: number;
  readonly height?: number;
  readonly colorScheme?: "light" | "dark";
  readonly forcedColors?: "active" | "none";
  readonly url?: string;
}

/** Opens the playground in a page of its own, ready to be used. */
export async function openPlayground(
  browser: Browser,
  { width = 1280, height = 800, url = PAGE, ...look }: Look = {},
): Promise<{ page: Page; watch: Watch }> {
  const context = await browser.newContext({
    viewport: { width, height },
    acceptDownloads: true,
    ...look,
  });
  const page = await context.newPage();
  page.setDefaultTimeout(90_000);
  const watch: Watch = { faults: [], outside: [] };
  page.on("pageerror", (error) => watch.faults.push(error.message));
  page.on("console", (message) => {
    if (message.type() === "error") watch.faults.push(message.text());
  });
  const home = new URL(".", url).href;
  context.on("request", (request) => {
    const at = request.url();
    if (!at.startsWith(home) && !/^(?:data|blob):/.test(at)) watch.outside.push(at);
  });
  await page.goto(url);
  await said(page, /Ready/);
  return { page, watch };
}

/** Waits until the page has said something. */
export async function said(page: Page, what: RegExp): Promise<string> {
  const { source } = what;
  const handle = await page.waitForFunction((pattern) => {
    const text = document.getElementById("status")?.textContent ?? "";
    return new RegExp(pattern).test(text) ? text : false;
  }, source);
  return String(await handle.jsonValue());
}

/** Values, entries and formats of a range such as `'North yard'!B2:C5`, as the pane reads them. */
export interface Cells {
  readonly values: unknown[][];
  readonly entries: unknown[][];
  readonly formats: string[][];
}

/** A rectangle of cells, rows and columns from 0. */
export interface At {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
}

export async function read(page: Page, at: At): Promise<Cells> {
  return page.evaluate(async (place) => {
    const [block] = await globalThis.combTally!.session()!.workbook.read([place]);
    const plain = (value: unknown) =>
      typeof value === "object" && value !== null
        ? { error: (value as { code: string }).code }
        : value;
    return {
      values: block!.values.map((row) => row.map(plain)),
      entries: block!.entries.map((row) => [...row]),
      formats: block!.formats.map((row) => [...row]),
    };
  }, at);
}

/** Waits until a cell's value is so. */
export async function becomes(
  page: Page,
  at: At,
  isSo: (value: unknown) => boolean,
): Promise<unknown> {
  for (let tries = 0; tries < 300; tries++) {
    const [[value]] = (await read(page, at)).values as [[unknown]];
    if (isSo(value)) return value;
    await page.waitForTimeout(100);
  }
  throw new Error(`it stayed ${JSON.stringify((await read(page, at)).values)}`);
}

/** A quick hand. */
const PACE = { delay: 40 };

/** Chooses a cell as a hand would, and types into it. */
export async function typeInto(page: Page, sheet: string, address: string, text: string) {
  await choose(page, sheet, address);
  await type(page, text);
  await enter(page);
}

/** Types into the chosen cell: its editor opens at the first key and takes the next ones. */
export async function type(page: Page, text: string): Promise<void> {
  await page.keyboard.type(text.slice(0, 1));
  await isWriting(page, true);
  await page.keyboard.type(text.slice(1), PACE);
}

/** Enters what is typed. The grid's list of functions would take the key, and goes 300 ms after the last. */
export async function enter(page: Page): Promise<void> {
  await page.evaluate(
    () => new Promise((idle) => setTimeout(() => requestIdleCallback(idle), 400)),
  );
  await page.keyboard.press("Enter");
  await isWriting(page, false);
}

async function isWriting(page: Page, wanted: boolean): Promise<void> {
  await page.waitForFunction(
    (writing) => globalThis.combTally!.session()!.grid.isCellEditing() === writing,
    wanted,
  );
}

export async function choose(page: Page, sheet: string, address: string): Promise<void> {
  // The keys go to whatever was clicked last.
  const grid = (await page.locator("#grid").boundingBox())!;
  await page.mouse.click(grid.x + grid.width / 2, grid.y + grid.height / 2);
  await page.evaluate(
    ([name, cell]) => {
      const { grid } = globalThis.combTally!.session()!;
      const worksheet = grid.getSheetByName(name!)!;
      grid.setActiveSheet(worksheet);
      worksheet.getRange(cell!).activate();
    },
    [sheet, address],
  );
  await page.waitForFunction(
    () => document.activeElement?.closest("#grid") && new Promise(requestAnimationFrame),
  );
  // The grid draws, and takes the keys, some frames later.
  await page.waitForTimeout(300);
}

/** Gives the page a file by its button. */
export async function openFile(page: Page, name: string, bytes: Uint8Array): Promise<string> {
  const buffer = Buffer.from(bytes);
  // A cell chosen meanwhile is spoken of too: all that was said is kept, and the file is named in it.
  await page.evaluate(() => {
    const status = document.getElementById("status")!;
    globalThis.heard = [];
    new MutationObserver(() => globalThis.heard.push(status.textContent ?? "")).observe(status, {
      childList: true,
      characterData: true,
    });
  });
  await page.setInputFiles("#open", { name, mimeType: "application/octet-stream", buffer });
  const answer = (isAsked: boolean) =>
    page.waitForFunction(
      ([file, asked]) =>
        (asked && document.querySelector("dialog[open]") && "asked") ||
        globalThis.heard.find((text) => text.includes(file) && !text.startsWith("Reading ")),
      [name, isAsked] as const,
    );
  const first = await answer(true);
  if ((await first.jsonValue()) !== "asked") return String(await first.jsonValue());
  await page.getByRole("button", { name: "Open anyway" }).click();
  return String(await (await answer(false)).jsonValue());
}

/** Saves what is open, and answers the file with what was said before. */
export async function saveFile(page: Page): Promise<{ bytes: Buffer; told: string }> {
  await page.click("#save");
  await page.locator("#ask[open]").waitFor();
  const told = (await page.textContent("#ask")) ?? "";
  const [file] = await Promise.all([
    page.waitForEvent("download"),
    page.locator("#ask").getByRole("button", { name: "Save" }).click(),
  ]);
  return { bytes: await readFile(await file.path()), told };
}
