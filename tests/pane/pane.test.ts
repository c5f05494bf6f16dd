import { JSDOM, type DOMWindow } from "jsdom";
import { describe, expect, it, vi } from "vitest";
import { readFunctionsJson } from "../host/functions-json.js";
import { built, openPane } from "./built-page.js";
import { FakeExcel } from "./fake-excel.js";
import { named, SHEETS } from "./port-contract.js";
import { violationsIn } from "./render.js";

describe("the pane in Excel", async () => {
  const window = await openPane((into) => new FakeExcel(SHEETS, named()).install(into));
  const page = window.document;

  it("shows a tab for each view, of which one is open", async () => {
    const tabs = [...page.querySelectorAll("[role=tab]")];
    expect(tabs.map(({ textContent }) => textContent)).toContain("About");
    expect(tabs.filter(isChosen)).toHaveLength(1);
    for (const tab of tabs) {
      const panel = page.getElementById(tab.getAttribute("aria-controls")!)!;
      expect(panel.getAttribute("aria-labelledby")).toBe(tab.id);
      expect(panel.hidden).toBe(!isChosen(tab));
    }
    expect(await violationsIn(window)).toEqual([]);
  });

  it("lists every function with its line and its help", async () => {
    const about = await openAbout(window);
    const { functions } = readFunctionsJson();
    await vi.waitFor(() => expect(texts(about, "dt")).toHaveLength(functions.length));
    expect(texts(about, "dt")).toEqual(functions.map((fn) => `COMB.${fn.name}`));
    expect(texts(about, "dd")).toEqual(functions.map((fn) => fn.description));
    const links = [...about.querySelectorAll<HTMLAnchorElement>("dt a")].map((link) => link.href);
    expect(links).toEqual(functions.map((fn) => fn.helpUrl));
  });

  it("says how to begin, what to be careful about, that nothing is sent, and its version", async () => {
    const about = await openAbout(window);
    expect(about.textContent).toMatch(/Type =COMB\. in a cell/);
    expect(about.textContent).toMatch(/judged by eye.*signed contract/s);
    expect(about.textContent).toMatch(/Nothing that you type leaves this machine/);
    expect(about.textContent).toMatch(/Version \d+\.\d+\.\d+/);
    expect(await violationsIn(window)).toEqual([]);
  });

  it("moves between tabs by the arrow keys", () => {
    const tabs = [...page.querySelectorAll<HTMLElement>("[role=tab]")];
    tabs[0]!.focus();
    tabs[0]!.dispatchEvent(
      new window.KeyboardEvent("keydown", { key: "ArrowLeft", bubbles: true }),
    );
    expect(page.activeElement).toBe(tabs.at(-1));
  });
});

describe("the theme", () => {
  const schemeUnder = async (theme?: object) => {
    const window = await openPane((into) => new FakeExcel(SHEETS).install(into, theme));
    return window.document.documentElement.style.colorScheme;
  };

  it("is Excel's, where Excel tells of one", async () => {
    expect(await schemeUnder({ isDarkTheme: true })).toBe("dark");
    expect(await schemeUnder({ isDarkTheme: false })).toBe("light");
  });

  it("is read off Excel's colours where it tells those only", async () => {
    expect(await schemeUnder({ bodyBackgroundColor: "#212121" })).toBe("dark");
    expect(await schemeUnder({ bodyBackgroundColor: "#E6E6E6" })).toBe("light");
  });

  it("is the system's on the web, where there is none", async () => {
    expect(await schemeUnder()).toBe("");
  });
});

describe("the pane without Excel", () => {
  it("says so in a browser", async () => {
    const window = await openPane((into) =>
      Object.assign(into, {
        Office: { HostType: { Excel: "Excel" }, onReady: () => Promise.resolve({ host: null }) },
      }),
    );
    expect(status(window)).toContain("Excel is not around it");
    expect(await violationsIn(window)).toEqual([]);
  });

  it("says so where Microsoft's script could not be fetched", async () => {
    const window = await openPane(() => undefined);
    expect(status(window)).toContain("Excel is not around it");
    expect(await violationsIn(window)).toEqual([]);
  });
});

it("has every function registered before it waits for Excel", async () => {
  const order: string[] = [];
  await openPane((into) => {
    new FakeExcel(SHEETS).install(into);
    const { Office } = into as unknown as { Office: { onReady: () => Promise<unknown> } };
    const { onReady } = Office;
    Office.onReady = () => (order.push("waits"), onReady());
    Object.assign(into, { CustomFunctions: { associate: () => void order.push("function") } });
  });
  expect(order).toEqual([...readFunctionsJson().functions.map(() => "function"), "waits"]);
});

