/** Lays out rows in columns; the last column takes what is left of the width, and wraps. */
export function textTable(rows: readonly (readonly string[])[], width: number): string[] {
  const columns = rows[0]?.length ?? 0;
  const widths = Array.from({ length: columns }, (_, k) =>
    Math.max(...rows.map((row) => row[k]!.length)),
  );
  const numeric = widths.map((_, k) => rows.slice(1).every((row) => /^[\d.,]*$/.test(row[k]!)));
  const before = widths.slice(0, -1).reduce((sum, w) => sum + w + GAP.length, 0);
  const room = Math.max(LEAST_ROOM, width - before);
  return rows.flatMap((row) => {
    const cells = row.slice(0, -1).map((cell, k) => pad(cell, widths[k]!, numeric[k]!));
    const [first = "", ...more] = wrap(row.at(-1)!, room);
    const indent = " ".repeat(Math.min(before, Math.max(0, width - room)));
    return [[...cells, first].join(GAP), ...more.map((line) => indent + line)].map((l) =>
      l.trimEnd(),
    );
  });
}

const GAP = "  ";
const LEAST_ROOM = 20;

function pad(text: string, width: number, right: boolean): string {
  return right ? text.padStart(width) : text.padEnd(width);
}

/** Cuts a text into lines at its spaces; a word longer than a line is left whole. */
export function wrap(text: string, width: number): string[] {
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

/** A paragraph within the width, its further lines set in. */
export function paragraph(text: string, width: number, indent = ""): string[] {
  return wrap(text, width - indent.length - 2).map(
    (line, i) => (i === 0 ? indent : `${indent}  `) + line,
  );
}
