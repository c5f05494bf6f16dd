import { contractNames } from "../../core/contract-reading.js";
import { Refusal } from "../../core/refusal.js";
import { normalise } from "../../core/text.js";
import { contractsIn } from "../columns/contracts.js";
import { address, within } from "../address.js";
import type { Block, Region, Workbook } from "../port.js";
import { texts } from "../texts.js";
import type { TermsTable } from "./changes.js";

/** The Terms tables of a workbook, and the sign that its user types. */
export interface TermsTables {
  readonly tables: readonly TermsTable[];
  /** Of each table that begins like Terms and cannot be read: where it is, and why. */
  readonly unread: readonly string[];
  readonly sign: "." | ",";
}

/** Reads every Terms table; to tell them from other tables their cells have to be read. */
export async function readTables(workbook: Workbook): Promise<TermsTables> {
  const regions = await workbook.regions();
  const [blocks, sign] = await Promise.all([
    workbook.read(regions.map(({ place }) => place)),
    workbook.decimalSign(),
  ]);
  const tables = contractsIn(regions, blocks).map(({ region, contracts }) => ({
    region,
    contracts,
    block: blocks[regions.indexOf(region)]!,
  }));
  return { tables, unread: unreadIn(regions, blocks), sign };
}

function unreadIn(regions: readonly Region[], blocks: readonly Block[]): string[] {
  const seen: Region[] = [];
  return regions.flatMap((region, i) => {
    const { values } = blocks[i]!;
    const corner = values[0]?.[0];
    const isTerms = typeof corner === "string" && ["term", "terms"].includes(normalise(corner));
    if (!isTerms || seen.some(({ place }) => within(place, region.place) !== null)) return [];
    seen.push(region);
    try {
      contractNames(values);
      return [];
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      return [texts.contract.unread(address(region.place), error.message)];
    }
  });
}
