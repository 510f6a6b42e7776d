/** A binary heap of numbered items by key, least first. An item may be pushed again with a lesser key. */
export interface Heap {
  push(item: number, key: number): void;
  /** The least key; Infinity when empty. */
  leastKey(): number;
  /** Item with the least key; -1 when empty. */
  pop(): number;
  clear(): void;
}

export function makeHeap(): Heap {
  const items: number[] = [];
  const keys: number[] = [];
  const sink = (item: number, key: number) => {
    let at = 0;
    for (let child = 1; child < keys.length; child = 2 * at + 1) {
      if (child + 1 < keys.length && keys[child + 1]! < keys[child]!) child++;
      if (keys[child]! >= key) break;
      items[at] = items[child]!;
      keys[at] = keys[child]!;
      at = child;
    }
    items[at] = item;
    keys[at] = key;
  };
  return {
    push(item, key) {
      let at = items.push(item) - 1;
      keys.push(key);
      while (at > 0) {
        const parent = (at - 1) >> 1;
        if (keys[parent]! <= key) break;
        items[at] = items[parent]!;
        keys[at] = keys[parent]!;
        at = parent;
      }
      items[at] = item;
      keys[at] = key;
    },
    leastKey: () => (keys.length > 0 ? keys[0]! : Infinity),
    pop() {
      if (items.length === 0) return -1;
      const least = items[0]!;
      const item = items.pop()!;
      const key = keys.pop()!;
      if (items.length > 0) sink(item, key);
      return least;
    },
    clear() {
      items.length = 0;
      keys.length = 0;
    },
  };
}
