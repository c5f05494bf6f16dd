import { sha256 } from "@noble/hashes/sha2.js";
import { bytesToHex } from "@noble/hashes/utils.js";
import { plural } from "./plural.js";
import { quote, Refusal } from "./refusal.js";
import { normalise } from "./text.js";

/** A hive or a pallet with the ticket that it drew. */
export interface Ticket {
  /** As it was given. */
  readonly name: string;
  /** 64 digits in base 16, from the least on the first to open. */
  readonly ticket: string;
}

/**
 * The ticket of a hive or a pallet: the SHA-256 (NIST, FIPS 180-4) of three lines, the two words and
 * the name, each in lower case with single spaces, in UTF-8. Anyone can make it again with other
 * tools: printf 'apple\nbloom\nh01' | sha256sum.
 *
 * @example ticketOf(["Apple", "bloom"], "H01").slice(0, 8) // "f755e8a1"
 */
export function ticketOf(words: readonly [string, string], name: string): string {
  return bytesToHex(sha256(utf8([...words, name].map(normalise).join("\n"))));
}

/**
 * Draws some of a list so that nobody chose: the least tickets, in their order.
 *
 * Rivest's consistent sampling as it is used to audit elections (R. Rivest, consistent_sampler,
 * 2018): each name has a ticket of its own, so that the order of the list does not matter, and who
 * draws more later draws the same ones first. Every choice is as likely as another as long as
 * SHA-256 looks random and both words are settled after the list, each unseen by the other party.
 *
 * @param names - each once; what differs in case or spaces alone is the same
 * @param words - one from each party
 * @param kind - what the names are of, for messages
 * @throws Refusal for a blank word, a name that stands twice, and fewer names than are asked for
 */
export function drawNames(
  names: readonly string[],
  howMany: number,
  words: readonly [string, string],
  kind: "hive" | "pallet" = "hive",
): Ticket[] {
  if (!Number.isInteger(howMany) || howMany < 1) {
    throw new Refusal(`${howMany} ${kind}s: give a whole number from 1 on`);
  }
  if (words.some((word) => normalise(word) === "")) {
    throw new Refusal("a seed is blank: each party gives a word");
  }
  checkOnceEach(names, kind);
  if (howMany > names.length) {
    throw new Refusal(
      `the list has ${plural(names.length, kind)}, fewer than the ${howMany} asked for`,
    );
  }
  const tickets = names.map((name) => ({ name, ticket: ticketOf(words, name) }));
  return tickets.sort((one, other) => (one.ticket < other.ticket ? -1 : 1)).slice(0, howMany);
}

/** Refuses a name that stands twice, in case and spaces apart. */
export function checkOnceEach(names: readonly string[], kind: "hive" | "pallet"): void {
  const known = new Set<string>();
  for (const name of names) {
    const key = normalise(name);
    if (known.has(key)) throw new Refusal(`${kind} ${quote(name)} stands twice: give each once`);
    known.add(key);
  }
}

/** The language's own way to UTF-8: TextEncoder belongs to pages and is not in every host. */
function utf8(text: string): Uint8Array {
  const wellFormed = text.replace(/\p{Cs}/gu, "\uFFFD");
  const signs = encodeURIComponent(wellFormed).match(/%..|./g) ?? [];
  return Uint8Array.from(signs, (sign) =>
    sign.startsWith("%") ? parseInt(sign.slice(1), 16) : sign.charCodeAt(0),
  );
}