it.each([
  ["the network is gone", () => Promise.reject(new Error("offline"))],
  ["a server answers something else", () => Promise.resolve({ json: () => ({}) })],
])(
  "says that the list could not be read, and that the functions may work: %s",
  async (_, fetch) => {
    const window = await openPane((into) => new FakeExcel(SHEETS).install(into), fetch);
    const about = await openAbout(window);
    await vi.waitFor(() => expect(about.textContent).toMatch(/could not be read.*may work/s));
  },
);

// A long page, and a machine that does other things too.
it("has a help page that is accessible", { timeout: 60_000 }, async () => {
  const { window } = new JSDOM(built("help.html"), { runScripts: "outside-only" });
  expect(window.document.querySelectorAll("h2, h3").length).toBeGreaterThan(10);
  expect(await violationsIn(window)).toEqual([]);
});

describe("the colours, by the contrast that WCAG 2.2 asks (1.4.3 and 1.4.11)", () => {
  const css = built("pane.css");
  const colours = new Map(
    [...css.matchAll(/--(\w+): light-dark\((#\w{6}), (#\w{6})\)/g)].map(
      ([, name, light, dark]) => [name!, [light!, dark!]] as const,
    ),
  );
  const rules = [...css.matchAll(/([^{}]+)\{([^{}]*)\}/g)].map(([, selector, body]) => ({
    selector: selector!.trim(),
    colour: /(?:^|[\s;])color: var\(--(\w+)\)/.exec(body!)?.[1],
    background: /background: var\(--(\w+)\)/.exec(body!)?.[1],
  }));
  // A text without a ground of its own may lie on the page or on what is raised from it.
  const onText = rules.flatMap(({ selector, colour, background }) => {
    if (colour === undefined && background === undefined) return [];
    const grounds = background === undefined ? ["paper", "raised"] : [background];
    return grounds.map((ground) => [selector, colour ?? "ink", ground] as const);
  });

  it("knows every colour that a rule names", () => {
    const names = [...css.matchAll(/var\(--(\w+)\)/g)].map(([, name]) => name!);
    expect(names.filter((name) => !colours.has(name))).toEqual([]);
    expect(onText.length).toBeGreaterThan(5);
  });

  it.each([
    ["light", 0],
    ["dark", 1],
  ] as const)("is 4.5 or more under every text, %s", (_, theme) => {
    for (const [selector, text, ground] of onText) {
      const contrast = contrastOf(colours.get(text)![theme]!, colours.get(ground)![theme]!);
      expect(contrast, `${selector}: ${text} on ${ground}`).toBeGreaterThanOrEqual(4.5);
    }
  });

  it.each([
    ["light", 0],
    ["dark", 1],
  ] as const)("is 3 or more around every control, %s", (_, theme) => {
    for (const name of ["control", "error", "link"]) {
      const contrast = contrastOf(colours.get(name)![theme]!, colours.get("paper")![theme]!);
      expect(contrast, name).toBeGreaterThanOrEqual(3);
    }
  });

  it("reckons as WCAG does: black on white is 21, #777 on white is just under 4.5", () => {
    expect(contrastOf("#000000", "#ffffff")).toBeCloseTo(21, 10);
    expect(contrastOf("#777777", "#ffffff")).toBeCloseTo(4.48, 2);
  });
});

async function openAbout({ document, MouseEvent }: DOMWindow): Promise<HTMLElement> {
  document.querySelector("#tab-about")!.dispatchEvent(new MouseEvent("click", { bubbles: true }));
  const about = document.getElementById("view-about")!;
  await vi.waitFor(() => expect(about.hidden).toBe(false));
  return about;
}

function isChosen(tab: Element): boolean {
  return tab.getAttribute("aria-selected") === "true";
}

function status(window: DOMWindow): string {
  return window.document.querySelector("[role=status]")?.textContent ?? "";
}

function texts(within: Element, selector: string): string[] {
  return [...within.querySelectorAll(selector)].map((found) => found.textContent ?? "");
}

function contrastOf(one: string, other: string): number {
  const [a, b] = [luminance(one), luminance(other)];
  return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
}

/** Relative luminance as WCAG defines it. */
function luminance(colour: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((i) => {
    const part = parseInt(colour.slice(i, i + 2), 16) / 255;
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}
