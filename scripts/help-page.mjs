import { readFileSync } from "node:fs";
import { Marked } from "marked";
import { signature } from "./reference.mjs";
import { bothForms } from "./semicolons.mjs";

/** The pages of the handbook, in the order in which one reads them; the functions come after. */
export const PAGES = [
  "install",
  "yard-sheet",
  "walkthrough",
  "eye-guide",
  "terms",
  "errors",
  "methods",
  "sources",
  "hosting",
];

/**
 * The handbook as one page: the pages of docs/, and every function at the place that Excel's help
 * link names.
 * @param {string} template - holds the lines `<!-- contents -->`, `<!-- pages -->`, `<!-- functions -->`
 * @param {import("./reference.mjs").Entry[]} entries
 * @param {URL} docs - the folder of the pages
 */
export function helpPage(template, entries, docs) {
  const pages = PAGES.map((name) => page(name, readFileSync(new URL(`${name}.md`, docs), "utf8")));
  const errors = errorsIn(readFileSync(new URL("functions.md", docs), "utf8"));
  const contents = [
    ...pages.map(({ name, title }) => `<li><a href="#${name}">${title}</a></li>`),
    `<li><a href="#functions">Functions</a><ul class="names">${entries
      .map(({ id }) => `<li><a href="#${id}">${id}</a></li>`)
      .join("")}</ul></li>`,
  ];
  const parts = {
    contents: contents.join("\n"),
    pages: pages.map(({ html }) => html).join("\n"),
    functions: entries.map((entry) => section(entry, errors.get(entry.id) ?? "")).join("\n"),
  };
  return template.replace(
    /<!-- (contents|pages|functions) -->/g,
    (_, /** @type {keyof typeof parts} */ part) => parts[part],
  );
}

/**
 * @param {string} name
 * @param {string} text
 */
function page(name, text) {
  const html = /** @type {string} */ (reader(name).parse(text));
  const title = /^# (.*)$/m.exec(text)?.[1] ?? name;
  return { name, title: escape(title), html: `<article>${html}</article>` };
}

/**
 * What each function refuses, by its id, as the page of the functions has it.
 * @param {string} text
 */
function errorsIn(text) {
  const marked = reader("functions");
  const entries = text.split(/^## COMB\./m).slice(1);
  return new Map(
    entries.map((entry) => {
      const [id = ""] = entry.split("\n");
      const errors = /^Errors[^]*/m.exec(entry)?.[0] ?? "";
      return [id, /** @type {string} */ (marked.parse(errors))];
    }),
  );
}

/**
 * Makes a page of the handbook from its text.
 * @param {string} name
 */
function reader(name) {
  return new Marked({
    walkTokens(token) {
      // What makes the page is not for its readers.
      if (token.type === "html") token.text = "";
    },
    renderer: {
      link({ href, tokens }) {
        const inner = this.parser.parseInline(tokens);
        const to = inPage(name, href);
        return to === null ? inner : `<a href="${to}">${inner}</a>`;
      },
      // The page stands alone: what a picture shows stands in its text too.
      image: () => "",
      heading({ tokens, depth }) {
        const inner = this.parser.parseInline(tokens);
        const id = depth === 1 ? name : `${name}-${anchor(inner)}`;
        return `<h${depth + 1} id="${id}">${inner}</h${depth + 1}>\n`;
      },
      table(token) {
        const row = (/** @type {string} */ cells) => `<tr>${cells}</tr>`;
        const cell = (
          /** @type {string} */ tag,
          /** @type {import("marked").Tokens.TableCell} */ c,
        ) => `<${tag}>${this.parser.parseInline(c.tokens)}</${tag}>`;
        const head = row(token.header.map((c) => cell("th", c)).join(""));
        const body = token.rows.map((cells) => row(cells.map((c) => cell("td", c)).join("")));
        return `<div class="wide" tabindex="0"><table><thead>${head}</thead><tbody>${body.join("")}</tbody></table></div>`;
      },
      code({ text }) {
        return `<pre tabindex="0"><code>${escape(text)}</code></pre>`;
      },
    },
  });
}

/**
 * A link from one page of docs/ to another, as a link within the one page; null where it leads out
 * of the handbook.
 * @param {string} from
 * @param {string} href
 */
function inPage(from, href) {
  if (/^https?:/.test(href)) return href;
  const [file = "", place] = href.split("#");
  const name = file === "" ? from : file.replace(/\.md$/, "");
  if (name === "functions" && place === undefined) return "#functions";
  if (name === "functions") return `#${(place ?? "").replace(/^comb/, "").toUpperCase()}`;
  if (!PAGES.includes(name)) return null;
  return place === undefined ? `#${name}` : `#${name}-${place}`;
}

/** The anchor that a heading has where the pages are read one by one. */
function anchor(/** @type {string} */ heading) {
  return heading
    .toLowerCase()
    .replace(/<[^>]*>/g, "")
    .replace(/[^a-z0-9 -]/g, "")
    .replaceAll(" ", "-");
}

/**
 * @param {import("./reference.mjs").Entry} entry
 * @param {string} errors
 */
function section(entry, errors) {
  const rows = entry.parameters.map(
    (p) =>
      `<tr><th><code>${escape(p.name)}</code></th><td>${p.optional ? "may be left out" : "needed"}</td><td>${escape(p.text)}</td></tr>`,
  );
  const typed = `=${signature(entry)}`;
  return `<section id="${entry.id}">
  <h3>COMB.${entry.id}</h3>
  <p>${escape(entry.summary)}</p>
  <p>${bothForms(typed)
    .map((form) => `<code>${escape(form)}</code>`)
    .join("<br />")}</p>
  <div class="wide" tabindex="0"><table><tbody>${rows.join("")}</tbody></table></div>
  <p>Gives: ${escape(entry.returns)}</p>
  <p>${escape(entry.remarks)}</p>
  <p>Example: ${bothForms(entry.example).map(escape).join("<br />With ;: ")}</p>
  ${errors}
</section>`;
}

/** @param {string} text */
function escape(text) {
  return text
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replaceAll('"', "&quot;");
}
