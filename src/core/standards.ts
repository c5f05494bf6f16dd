import type { Contract } from "./contract.js";
import { fromColumn } from "./contract-reading.js";
import { quote, Refusal } from "./refusal.js";
import { sources, type Known } from "./sources.js";
import { normalise } from "./text.js";

/**
 * A published strength standard. A range such as `6 to 8` stands at its low end. These are starting
 * points: the signed contract and local law come first.
 */
export interface Standard {
  readonly name: string;
  /** The terms that the source states, by label; none where it gives no number. */
  readonly terms: Readonly<Record<string, number | string>>;
  readonly source: string;
  readonly known: Known;
  readonly remark: string;
}

const UNSAID = "the source does not say how a brood frame counts: taken as combs that hold brood";

function standard(
  name: string,
  terms: Standard["terms"],
  source: string,
  known: Known,
  remark = "",
): Standard {
  return { name, terms, source, known, remark };
}

export const STANDARDS: readonly Standard[] = [
  standard(
    "Almond Board of California",
    { "average frames": 8, "minimum frames": 6 },
    "Almond Board of California, Honey Bee Best Management Practices, p. 7",
    "read",
    "2 hives an acre",
  ),
  standard(
    "California Extension, strong hive",
    { "minimum frames": 8, brood: 1, "brood counted as": "combs", "laying queen": "yes" },
    "University of California Extension (Niederholzer)",
    "read",
    `1 to 2 frames of brood; 1 to 3 hives an acre; ${UNSAID}`,
  ),
  standard(
    "California Beekeepers 1968",
    { "minimum frames": 4, "comb rule": "sum of parts", "laying queen": "yes" },
    "California Beekeepers Association 1968, in Sheesley & Poduska, California Agriculture 24(8):5-6, 1970",
    "read",
    "4 combs fully covered",
  ),
  standard(
    "Rutgers New Jersey",
    {
      "minimum frames": 6,
      "under minimum": "rejects the load",
      "share under minimum forgiven": 10,
      "forgiven against": "hives above the minimum",
      brood: 4,
      "brood counted as": "combs",
      "laying queen": "yes",
    },
    "Rutgers, New Jersey Commercial Vegetable Recommendations 2015",
    "read",
    `bees to cover 6 to 8, brood 4 to 6; 10 % below is accepted if 10 % are above; ${UNSAID}`,
  ),
  standard(
    "Penn State",
    { "minimum frames": 8, brood: 4, "brood counted as": "combs", "laying queen": "yes" },
    "Penn State (Frazier)",
    "read",
    `bees to cover 8 to 10, brood 4 to 6, two boxes; ${UNSAID}`,
  ),
  standard(
    "University of Georgia",
    { "minimum frames": 6, brood: 5, "brood counted as": "combs" },
    "University of Georgia",
    "read",
    "a blanket of bees over 6 to 8; at least 5 combs with brood",
  ),
  standard(
    "CAPA Canada",
    {
      "minimum frames": 8,
      "comb rule": "sum of parts",
      brood: 5,
      "brood counted as": "combs",
      "brood comb covered": 50,
    },
    "Canadian Association of Professional Apiculturists",
    "retold",
    "8 deep, fully covered; 5 to 6 frames that hold brood, half covered; two deeps",
  ),
  standard(
    "Nova Scotia",
    {
      "minimum frames": 8,
      "comb rule": "sum of parts",
      brood: 4,
      "brood counted as": "full frames",
      "laying queen": "yes",
      stores: 2,
      "stores unit": "frames",
    },
    "Nova Scotia Beekeepers' pollination standard",
    "read",
    "full-frame equivalents of bees and brood; 2 frames of honey",
  ),
  standard(
    "New Brunswick",
    {
      "minimum frames": 25000 / sources.beesWellCovered.value,
      brood: 1,
      "brood counted as": "combs",
      "laying queen": "yes",
    },
    "New Brunswick",
    "worked",
    "25,000 to 30,000 bees, here in frames of 2,400; brood present; two boxes; queen",
  ),
  standard(
    "New Zealand kiwifruit",
    { "minimum frames": 12, brood: 4, "brood counted as": "full frames" },
    "New Zealand kiwifruit pollination standard",
    "read",
    "about 30,000 bees; 4 full frames of brood, or 7 at 60 % (7,000 cm2); 8 to 10 hives a hectare",
  ),
  standard(
    "California Food & Agricultural Code",
    {},
    "California Food & Agricultural Code 29190-29195",
    "read",
    "gives no number: strength by active frames of bees, by cluster count or frame count; who inspects, who pays",
  ),
];

/** Whether a published standard has this name. */
export function isStandard(name: string): boolean {
  return STANDARDS.some((standard) => normalise(standard.name) === normalise(name));
}

/**
 * A published standard as a contract: what the source leaves open has the documented default.
 *
 * @throws Refusal that lists the names, or says that the standard gives no number
 * @example standardContract("Almond Board of California").averageFrames // 8
 */
export function standardContract(name: string): Contract {
  const found = STANDARDS.find((standard) => normalise(standard.name) === normalise(name));
  if (!found) {
    const names = STANDARDS.map((standard) => quote(standard.name)).join(", ");
    throw new Refusal(`no Terms are given, and ${quote(name)} is no published standard: ${names}`);
  }
  if (Object.keys(found.terms).length === 0) {
    throw new Refusal(`${quote(found.name)} gives no number to grade by: ${found.remark}`);
  }
  return fromColumn(found.name, new Map(Object.entries(found.terms)));
}
