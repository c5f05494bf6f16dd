import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { exact, inUnits, least, minus, over, plus, times, toNumber } from "../../src/core/exact.js";

const fraction = (top: bigint, bottom: bigint) => ({ top, bottom });

describe("a number as a fraction", () => {
  it.each([
    [0, 0n, 1n],
    [182.5, 1825n, 10n],
    [-182.5, -1825n, 10n],
    [42, 42n, 1n],
    // Written as 1e-7, 1.25e-7, 1e+21 and 1.5e+21.
    [0.0000001, 1n, 10n ** 7n],
    [0.000000125, 125n, 10n ** 9n],
    [1e21, 10n ** 21n, 1n],
    [1.5e21, 15n * 10n ** 20n, 1n],
  ])("%d is that of the digits it is written with", (value, top, bottom) =>
    expect(exact(value)).toEqual(fraction(top, bottom)),
  );

  it("comes back as the same number", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e200, max: 1e200, noNaN: true }).filter((x) => Math.abs(x) > 1e-200),
        (value) => {
          expect(toNumber(exact(value))).toBe(value);
        },
      ),
    );
    expect(toNumber(exact(0))).toBe(0);
  });

  it("of whole numbers is the nearest that the machine has, in whatever terms it stands", () => {
    const whole = fc.integer({ min: 1, max: Number.MAX_SAFE_INTEGER });
    fc.assert(
      fc.property(whole, whole, fc.bigInt({ min: 1n, max: 10n ** 40n }), (a, b, terms) => {
        // Division in the machine is rounded to the nearest by IEEE 754.
        expect(toNumber(fraction(BigInt(a) * terms, BigInt(b) * terms))).toBe(a / b);
        expect(toNumber(fraction(BigInt(-a) * terms, BigInt(b) * terms))).toBe(-a / b);
      }),
    );
  });
});

describe("sums of fractions", () => {
  const [tenth, quarter, third] = [exact(0.1), exact(0.25), fraction(1n, 3n)];

  it("are exact, and of decimals no longer than their digits", () => {
    expect(plus(tenth, quarter)).toEqual(fraction(35n, 100n));
    expect(plus(quarter, tenth)).toEqual(fraction(35n, 100n));
    expect(plus(third, tenth)).toEqual(fraction(13n, 30n));
    expect(minus(quarter, tenth)).toEqual(fraction(15n, 100n));
    expect(minus(tenth, third)).toEqual(fraction(-7n, 30n));
  });

  it("go with products and quotients", () => {
    expect(times(third, quarter)).toEqual(fraction(25n, 300n));
    expect(over(third, quarter)).toEqual(fraction(100n, 75n));
  });

  it("have a lesser of two", () => {
    expect(least(tenth, quarter)).toBe(tenth);
    expect(least(quarter, tenth)).toBe(tenth);
    expect(least(exact(-1), tenth)).toEqual(exact(-1));
  });
});

describe("a value in units", () => {
  it.each([
    [182.4, 1, 182n],
    [182.5, 1, 183n],
    [-182.5, 1, -183n],
    [-182.4, 1, -182n],
    [0, 1, 0n],
    // 10.07 is 201.4 times 0.05; 10.075 is 201.5 times.
    [10.07, 0.05, 201n],
    [10.075, 0.05, 202n],
    // 1.005 is under 100.5 hundredths in the machine, and is not as written.
    [1.005, 0.01, 101n],
  ])("%d by %d is the nearest number of them, a half away from zero", (value, unit, units) =>
    expect(inUnits(exact(value), exact(unit))).toBe(units),
  );
});
