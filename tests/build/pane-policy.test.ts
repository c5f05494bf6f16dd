import { JSDOM } from "jsdom";
import { expect, it } from "vitest";
import { built } from "../pane/built-page.js";

const { document } = new JSDOM(built("pane.html")).window;
const policy = document.querySelector<HTMLMetaElement>("[http-equiv=Content-Security-Policy]");

it("the pane's page may hold no plug-in, move no address and send no form", () => {
  const rules = policy!.content.split(";").map((rule) => rule.trim());
  expect(rules.sort()).toEqual(["base-uri 'none'", "form-action 'none'", "object-src 'none'"]);
});

it("the policy stands before whatever it is to hold for", () => {
  // Only what comes after it in the head is under it (CSP Level 3, "The meta element").
  const after = policy!.compareDocumentPosition(document.querySelector("link, script, base")!);
  expect(after).toBe(document.DOCUMENT_POSITION_FOLLOWING);
});
