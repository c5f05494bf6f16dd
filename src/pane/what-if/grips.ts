/** By what a threshold's handle is taken hold of: its own stretches of its line. */
export interface Grip {
  readonly left: number;
  readonly right: number;
  /** From its name down, and its share of the line that it has with those on its place. */
  readonly stretches: readonly (readonly [top: number, bottom: number])[];
  /** The height of its knob, in the middle of that share. */
  readonly knob: number;
}

interface Lines {
  /** The height of the line that each name has for its own, one under another. */
  readonly line: number;
  readonly floor: number;
  /** How far to its left and right a line is taken hold of. */
  readonly reach: number;
  /** Lines nearer than this stand on one place: they share its height, not its width. */
  readonly near: number;
}

/** Grips that do not lie over each other, so that what is pressed is what is moved. */
export function gripsOf(xs: readonly number[], { line, floor, reach, near }: Lines): Grip[] {
  const places = placesOf(xs, near);
  const [bars, grips] = [xs.length * line, Array<Grip>(xs.length)];
  places.forEach((handles, p) => {
    const [first, last] = endsOf(xs, handles);
    const before = p === 0 ? -Infinity : endsOf(xs, places[p - 1]!)[1];
    const after = p === places.length - 1 ? Infinity : endsOf(xs, places[p + 1]!)[0];
    const left = Math.max(first - reach, (before + first) / 2);
    const right = Math.min(last + reach, (last + after) / 2);
    const share = (floor - bars) / handles.length;
    handles.forEach((handle, k) => {
      const names = [handle * line, (handles[k + 1] ?? xs.length) * line] as const;
      const own = [bars + k * share, bars + (k + 1) * share] as const;
      grips[handle] = { left, right, stretches: [names, own], knob: (own[0] + own[1]) / 2 };
    });
  });
  return grips;
}

/** The handles of each place from left to right, those of one place in their order. */
function placesOf(xs: readonly number[], near: number): number[][] {
  const places: number[][] = [];
  const byPlace = xs.map((_, handle) => handle).sort((a, b) => xs[a]! - xs[b]!);
  byPlace.forEach((handle, k) => {
    const isNear = k > 0 && xs[handle]! - xs[byPlace[k - 1]!]! < near;
    if (isNear) places.at(-1)!.push(handle);
    else places.push([handle]);
  });
  return places.map((handles) => handles.sort((a, b) => a - b));
}

function endsOf(xs: readonly number[], handles: readonly number[]): readonly [number, number] {
  const at = handles.map((handle) => xs[handle]!);
  return [Math.min(...at), Math.max(...at)];
}
