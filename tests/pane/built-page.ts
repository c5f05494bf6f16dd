import { readFileSync } from "node:fs";
import { JSDOM, ResourceLoader, type DOMWindow, type FetchOptions } from "jsdom";
import { vi } from "vitest";

const FOLDER = "https://example.org/some/folder/";

/** A file of the built add-in. */
export function built(name: string): string {
  return readFileSync(builtFile(name), "utf8");
}

function builtFile(name: string): URL {
  return new URL(`../../dist/addin/${name}`, import.meta.url);
}

/**
 * The built page, which loads the built script from beside it, once it has said where it is.
 *
 * @param fetch - the page's own; without it one that gives the list of functions
 */
export async function openPane(
  install: (window: DOMWindow) => void,
  fetch: () => Promise<unknown> = list,
): Promise<DOMWindow> {
  class BesideThePage extends ResourceLoader {
    override fetch(url: string, _: FetchOptions) {
      if (url !== `${FOLDER}addin.js`) return null;
      const script = Promise.resolve(readFileSync(builtFile("addin.js")));
      return Object.assign(script, { abort: () => undefined }) as ReturnType<
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
