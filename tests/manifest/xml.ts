import { JSDOM } from "jsdom";

const { DOMParser } = new JSDOM().window;

export function parseXml(text: string): Element {
  const page = new DOMParser().parseFromString(text, "application/xml");
  const error = page.querySelector("parsererror");
  if (error) throw new Error(error.textContent ?? "not well-formed");
  return page.documentElement;
}

/** Every element of a local name, wherever it stands. */
export function all(root: Element, name: string): Element[] {
  return [...root.getElementsByTagNameNS("*", name)];
}

export function only(root: Element, name: string): Element {
  const [found, ...rest] = all(root, name);
  if (!found || rest.length > 0) throw new Error(`expected one <${name}>`);
  return found;
}

export function attribute(element: Element, name: string): string {
  const value = element.getAttribute(name);
  if (value === null) throw new Error(`<${element.localName}> has no ${name}`);
  return value;
}

/** The children's local names, in their order. */
export function childNames(element: Element): string[] {
  return [...element.children].map((child) => child.localName);
}
