/** A number as a fraction of whole numbers: sums of money have no rounding of the machine's in them. */
export interface Exact {
  readonly top: bigint;
  /** Over 0. */
  readonly bottom: bigint;
}

/** A number by the decimal digits it is written with: 182.5 is 1825/10. */
export function exact(value: number): Exact {
  const [, sign, whole, part = "", power = "0"] =
    /^(-?)(\d+)(?:\.(\d+))?(?:e([+-]\d+))?$/.exec(String(value)) ?? [];
  const shift = part.length - Number(power);
  const digits = BigInt(`${sign}${whole}${part}`);
  return shift > 0
    ? { top: digits, bottom: 10n ** BigInt(shift) }
    : { top: digits * 10n ** BigInt(-shift), bottom: 1n };
}

export function plus(a: Exact, b: Exact): Exact {
  // Decimals share a power of ten: without this a long sum grows by the digits of every summand.
  if (a.bottom % b.bottom === 0n) {
    return { top: a.top + b.top * (a.bottom / b.bottom), bottom: a.bottom };
  }
  if (b.bottom % a.bottom === 0n) return plus(b, a);
  return { top: a.top * b.bottom + b.top * a.bottom, bottom: a.bottom * b.bottom };
}

export function minus(a: Exact, b: Exact): Exact {
  return plus(a, { top: -b.top, bottom: b.bottom });
}

export function times(a: Exact, b: Exact): Exact {
  return { top: a.top * b.top, bottom: a.bottom * b.bottom };
}

/** @param b - over 0 */
export function over(a: Exact, b: Exact): Exact {
  return { top: a.top * b.bottom, bottom: a.bottom * b.top };
}

export function least(a: Exact, b: Exact): Exact {
  return minus(a, b).top < 0n ? a : b;
}

/** How many of `unit` come next to the value; a half goes away from zero. */
export function inUnits(value: Exact, unit: Exact): bigint {
  const { top, bottom } = over(value, unit);
  const size = top < 0n ? -top : top;
  const rounded = (2n * size + bottom) / (2n * bottom);
  return top < 0n ? -rounded : rounded;
}

/** The nearest number that a cell can hold, the same in whatever terms the fraction stands. */
export function toNumber({ top, bottom }: Exact): number {
  const size = top < 0n ? -top : top;
  // 66 bits and more of quotient, and a last bit that tells of a remainder: one rounding in all.
  const shift = Math.max(0, 66 + bits(bottom) - bits(size));
  const shifted = size << BigInt(shift);
  const quotient = shifted / bottom;
  const sticky = shifted % bottom === 0n ? quotient : quotient | 1n;
  const nearest = Number(sticky) / 2 ** shift;
  return top < 0n ? -nearest : nearest;
}

function bits(value: bigint): number {
  return value.toString(2).length;
}
