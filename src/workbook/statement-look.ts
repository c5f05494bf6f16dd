import type { Alignment, Borders, Font } from "@cj-tech-master/excelts";
import type { Placed, RowStyle, StatementCell } from "../functions/statement-model.js";

const SIZE = 9;
/** Points of a line of text of that size, and of what stands about it. */
const LINE = 12;
const AROUND = 1.5;

const NAME = "Calibri";
const plain: Partial<Font> = { name: NAME, size: SIZE };
const bold: Partial<Font> = { ...plain, bold: true };
const thin = { style: "thin", color: { argb: "FF000000" } } as const;
const hair = { style: "hair", color: { argb: "FF7F7F7F" } } as const;

interface Look {
  readonly font: Partial<Font>;
  readonly border?: Partial<Borders>;
  readonly height?: number;
}

/** Black on white, so that it prints and copies as it is seen. */
export const LOOKS: Readonly<Record<RowStyle, Look>> = {
  title: { font: { ...bold, size: 15 }, height: 22 },
  heading: { font: { ...bold, size: 10.5 }, border: { bottom: thin }, height: 15 },
  headings: { font: bold, border: { bottom: hair } },
  plain: { font: plain, border: { bottom: hair } },
  strong: { font: bold, border: { bottom: hair } },
  note: { font: plain },
  sign: { font: plain, height: 20 },
  gap: { font: plain, height: 6 },
};

export const SIGNED: Partial<Borders> = { bottom: thin };

export function heightOf(style: RowStyle, lines: number): number {
  return LOOKS[style].height ?? lines * LINE + AROUND;
}

/** Numbers in the reader's own signs: a format says where they stand and not which they are. */
export function formatOf(cell: StatementCell, moneyDecimals: number): string {
  switch (cell.kind) {
    case "count":
      return "#,##0";
    case "frames":
      return `0.0${"#".repeat(Math.max(3, cell.decimals ?? 0) - 1)}`;
    case "quantity":
      return "#,##0.0###";
    case "rate":
      return "#,##0.00##";
    case "money":
      return moneyDecimals === 0 ? "#,##0" : `#,##0.${"0".repeat(moneyDecimals)}`;
    case "percent":
      return "0.0 %";
    case "date":
      return "d mmm yyyy";
    // As text, so that what begins with a sign of equality stays text when its cell is edited.
    case "text":
    case "line":
      return "@";
  }
}

export function alignmentOf({ column, cell, side }: Placed, style: RowStyle): Partial<Alignment> {
  return {
    vertical: style === "sign" ? "bottom" : "top",
    horizontal: side,
    wrapText: cell.kind === "text",
    // Off the number that may stand right in the cell before.
    ...(side === "left" && column > 0 && { indent: 1 }),
  };
}
