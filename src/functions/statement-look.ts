import type { Placed, RowStyle, StatementCell } from "./statement-model.js";

/** How a row looks; black on white, so that it prints and copies as it is seen. */
export interface Look {
  /** Of its letters, in points. */
  readonly size: number;
  readonly isBold: boolean;
  /** The line under it: `thin` is black, `hair` grey. */
  readonly line: "thin" | "hair" | null;
  /** In points; null where the lines of its text decide. */
  readonly height: number | null;
}

export const FONT = "Calibri";
/** Beside the page, for what is not printed. */
export const GREY = "7F7F7F";
const SIZE = 9;
/** Points of a line of text of that size, and of what stands about it. */
const LINE = 12;
const AROUND = 1.5;

const plain: Look = { size: SIZE, isBold: false, line: null, height: null };

export const LOOKS: Readonly<Record<RowStyle, Look>> = {
  title: { ...plain, isBold: true, size: 15, height: 22 },
  heading: { ...plain, isBold: true, size: 10.5, line: "thin", height: 15 },
  headings: { ...plain, isBold: true, line: "hair" },
  plain: { ...plain, line: "hair" },
  strong: { ...plain, isBold: true, line: "hair" },
  note: plain,
  sign: { ...plain, height: 20 },
  gap: { ...plain, height: 6 },
};

/** Of a page, in inches. */
export const MARGINS = {
  left: 0.55,
  right: 0.55,
  top: 0.5,
  bottom: 0.6,
  header: 0.3,
  footer: 0.3,
} as const;

/** A title as a footer holds it, where the sign & begins a code. */
export function footerOf(title: string): string {
  return title.slice(0, 120).replaceAll("&", "&&");
}

/** In points. */
export function heightOf(style: RowStyle, lines: number): number {
  return LOOKS[style].height ?? lines * LINE + AROUND;
}

/** Spreadsheets have shown a longer text in a cell of text as `####` (from memory). */
const LONGEST_AS_TEXT = 255;

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
      return cell.value.length > LONGEST_AS_TEXT ? "General" : "@";
    case "line":
      return "@";
  }
}

/** How what stands in a cell lies in it. */
export interface Lie {
  readonly vertical: "top" | "bottom";
  readonly horizontal: "left" | "right";
  readonly isWrapped: boolean;
  readonly isIndented: boolean;
}

export function lieOf({ column, cell, side }: Placed, style: RowStyle): Lie {
  return {
    vertical: style === "sign" ? "bottom" : "top",
    horizontal: side,
    isWrapped: cell.kind === "text",
    // Off the number that may stand right in the cell before.
    isIndented: side === "left" && column > 0,
  };
}
