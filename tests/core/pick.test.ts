import { sha256 } from "@noble/hashes/sha2.js";
import { bytesToHex, utf8ToBytes } from "@noble/hashes/utils.js";
import fc from "fast-check";
import { createHash } from "node:crypto";
import { describe, expect, it } from "vitest";
import { drawNames, ticketOf } from "../../src/core/pick.js";
import { Refusal } from "../../src/core/refusal.js";
import { normalise } from "../../src/core/text.js";

const YARD = Array.from({ length: 12 }, (_, i) => `H${String(i + 1).padStart(2, "0")}`);
const WORDS = ["apple", "bloom"] as const;
const drawn = (
  names: readonly string[],
  howMany: number,
  words: readonly [string, string] = WORDS,
) => drawNames(names, howMany, words).map(({ name }) => name);

describe("SHA-256", () => {
  it.each([
    // Published with FIPS 180-4 as examples; from memory, but for "abc", which was read.
    ["", "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855"],
    ["abc", "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"],
    [
      "abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq",
      "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1",
    ],
    ["a".repeat(1e6), "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0"],
  ])("gives the published digest", (text, digest) => {
    expect(bytesToHex(sha256(utf8ToBytes(text)))).toBe(digest);
  });
});

describe("a ticket", () => {
  it("is the SHA-256 of three lines, as another implementation has it", () => {
    const plain = fc.stringMatching(/^[a-z0-9äéжβ蜂🐝]{1,12}( [a-z0-9]{1,5})?$/u);
    fc.assert(
      fc.property(plain, plain, plain, (one, two, id) => {
        const text = `${one}\n${two}\n${id}`;
        const other = createHash("sha256").update(text, "utf8").digest("hex");
        expect(ticketOf([one, two], id)).toBe(other);
      }),
    );
  });

  it("is made of any text, whole or cut amid a sign, as the platform writes it in UTF-8", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary", maxLength: 6 }), (id) => {
        const text = `a\nb\n${normalise(id)}`;
        const other = createHash("sha256").update(new TextEncoder().encode(text)).digest("hex");
        expect(ticketOf(["a", "b"], id)).toBe(other);
      }),
    );
    const half = createHash("sha256").update("a\nb\n\uFFFD").digest("hex");
    expect(ticketOf(["a", "b"], "\uD83D")).toBe(half);
  });

  it("does not hang on case, width or spaces", () => {
    const ticket = ticketOf(["rain gauge", "17"], "h 01");
    expect(ticketOf(["  Rain \u00A0 GAUGE", "17 "], " H  01\t")).toBe(ticket);
    expect(ticketOf(["ｒａｉｎ gauge", "１７"], "h 01")).toBe(ticket);
  });

  it("hangs on both words, on which is whose, and on where each ends", () => {
    const all = [
      ticketOf(["apple", "bloom"], "h01"),
      ticketOf(["bloom", "apple"], "h01"),
      ticketOf(["applebloom", "h"], "01"),
      ticketOf(["apple", "bloomh"], "01"),
      ticketOf(["apples", "bloom"], "h01"),
      ticketOf(["apple", "blooms"], "h01"),
    ];
    expect(new Set(all).size).toBe(all.length);
  });
});

describe("a drawing", () => {
  it("can be made again with another tool", () => {
    // GNU coreutils 9.1: for i in h01 .. h06: printf "apple\nbloom\n$i" | sha256sum, sorted.
    const tickets = drawNames(YARD.slice(0, 6), 6, WORDS).map(
      ({ name, ticket }) => `${name} ${ticket.slice(0, 16)}`,
    );
    expect(tickets).toEqual([
      "H04 4390f61258c7bcac",
      "H05 637e33fe829a7e80",
      "H06 9703d9a41106d999",
      "H02 a964c6510ff81e0f",
      "H03 d8e714f553ea74a0",
      "H01 f755e8a15682c865",
    ]);
  });

  it("is the same in whatever order the list stands", () => {
    fc.assert(
      fc.property(fc.shuffledSubarray(YARD, { minLength: 12 }), (list) => {
        expect(drawn(list, 5)).toEqual(drawn(YARD, 5));
      }),
    );
  });

  it("only grows where more are asked for", () => {
    for (let n = 1; n < 12; n++) expect(drawn(YARD, n + 1).slice(0, n)).toEqual(drawn(YARD, n));
    expect(drawn(YARD, 12).sort()).toEqual(YARD);
  });

  it("keeps the order of the others where a hive is taken off the list", () => {
    const without = YARD.filter((id) => id !== "H07");
    expect(drawn(without, 11)).toEqual(drawn(YARD, 12).filter((id) => id !== "H07"));
  });

  it("gives the id back as it was written", () => {
    expect(drawn([" H 01 "], 1)).toEqual([" H 01 "]);
  });

  // Recorded from the first implementation: they prove nothing, and only keep a drawing that was
  // printed checkable for years.
  it.each([
    ["apple", "bloom", ["H12", "H07", "H04", "H08"]],
    ["Rain gauge", "17", ["H11", "H04", "H05", "H08"]],
    ["Über", "Blüte", ["H12", "H03", "H10", "H11"]],
  ])("stays as it was first made: %s, %s", (one, two, ids) => {
    expect(drawn(YARD, 4, [one, two])).toEqual(ids);
  });
});

