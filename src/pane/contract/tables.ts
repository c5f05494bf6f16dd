import { contractsIn } from "../columns/contracts.js";
import type { Workbook } from "../port.js";
import type { TermsTable } from "./changes.js";

/** The Terms tables of a workbook, and the sign that its user types. */
export interface TermsTables {
  readonly tables: readonly TermsTable[];
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
  return { tables, sign };
}
