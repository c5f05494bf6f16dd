/** Records the built functions as those that workbooks rely on: `node scripts/record-shipped.mjs` */
import { readFileSync, writeFileSync } from "node:fs";
import { breaks, signatures } from "./shipped.mjs";

const record = new URL("../tests/functions/shipped.json", import.meta.url);
const built = new URL("../dist/addin/functions.json", import.meta.url);

/** @type {{ released: boolean, functions: import("./shipped.mjs").Signature[] }} */
const { released, functions } = JSON.parse(readFileSync(record, "utf8"));
const declared = signatures(readFileSync(built, "utf8"));
const broken = released ? breaks(functions, declared) : [];
if (broken.length > 0) {
  console.error(`not recorded, for workbooks would break:\n${broken.join("\n")}`);
  process.exit(1);
}
writeFileSync(record, JSON.stringify({ released, functions: declared }, null, 2) + "\n");
