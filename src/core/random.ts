/**
 * Numbers from 0 to under 1 that look random and are the same for the same seed on any machine:
 * mulberry32, by T. Ettinger (from memory). Good enough to draw pictures; nothing is settled by it.
 *
 * @param seed - a whole number; its last 32 bits count
 * @example randomFrom(1)() // 0.6270739405881613
 */
export function randomFrom(seed: number): () => number {
  let state = seed | 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}
