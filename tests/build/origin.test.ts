import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it, vi } from "vitest";
import webpack from "webpack";
import { checkedOrigin } from "../../scripts/origin.mjs";
import configurations from "../../webpack.config.js";

describe("--env origin", () => {
  it.each(["https://example.org", "https://example.org/comb", "https://example.org:8443/a/b"])(
    "takes %s",
    (origin) => {
      expect(checkedOrigin(origin)).toBe(origin);
    },
  );

  it.each([
    "http://example.org",
    "https://example.org/",
    "https://example.org/comb/",
    "https://example.org/comb?x=1",
    "https://example.org/#x",
    "https://me@example.org",
    "https://example.org/a&b",
    "https://example.org/a b",
    "example.org",
    "",
  ])("refuses %j", (origin) => {
    expect(() => checkedOrigin(origin)).toThrow(`--env origin: "${origin}" cannot be used`);
  });
});

describe("a build for another address", () => {
  const folder = mkdtempSync(join(tmpdir(), "comb-tally-"));
  afterAll(() => rmSync(folder, { recursive: true }));

  it("names that address wherever the development address stood", async () => {
    const origin = "https://example.org/comb";
    await build(origin);
    const files = readdirSync(folder, { withFileTypes: true }).filter((entry) => entry.isFile());
    const texts = new Map(
      files.map(({ name }) => [name, readFileSync(join(folder, name), "utf8")]),
    );
    const behind = [...texts.keys()].filter((name) => texts.get(name)?.includes("localhost"));
    expect(behind).toEqual([]);
    expect(texts.get("manifest.xml")).toContain(`"${origin}/addin.js"`);
    expect(texts.get("functions.json")).toContain(`"${origin}/help.html#SOURCES"`);
  }, 120_000);

  function build(origin: string): Promise<void> {
    const addin = configurations({ origin }).find(({ name }) => name === "addin");
    const output = { ...addin?.output, path: folder };
    vi.spyOn(console, "log").mockImplementation(() => {});
    return new Promise((resolve, reject) => {
      webpack({ ...addin, mode: "production", output }, (error, stats) => {
        if (error) reject(error);
        else if (stats?.hasErrors()) reject(new Error(stats.toString("errors-only")));
        else resolve();
      });
    });
  }
});
