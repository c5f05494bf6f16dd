import { GCProfiler } from "node:v8";

/**
 * Each work's processor time a hive in ns, the least of several rounds in turn: what it costs when
 * nothing else disturbs it.
 */
export function nanoseconds(hives: number, ...works: (() => unknown)[]): number[] {
  const rounds = hives >= 1e6 ? 3 : hives >= 1e5 ? 7 : hives >= 1e4 ? 30 : 100;
  const least = works.map(() => Infinity);
  for (let round = 0; round < rounds; round++) {
    works.forEach((work, i) => {
      const start = process.cpuUsage();
      work();
      const { user, system } = process.cpuUsage(start);
      least[i] = Math.min(least[i]!, user + system);
    });
  }
  return least.map((microseconds) => (microseconds * 1e3) / hives);
}

/**
 * The most memory that stood while it ran, in MB over what stood before: what it kept, and what it
 * had thrown away and was not collected yet.
 */
export function megabytes(work: () => unknown): number {
  globalThis.gc!();
  const before = held();
  const profiler = new GCProfiler();
  profiler.start();
  const result = work();
  const after = held();
  const collections = profiler.stop().statistics.map(({ beforeGC }) => {
    const { usedHeapSize, externalMemory } = beforeGC.heapStatistics;
    return usedHeapSize + externalMemory;
  });
  if (result === undefined) throw new Error("the work gave nothing");
  return (Math.max(after, ...collections) - before) / 1e6;
}

function held(): number {
  const { heapUsed, external } = process.memoryUsage();
  return heapUsed + external;
}
