/** Says on a terminal what is being done, once that takes longer than a second. */
export interface Progress {
  step(what: string): void;
  tick(): void;
  done(): void;
}

const PATIENCE = 1000;
const BETWEEN = 200;

/** `write` puts text on the terminal; null where nobody watches. */
export function progressOn(write: ((text: string) => void) | null): Progress {
  const begun = performance.now();
  let what = "";
  let count = 0;
  let shown = 0;
  const show = (): void => {
    const now = performance.now();
    if (!write || now - begun < PATIENCE || now - shown < BETWEEN) return;
    shown = now;
    write(`\r\x1b[K${what}${count > 0 ? ` (${count.toLocaleString("en")})` : ""}`);
  };
  return {
    step(next) {
      what = next;
      count = 0;
      shown = 0;
      show();
    },
    tick() {
      count++;
      show();
    },
    done() {
      if (shown > 0) write?.("\r\x1b[K");
    },
  };
}
