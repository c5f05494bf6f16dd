import { existsSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { DEVELOPMENT_ORIGIN } from "../../scripts/origin.mjs";
import { NAMESPACE } from "../../src/functions/namespace.js";
import { all, attribute, childNames, only, parseXml } from "./xml.js";

const root = new URL("../../", import.meta.url);
const manifest = parseXml(readFileSync(new URL("manifest/manifest.xml", root), "utf8"));
const overrides = only(manifest, "VersionOverrides");
const resources = only(overrides, "Resources");
const { version } = JSON.parse(readFileSync(new URL("package.json", root), "utf8"));

const definitions = [
  ...all(resources, "Image"),
  ...all(resources, "Url"),
  ...all(resources, "String"),
];
const defined = new Map(definitions.map((e) => [attribute(e, "id"), attribute(e, "DefaultValue")]));
const used = all(overrides, "*").flatMap((e) => e.getAttribute("resid") ?? []);
const urls = all(manifest, "*")
  .flatMap((e) => e.getAttribute("DefaultValue") ?? [])
  .filter((value) => value.includes("://"));

describe("the manifest", () => {
  it("has its elements in the order that the schema asks for", () => {
    expect(childNames(manifest)).toEqual([
      "Id",
      "Version",
      "ProviderName",
      "DefaultLocale",
      "DisplayName",
      "Description",
      "IconUrl",
      "HighResolutionIconUrl",
      "SupportUrl",
      "Hosts",
      "Requirements",
      "DefaultSettings",
      "Permissions",
      "VersionOverrides",
    ]);
    expect(childNames(overrides)).toEqual(["Hosts", "Resources"]);
    expect(childNames(only(overrides, "Host"))).toEqual([
      "Runtimes",
      "AllFormFactors",
      "DesktopFormFactor",
    ]);
    const [functions, ribbon] = all(overrides, "ExtensionPoint");
    expect(functions && childNames(functions)).toEqual(["Script", "Page", "Metadata", "Namespace"]);
    expect(ribbon && childNames(ribbon)).toEqual(["OfficeTab"]);
    expect(childNames(only(overrides, "DesktopFormFactor"))).toEqual([
      "GetStarted",
      "FunctionFile",
      "ExtensionPoint",
    ]);
    expect(childNames(only(overrides, "Group"))).toEqual(["Label", "Icon", "Control"]);
    expect(childNames(only(overrides, "Control"))).toEqual(["Label", "Supertip", "Icon", "Action"]);
    expect(childNames(resources)).toEqual(["Images", "Urls", "ShortStrings", "LongStrings"]);
  });

  it("is Comb Tally, with the namespace of the functions", () => {
    expect(attribute(only(manifest, "DisplayName"), "DefaultValue")).toBe("Comb Tally");
    expect(defined.get(attribute(only(overrides, "Namespace"), "resid"))).toBe(NAMESPACE);
    expect(only(manifest, "Id").textContent).toMatch(/^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/);
  });

  it("has the version of the package", () => {
    expect(only(manifest, "Version").textContent).toBe(`${version}.0`);
  });

  it("asks to write the workbook, which the pane does", () => {
    expect(only(manifest, "Permissions").textContent).toBe("ReadWriteDocument");
  });

  it("asks for no more of Excel than Excel 2021 has", () => {
    const sets = all(manifest, "Set").map((set) => [
      attribute(set, "Name"),
      attribute(set, "MinVersion"),
    ]);
    expect(sets).toEqual([
      ["SharedRuntime", "1.1"],
      ["CustomFunctionsRuntime", "1.3"],
      ["ExcelApi", "1.12"],
    ]);
  });
});

describe("its resources", () => {
  it("are each defined once, used, and short enough in name", () => {
    expect(definitions).toHaveLength(defined.size);
    expect(new Set(used)).toEqual(new Set(defined.keys()));
    for (const id of defined.keys()) expect(id.length).toBeLessThanOrEqual(32);
  });

  it("are short enough in text", () => {
    const texts = (name: string) =>
      all(only(resources, name), "String").map((e) => attribute(e, "DefaultValue"));
    for (const text of texts("ShortStrings")) expect(text.length).toBeLessThanOrEqual(125);
    for (const text of texts("LongStrings")) expect(text.length).toBeLessThanOrEqual(250);
    const description = [...manifest.children].find((e) => e.localName === "Description");
    expect(description?.getAttribute("DefaultValue")?.length).toBeLessThanOrEqual(250);
  });
});

describe("the shared runtime", () => {
  it("is one page, named wherever a page is named", () => {
    const runtime = only(overrides, "Runtime");
    expect(attribute(runtime, "lifetime")).toBe("long");
    const pages = [
      runtime,
      only(only(overrides, "Page"), "SourceLocation"),
      only(overrides, "FunctionFile"),
      only(only(overrides, "Action"), "SourceLocation"),
    ];
    const resids = new Set(pages.map((page) => attribute(page, "resid")));
    expect(resids.size).toBe(1);
    const pane = attribute(
      only(only(manifest, "DefaultSettings"), "SourceLocation"),
      "DefaultValue",
    );
    expect([...resids].map((resid) => defined.get(resid))).toEqual([pane]);
  });

  it("has no pane id, which only a pane with a runtime of its own may have", () => {
    expect(all(manifest, "TaskpaneId")).toEqual([]);
  });
});

describe("its addresses", () => {
  it("are on the development origin, and built", () => {
    expect(urls.length).toBeGreaterThan(0);
    for (const url of urls) {
      expect(url.startsWith(`${DEVELOPMENT_ORIGIN}/`)).toBe(true);
      const file = url.slice(DEVELOPMENT_ORIGIN.length + 1);
      expect(existsSync(new URL(`dist/addin/${file}`, root)), file).toBe(true);
    }
  });

  it("lead to icons of the size that they are declared with", () => {
    const url = (name: string) => attribute(only(manifest, name), "DefaultValue");
    const declared = [
      [32, url("IconUrl")] as const,
      [64, url("HighResolutionIconUrl")] as const,
      ...all(overrides, "Image")
        .filter((image) => image.hasAttribute("size"))
        .map((e) => [Number(attribute(e, "size")), defined.get(attribute(e, "resid"))] as const),
    ];
    expect(new Set(declared.map(([size]) => size))).toEqual(new Set([16, 32, 64, 80]));
    for (const [size, address] of declared) expect(pngSize(address ?? "")).toEqual([size, size]);
  });
});

function pngSize(url: string): [number, number] {
  const file = url.slice(DEVELOPMENT_ORIGIN.length + 1);
  const bytes = readFileSync(new URL(`dist/addin/${file}`, root));
  return [bytes.readUInt32BE(16), bytes.readUInt32BE(20)];
}
