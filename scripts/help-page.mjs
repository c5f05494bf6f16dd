import { signature } from "./reference.mjs";

/**
 * The help page with every function in it, each at the place that Excel's help link names.
 * @param {string} template - holds a line `<!-- functions -->`
 * @param {import("./reference.mjs").Entry[]} entries
 */
export function helpPage(template, entries) {
  return template.replace("<!-- functions -->", () => entries.map(section).join("\n"));
}

/** @param {import("./reference.mjs").Entry} entry */
function section(entry) {
  const parameters = entry.parameters.map(
    (p) => `<dt><code>${escape(p.name)}</code></dt><dd>${escape(p.text)}</dd>`,
  );
  return `<section id="${entry.id}">
  <h2>COMB.${entry.id}</h2>
  <p>${escape(entry.summary)}</p>
  <p><code>=${escape(signature(entry))}</code></p>
  <dl>${parameters.join("")}<dt>Gives</dt><dd>${escape(entry.returns)}</dd></dl>
  <p>${escape(entry.remarks)}</p>
  <p>Example: ${escape(entry.example)}</p>
</section>`;
}

/** @param {string} text */
function escape(text) {
  return text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll('"', "&quot;");
}
