import { existsSync, readFileSync } from "node:fs";
import { JSDOM, ResourceLoader, type DOMWindow, type FetchOptions } from "jsdom";
import { vi } from "vitest";

const FOLDER = "https://example.org/some/folder/";

interface Page {
  /** What the page's own `fetch` gives; without it the list of functions. */
  readonly fetch?: () => Promise<unknown>;
  /** Whether a file of the built add-in can be had. */
  readonly served?: (name: string) => boolean;
  /** Hears of each file of ours as the page asks for it. */
  readonly onFetch?: (name: string) => void;
}

/** A file of the built add-in. */
export function built(name: string): string {
  return readFileSync(new URL(`../../dist/addin/${name}`, import.meta.url), "utf8");
}

/** The built page, which loads the built scripts from beside it, once it has said where it is. */
export async function openPane(
  install: (window: DOMWindow) => void,
  { fetch = list, served = () => true, onFetch = () => undefined }: Page = {},
): Promise<DOMWindow> {
  class BesideThePage extends ResourceLoader {
    override fetch(url: string, _: FetchOptions) {
      if (!url.startsWith(FOLDER) || !url.endsWith(".js")) return null;
      const name = url.slice(FOLDER.length);
      onFetch(name);
      const file = new URL(`../../dist/addin/${name}`, import.meta.url);
      const bytes = served(name) && existsSync(file) ? readFileSync(file) : null;
      const answer = bytes === null ? Promise.reject(new Error("404")) : Promise.resolve(bytes);
      return Object.assign(answer, { abort: () => undefined }) as ReturnType<
        ResourceLoader["fetch"]
      >;
    }
  }
  const { window } = new JSDOM(built("pane.html"), {
    url: `${FOLDER}pane.html`,
    runScripts: "dangerously",
    resources: new BesideThePage(),
    beforeParse: (into) => {
      Object.assign(into, { fetch });
      install(into);
    },
  });
  await vi.waitFor(() => {
    if (/Waiting for/.test(window.document.body.textContent!)) throw new Error("still waiting");
  });
  return window;
}

function list(): Promise<unknown> {
  return Promise.resolve({ json: () => JSON.parse(built("functions.json")) });
}
