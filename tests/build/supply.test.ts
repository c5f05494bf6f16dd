import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";

interface Locked {
  readonly license?: string;
  readonly dev?: boolean;
  readonly hasInstallScript?: boolean;
}

const read = (name: string): string =>
  readFileSync(fileURLToPath(new URL(`../../${name}`, import.meta.url)), "utf8");
const lock = JSON.parse(read("package-lock.json")) as { packages: Record<string, Locked> };
const root = JSON.parse(read("package.json")) as { dependencies: Record<string, string> };

/** The command line calls it from its package; whatever is in no bundle is not shipped. */
const CALLED = "node_modules/@cj-tech-master/excelts";
const shipped = Object.entries(lock.packages).filter(
  ([path, { dev }]) => path !== "" && (!dev || path === CALLED),
);

/** Licences that let anybody use, change and hand on, and ask for no more than to be named. */
const PERMISSIVE = new Set([
  "MIT",
  "ISC",
  "BSD-2-Clause",
  "BSD-3-Clause",
  "0BSD",
  "Apache-2.0",
  "BSL-1.0",
]);

describe("what is shipped", () => {
  it("has only licences that are permissive", () => {
    expect(shipped.length).toBeGreaterThan(10);
    const others = shipped.filter(
      ([, { license = "none" }]) => !license.split(" AND ").every((part) => PERMISSIVE.has(part)),
    );
    expect(others).toEqual([]);
  });

  it("has only such licences in the playground too", () => {
    const { packages } = JSON.parse(read("src/playground/package-lock.json")) as typeof lock;
    // Its package says none; the file beside it is held instead.
    const unsaid = "node_modules/@univerjs/telemetry";
    expect(read(`src/playground/${unsaid}/LICENSE`)).toMatch(/Apache License\s+Version 2\.0/);
    const others = Object.entries(packages).filter(
      ([path, { license = "none" }]) => path !== "" && path !== unsaid && !PERMISSIVE.has(license),
    );
    expect(others).toEqual([]);
  });

  it("needs no script at its installation", () => {
    expect(shipped.filter(([, { hasInstallScript }]) => hasInstallScript)).toEqual([]);
    expect(read(".npmrc")).toContain("ignore-scripts=true");
  });

  it("is told in docs/quality.md, each package with its version", () => {
    const told = read("docs/quality.md");
    const named = Object.entries(root.dependencies).map(([name, version]) => `${name} ${version}`);
    const excelts = (lock.packages[CALLED] as { version: string }).version;
    for (const line of [...named, `@cj-tech-master/excelts ${excelts}`])
      expect(told).toContain(line);
  });

  it("calls nobody: the only addresses in the bundle are names of XML's languages", () => {
    const code = read("dist/addin/addin.js");
    const addresses = new Set(code.match(/\b(?:https?|wss?):\/\/[^\s"'`\\]+/g));
    expect([...addresses].filter((url) => !/^http:\/\/www\.w3\.org\//.test(url))).toEqual([]);
    expect(code.match(/\b(?:XMLHttpRequest|sendBeacon|WebSocket|EventSource)/g)).toBeNull();
  });
});
