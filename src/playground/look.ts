import type { IBorderStyleData, IStyleData } from "@univerjs/core";
import type { Cell, Color, Style } from "@cj-tech-master/excelts";

/** Office's own theme, in the order in which files number its colours. */
const THEME = "FFFFFF 000000 E7E6E6 44546A 4472C4 ED7D31 A5A5A5 FFC000 5B9BD5 70AD47".split(" ");
const ACROSS = { left: 1, center: 2, centerContinuous: 2, right: 3, justify: 4, distributed: 6 };
const DOWN = { top: 1, middle: 2, bottom: 3 };

/** How a cell of a file looks, as far as the grid draws it. */
export function lookOf({ style }: Cell): IStyleData {
  const { numFmt, font, fill, alignment, border } = style as Partial<Style>;
  const pattern = typeof numFmt === "string" ? numFmt : numFmt?.formatCode;
  const paper = fill?.type === "pattern" && fill.pattern === "solid" ? colour(fill.fgColor) : null;
  const ink = colour(font?.color);
  return {
    ...(pattern && pattern !== "General" && { n: { pattern } }),
    ...(font?.bold && { bl: 1 }),
    ...(font?.italic && { it: 1 }),
    ...(font?.underline && { ul: { s: 1 } }),
    ...(font?.size && { fs: font.size }),
    ...(ink && { cl: { rgb: ink } }),
    ...(paper && { bg: { rgb: paper } }),
    ...(alignment?.horizontal &&
      alignment.horizontal in ACROSS && {
        ht: ACROSS[alignment.horizontal as keyof typeof ACROSS],
      }),
    ...(alignment?.vertical &&
      alignment.vertical in DOWN && { vt: DOWN[alignment.vertical as keyof typeof DOWN] }),
    ...(alignment?.wrapText && { tb: 3 }),
    ...(border && { bd: lines(border) }),
  };
}

/** Puts back onto a cell of a file what of its look was changed in the grid. */
export function applyLook(cell: Cell, before: IStyleData, after: IStyleData): void {
  const changed = (key: keyof IStyleData) =>
    JSON.stringify(before[key] ?? null) !== JSON.stringify(after[key] ?? null);
  if (changed("n")) cell.numFmt = after.n?.pattern ?? "General";
  if (changed("bl") || changed("it") || changed("cl") || changed("fs") || changed("ul")) {
    cell.font = {
      ...cell.font,
      bold: after.bl === 1,
      italic: after.it === 1,
      underline: after.ul?.s === 1,
      ...(after.fs && { size: after.fs }),
      ...(after.cl?.rgb && { color: { argb: argb(after.cl.rgb) } }),
    };
  }
  if (changed("bg")) {
    cell.fill = after.bg?.rgb
      ? { type: "pattern", pattern: "solid", fgColor: { argb: argb(after.bg.rgb) } }
      : { type: "pattern", pattern: "none" };
  }
  if (changed("ht") || changed("tb")) {
    const horizontal = (["left", "center", "right"] as const)[(after.ht ?? 0) - 1];
    cell.alignment = {
      ...cell.alignment,
      ...(horizontal && { horizontal }),
      wrapText: after.tb === 3,
    };
  }
}

function colour(given: Partial<Color> | undefined): string | null {
  if (!given) return null;
  if (given.argb) return `#${given.argb.slice(-6)}`;
  const theme = given.theme === undefined ? undefined : THEME[given.theme];
  return theme ? tinted(theme, (given as { tint?: number }).tint ?? 0) : null;
}

/** A tint from -1 to 1 takes a colour towards black or towards white. */
function tinted(rgb: string, tint: number): string {
  const parts = [0, 2, 4].map((i) => {
    const part = parseInt(rgb.slice(i, i + 2), 16);
    const moved = tint < 0 ? part * (1 + tint) : part + (255 - part) * tint;
    return Math.round(moved).toString(16).padStart(2, "0");
  });
  return `#${parts.join("")}`;
}

function argb(rgb: string): string {
  const [, r, g, b] = /^rgba?\((\d+),\s*(\d+),\s*(\d+)/.exec(rgb) ?? [];
  const hex = r
    ? [r, g, b].map((part) => Number(part).toString(16).padStart(2, "0")).join("")
    : rgb.replace("#", "");
  return `FF${hex.toUpperCase()}`;
}

function lines(border: NonNullable<Style["border"]>): IStyleData["bd"] {
  const line = (side: { style?: string; color?: Partial<Color> } | undefined) =>
    side?.style
      ? ({
          s: side.style === "medium" ? 8 : 1,
          cl: { rgb: colour(side.color) ?? "#000000" },
        } as IBorderStyleData)
      : null;
  return {
    t: line(border.top),
    r: line(border.right),
    b: line(border.bottom),
    l: line(border.left),
  };
}
