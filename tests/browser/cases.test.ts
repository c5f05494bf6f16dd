import { Workbook } from "@cj-tech-master/excelts";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, it } from "vitest";
import { cases } from "../cases/all.js";
import { expectCase } from "../cases/compare.js";
import { addCase } from "../cases/sheets.js";
import { launch, openFile, openPlayground, read } from "./browser.js";

let browser: Browser;
let page: Page;
beforeAll(async () => {
  browser = await launch();
  ({ page } = await openPlayground(browser));
  const workbook = new Workbook();
  cases.forEach((c, i) => addCase(workbook, c, `case ${i}`));
  await openFile(page, "cases.xlsx", new Uint8Array(await workbook.xlsx.writeBuffer()));
});
afterAll(() => browser.close());

describe("the cases, in the playground's engine", () => {
  it.each(cases.map((c, i) => [`${c.id}(${JSON.stringify(c.args).slice(0, 60)})`, c, i] as const))(
    "%s",
    async (_, c, i) => {
      const [rows, columns] = [c.gives.length, c.gives[0]!.length];
      const { values } = await read(page, { sheet: `case ${i}`, row: 0, column: 0, rows, columns });
      expectCase(c, values);
    },
  );
});
