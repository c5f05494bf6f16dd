import { contractNames } from "../../core/contract-reading.js";
import type { DateSystem } from "../../core/serial.js";
import { Refusal } from "../../core/refusal.js";
import { absolute, within } from "../address.js";
import { cells, literal, type Argument } from "../formula.js";
import { regionKey, type Block, type Region } from "../port.js";
import { texts } from "../texts.js";
import { CellError } from "../../functions/cells.js";
import { contractNamed, contractOfRow } from "../../functions/contracts.js";
import { USABLE } from "../start/terms-sheet.js";
import { unfitName } from "../../functions/formula-text.js";
import { HiveCells } from "../../functions/hive-cells.js";
import type { Contract } from "../../core/contract.js";

/** A Terms table of the workbook. */
export interface Terms {
  readonly region: Region;
  readonly values: Block["values"];
  readonly contracts: readonly string[];
}

/** What a formula is given for its contract: the Terms, and which of them. */
export interface ContractChoice {
  readonly label: string;
  readonly kind: "terms" | "by row" | "standard";
  readonly terms: Terms | null;
  /** Null where the sheet says it row by row. */
  readonly name: string | null;
}

/** The tables of terms among regions; a sheet that a table or name covers already is left away. */
export function contractsIn(regions: readonly Region[], blocks: readonly Block[]): Terms[] {
  const found: Terms[] = [];
  regions.forEach((region, i) => {
    const { values } = blocks[i]!;
    if (found.some((other) => within(other.region.place, region.place) !== null)) return;
    try {
      found.push({ region, values, contracts: contractNames(values) });
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
    }
  });
  return found;
}

/**
 * What a sheet may go out under: each contract of the workbook, row by row where the sheet has a
 * column for it, then the published standards that give numbers.
 */
export function choicesOf(terms: readonly Terms[], hasContracts: boolean): ContractChoice[] {
  const several = terms.length > 1;
  const inTerms = terms.flatMap((table) =>
    table.contracts.map((name): ContractChoice => ({
      label: several ? `${name} (${table.region.name})` : name,
      kind: "terms",
      terms: table,
      name,
    })),
  );
  const byRow = (terms.length === 0 ? [null] : terms).map((table): ContractChoice => {
    return { label: texts.columns.byRow, kind: "by row", terms: table, name: null };
  });
  const standards = USABLE.map(({ name }): ContractChoice => {
    return { label: name, kind: "standard", terms: null, name };
  });
  return [...(hasContracts ? byRow : []), ...inTerms, ...standards];
}

/** From when the workbook counts its days, as all of its contracts say. */
export function dateSystemOf(terms: readonly Terms[]): DateSystem {
  const contracts = choicesOf(terms, false).flatMap((choice) =>
    choice.kind === "terms" ? [contractAt(choice, null)(0)] : [],
  );
  const is1904 = contracts.every((contract) => contract?.dateSystem === 1904);
  return contracts.length > 0 && is1904 ? 1904 : 1900;
}

/** What tells one choice from another while the workbook changes. */
export function contractKey({ kind, terms, name }: ContractChoice): string {
  return [kind, terms === null ? "" : regionKey(terms.region), name ?? ""].join(" / ");
}

/**
 * The contract of each row under a choice; rows count from 0, without the headings. Null where the
 * row names none that can be read.
 */
export function contractAt(
  choice: ContractChoice,
  byRow: HiveCells | null,
): (i: number) => Contract | null {
  const names = choice.kind === "by row" ? byRow : new HiveCells("contract", [[choice.name]]);
  const contractOf = once(() => contractOfRow(choice.terms?.values ?? null, names));
  return (i) => {
    try {
      return contractOf()(i);
    } catch (error) {
      if (error instanceof Refusal || error instanceof CellError) return null;
      throw error;
    }
  };
}

/**
 * The one contract of a choice; null where the sheet says it row by row.
 *
 * @throws Refusal that names the term that is at fault, or a name that no formula can hold
 */
export function contractOfChoice(choice: ContractChoice): Contract | null {
  if (choice.kind === "by row") return null;
  const unfit = choice.name === null ? null : unfitName(choice.name);
  if (unfit !== null) throw new Refusal(unfit);
  return contractNamed(choice.terms?.values ?? null, choice.name);
}

/** The terms as a formula on the sheet `from` takes them: a name, a whole table, or its cells. */
export function termsArgument({ terms }: ContractChoice, from: string): Argument {
  if (terms === null) return literal(null);
  const { kind, name, place } = terms.region;
  const written = { name, table: `${name}[#All]`, sheet: absolute(place, from) }[kind];
  return cells(written, terms.values);
}

/** The contract's name as the same formula takes it. */
export function nameArgument({ name }: ContractChoice): Argument {
  return name === null ? literal(null) : { ...literal(name), value: [[name]] };
}

function once<T>(work: () => T): () => T {
  let done: { readonly value: T } | null = null;
  return () => (done ??= { value: work() }).value;
}
