/** Letters that are kept before they are made bytes: the library hands each tag on by itself. */
const ENOUGH = 1 << 16;

const encoder = new TextEncoder();

/** Takes the place of the library's zip: keeps the parts that it writes, unpacked. */
export class GatheredParts {
  readonly parts = new Map<string, Uint8Array>();

  append(data: string | Uint8Array, { name, base64 }: { name: string; base64?: boolean }): void {
    if (typeof data !== "string") this.parts.set(name, data);
    else this.parts.set(name, base64 ? fromBase64(data) : encoder.encode(data));
  }

  createEntry(name: string): { write(text: string): void; end(): void } {
    const pieces: Uint8Array[] = [];
    let text = "";
    return {
      write(more) {
        text += more;
        if (text.length < ENOUGH) return;
        pieces.push(encoder.encode(text));
        text = "";
      },
      end: () => {
        pieces.push(encoder.encode(text));
        this.parts.set(name, joined(pieces));
      },
    };
  }

  waitForDrain(): Promise<void> {
    return Promise.resolve();
  }
}

function fromBase64(text: string): Uint8Array {
  return Uint8Array.from(atob(text), (sign) => sign.charCodeAt(0));
}

function joined(pieces: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(pieces.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}
