import type { Alignment, Borders, Font } from "@cj-tech-master/excelts";
import { FONT, GREY, lieOf, LOOKS } from "../functions/statement-look.js";
import type { Placed, RowStyle } from "../functions/statement-model.js";

const LINES = {
  thin: { style: "thin", color: { argb: "FF000000" } },
  hair: { style: "hair", color: { argb: `FF${GREY}` } },
} as const;

export const SIGNED: Partial<Borders> = { bottom: LINES.thin };
export const FIGURE_FONT: Partial<Font> = { ...font("note"), color: { argb: `FF${GREY}` } };

export function font(style: RowStyle): Partial<Font> {
  const { size, isBold } = LOOKS[style];
  return { name: FONT, size, ...(isBold && { bold: true }) };
}

export function border(style: RowStyle): Partial<Borders> | null {
  const { line } = LOOKS[style];
  return line === null ? null : { bottom: LINES[line] };
}

export function alignment(placed: Placed, style: RowStyle): Partial<Alignment> {
  const { vertical, horizontal, isWrapped, isIndented } = lieOf(placed, style);
  return { vertical, horizontal, wrapText: isWrapped, ...(isIndented && { indent: 1 }) };
}
