/**
 * Lays out rows in columns, headings first. The last column takes what is left of the width, and
 * wraps; where that is too little, it stands set in under its row.
 */
export function textTable(rows: readonly (readonly string[])[], width: number): string[] {
  const columns = (rows[0]?.length ?? 1) - 1;
  const widths = Array.from({ length: columns }, (_, k) =>
    rows.reduce((most, row) => Math.max(most, row[k]!.length), 0),
  );
  const numeric = widths.map((_, k) => rows.slice(1).every((row) => /^[\d.,?]*$/.test(row[k]!)));
  const before = widths.reduce((sum, w) => sum + w + GAP.length, 0);
  const beside = width - before >= LEAST_ROOM;
  const indent = beside ? before : UNDER;
  return rows.flatMap((row, r) => {
    const cells = row.slice(0, -1).map((cell, k) => pad(cell, widths[k]!, numeric[k]!));
    const last = row.at(-1)!;
    const lines = wrap(last, width - indent).map((line) => " ".repeat(indent) + line);
    if (beside) lines[0] = [...cells, lines[0]!.trimStart()].join(GAP);
    else lines.splice(0, last === "" || r === 0 ? lines.length : 0, cells.join(GAP));
    return lines.map((line) => line.trimEnd());
  });
}

const GAP = "  ";
const LEAST_ROOM = 20;
const UNDER = 6;

function pad(text: string, width: number, right: boolean): string {
  return right ? text.padStart(width) : text.padEnd(width);
}

/** Cuts a text into lines at its spaces; a word longer than a line is left whole. */
export function wrap(text: string, width: number): string[] {
  if (text.length <= width && !UNEVEN.test(text)) return [text];
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(/\s+/)) {
    if (line !== "" && line.length + 1 + word.length > width) {
      lines.push(line);
      line = "";
    }
    line += line === "" ? word : ` ${word}`;
  }
  return [...lines, line];
}

/** Spaces that would not stay as they are: doubled ones, tabs and line ends. */
const UNEVEN = /\s\s|[^\S ]|^\s|\s$/;

/** A paragraph within the width, its further lines set in. */
export function paragraph(text: string, width: number, indent = ""): string[] {
  return wrap(text, width - indent.length - 2).map(
    (line, i) => (i === 0 ? indent : `${indent}  `) + line,
  );
}
