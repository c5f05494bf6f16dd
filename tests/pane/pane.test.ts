import { readFileSync } from "node:fs";
import axe from "axe-core";
import { JSDOM, type DOMWindow } from "jsdom";
import { describe, expect, it, vi } from "vitest";
import { readFunctionsJson } from "../host/functions-json.js";

const built = (name: string) =>
  readFileSync(new URL(`../../dist/addin/${name}`, import.meta.url), "utf8");

describe("the pane in Excel", async () => {
  const window = await openPane({ host: "Excel", dark: true });
  const page = window.document;

  it("says how to begin", () => {
    expect(page.querySelector("[role=status]")?.textContent).toContain("Type =COMB.");
  });

  it("lists every function with its line and its help", () => {
    const { functions } = readFunctionsJson();
    expect(texts(page, "dt")).toEqual(functions.map((fn) => `COMB.${fn.name}`));
    expect(texts(page, "dd")).toEqual(functions.map((fn) => fn.description));
    const links = [...page.querySelectorAll<HTMLAnchorElement>("dt a")].map((link) => link.href);
    expect(links).toEqual(functions.map((fn) => fn.helpUrl));
    expect(page.querySelector("#functions-state")?.hasAttribute("hidden")).toBe(true);
  });

  it("names its version and what to be careful about", () => {
    expect(page.querySelector("footer")?.textContent).toMatch(/Version \d+\.\d+\.\d+/);
    expect(texts(page, "main li").join(" ")).toMatch(/judged by eye.*signed contract/);
  });

  it("follows Excel's theme", () => {
    expect(page.documentElement.style.colorScheme).toBe("dark");
  });

  it("is accessible, as far as can be told without drawing it", async () => {
    expect(await violations(window)).toEqual([]);
  });
});

describe("the pane without Excel", () => {
  it("says so, and still lists the functions", async () => {
    const window = await openPane({ host: null });
    expect(hostText(window)).toContain("Excel is not around it");
    expect(texts(window.document, "dt").length).toBeGreaterThan(0);
    expect(await violations(window)).toEqual([]);
  });

  it("says so too where Microsoft's script could not be fetched", async () => {
    expect(hostText(await openPane("no Office"))).toContain("Excel is not around it");
  });
});

it("says that the list could not be read, and that the functions may work", async () => {
  const window = await openPane({ host: "Excel" }, () => Promise.reject(new Error("offline")));
  expect(window.document.querySelector("#functions-state")?.textContent).toContain(
    "could not be read",
  );
});

it("has a help page that is accessible", async () => {
  const { window } = new JSDOM(built("help.html"), { runScripts: "outside-only" });
  expect(await violations(window)).toEqual([]);
});

it("has enough contrast in both themes", () => {
  const css = built("pane.css");
  const pairs = new Map(
    [...css.matchAll(/--(\w+): light-dark\((#\w{6}), (#\w{6})\)/g)].map(([, name, ...pair]) => [
      name,
      pair.map((colour) => luminance(colour)),
    ]),
  );
  for (const theme of [0, 1]) {
    for (const text of ["ink", "quiet", "link"]) {
      const [a, b] = [pairs.get(text)?.[theme] ?? 0, pairs.get("paper")?.[theme] ?? 0];
      const contrast = (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
      expect(contrast, text).toBeGreaterThan(4.5);
    }
  }
});

/** The built page with the built script run in it, once it has said where it is. */
async function openPane(
  office: { host: string | null; dark?: boolean } | "no Office",
  fetch: () => Promise<unknown> = () =>
    Promise.resolve({ json: () => JSON.parse(built("functions.json")) }),
): Promise<DOMWindow> {
  const { window } = new JSDOM(built("pane.html"), { runScripts: "outside-only" });
  const Office = office !== "no Office" && {
    HostType: { Excel: "Excel" },
    onReady: () => Promise.resolve({ host: office.host }),
    context: { officeTheme: { isDarkTheme: office.dark ?? false } },
  };
  Object.assign(window, { fetch }, Office && { Office });
  window.eval(built("addin.js"));
  await vi.waitFor(() => {
    const waiting = texts(window.document, "#host, #functions-state:not([hidden])").join();
    expect(waiting).not.toMatch(/…/);
  });
  return window;
}

function hostText(window: DOMWindow): string {
  return window.document.querySelector("#host")?.textContent ?? "";
}

function texts(page: Document, selector: string): string[] {
  return [...page.querySelectorAll(selector)].map((found) => found.textContent ?? "");
}

async function violations(window: DOMWindow): Promise<string[]> {
  window.eval(axe.source);
  const inPage = (window as unknown as { axe: typeof axe }).axe;
  const results = await inPage.run(window.document, {
    // jsdom draws nothing, so there is no contrast to measure.
    rules: { "color-contrast": { enabled: false } },
  });
  return results.violations.map(({ id, nodes }) => `${id}: ${nodes.map((n) => n.html).join(" ")}`);
}

/** Relative luminance as WCAG defines it. */
function luminance(colour: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((i) => {
    const part = parseInt(colour.slice(i, i + 2), 16) / 255;
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}