describe("over many words", () => {
  const TEN = YARD.slice(0, 10);
  const RUNS = 9000;
  const drawings = Array.from({ length: RUNS }, (_, i) =>
    drawn(TEN, 2, [`grower ${i}`, `beekeeper ${(i * 7919) % 104729}`]),
  );
  /** Pearson's statistic against equal chances. */
  const chiSquare = (keys: readonly string[], cells: number) => {
    const counts = new Map<string, number>();
    for (const key of keys) counts.set(key, (counts.get(key) ?? 0) + 1);
    expect(counts.size).toBe(cells);
    const expected = keys.length / cells;
    return [...counts.values()].reduce((sum, n) => sum + (n - expected) ** 2 / expected, 0);
  };

  // Limits: the upper 0.1 % of chi-square, printed tables (from memory): 9 degrees 27.88, 44 78.75,
  // 89 135.98.
  it("each hive is as likely the first", () => {
    expect(
      chiSquare(
        drawings.map(([first]) => first!),
        10,
      ),
    ).toBeLessThan(27.88);
  });

  it("each hive is as likely the second", () => {
    expect(
      chiSquare(
        drawings.map(([, second]) => second!),
        10,
      ),
    ).toBeLessThan(27.88);
  });

  it("each pair is as likely drawn", () => {
    expect(
      chiSquare(
        drawings.map((pair) => [...pair].sort().join()),
        45,
      ),
    ).toBeLessThan(78.75);
  });

  it("each pair is as likely in each order", () => {
    expect(
      chiSquare(
        drawings.map((pair) => pair.join()),
        90,
      ),
    ).toBeLessThan(135.98);
  });

  it("a change of one letter draws as if anew", () => {
    // Of 2 drawn twice from 10, both shared 1 in 45, one shared 16 in 45 (hypergeometric).
    const again = drawings.map((pair, i) => {
      const other = drawn(TEN, 2, [`grower ${i}`, `beekeeper ${(i * 7919) % 104729}x`]);
      return String(other.filter((id) => pair.includes(id)).length);
    });
    const share = (shared: string) => again.filter((n) => n === shared).length / RUNS;
    expect(Math.abs(share("2") - 1 / 45)).toBeLessThan(0.006);
    expect(Math.abs(share("1") - 16 / 45)).toBeLessThan(0.02);
  });
});

describe("what cannot be drawn is refused by name", () => {
  it.each([
    ["more than the list has", YARD, 13, WORDS, /12 hives, fewer than the 13/],
    ["an id twice", ["H01", "H02", "H01"], 1, WORDS, /^hive "H01" stands twice: give each once$/],
    ["an id twice but for case", ["H01", "H02", " h01"], 1, WORDS, /hive " h01" stands twice/],
    ["a blank first word", YARD, 1, [" ", "bloom"], /^a seed is blank: each party gives a word$/],
    ["a blank second word", YARD, 1, ["apple", ""], /^a seed is blank: each party gives a word$/],
    ["half a hive", YARD, 1.5, WORDS, /^1.5 hives: give a whole number from 1 on$/],
    ["none", YARD, 0, WORDS, /0 hives/],
  ] as const)("%s", (_, names, howMany, words, message) => {
    expect(() => drawNames(names, howMany, words)).toThrow(Refusal);
    expect(() => drawNames(names, howMany, words)).toThrow(message);
  });

  it("calls pallets pallets", () => {
    expect(() => drawNames(["P1"], 2, WORDS, "pallet")).toThrow(
      "the list has 1 pallet, fewer than the 2 asked for",
    );
    expect(() => drawNames(["P1"], 0, WORDS, "pallet")).toThrow("0 pallets: give a whole number");
    expect(() => drawNames(["P1", "p1"], 1, WORDS, "pallet")).toThrow('pallet "p1" stands twice');
  });
});
