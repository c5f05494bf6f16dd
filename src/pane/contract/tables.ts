import { contractNames } from "../../core/contract-reading.js";
import { Refusal } from "../../core/refusal.js";
import { isTerm } from "../../functions/sheet-end.js";
import { contractsIn } from "../columns/contracts.js";
import { headingOf } from "../columns/headings-row.js";
import { address, cellOf, within } from "../address.js";
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

/**
 * Reads every Terms table.
 *
 * @param known - the regions of the workbook, where they are known already
 */
export async function readTables(
  workbook: Workbook,
  known?: readonly Region[],
): Promise<TermsTables> {
  const regions = known ?? (await workbook.regions());
  // A sheet of data may have millions of cells: a corner tells whether the rest is to be read.
  const corners = await workbook.read(regions.map(({ place }) => cellOf(place, 0, 0)));
  const terms = regions.filter((_, i) => isTerm(headingOf(corners[i]!.values[0]![0])));
  const [blocks, sign] = await Promise.all([
    terms.length === 0 ? [] : workbook.read(terms.map(({ place }) => place)),
    workbook.decimalSign(),
  ]);
  const tables = contractsIn(terms, blocks).map(({ region, contracts }) => ({
    region,
    contracts,
    block: blocks[terms.indexOf(region)]!,
  }));
  return { tables, unread: unreadIn(terms, blocks), sign };
}

function unreadIn(regions: readonly Region[], blocks: readonly Block[]): string[] {
  const seen: Region[] = [];
  return regions.flatMap((region, i) => {
    if (seen.some(({ place }) => within(place, region.place) !== null)) return [];
    seen.push(region);
    try {
      contractNames(blocks[i]!.values);
      return [];
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      return [texts.contract.unread(address(region.place), error.message)];
    }
  });
}
