/** Remembers what was worked out for each key, such as a contract: thousands of hives go under a few. */
export function onceEach<K, V>(work: (key: K) => V): (key: K) => V {
  const known = new Map<K, V>();
  return (key) => {
    if (!known.has(key)) known.set(key, work(key));
    return known.get(key)!;
  };
}
