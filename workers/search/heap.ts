/** A binary heap of numbered items by key, least first. An item may be pushed again with a lesser key. */
export interface Heap {
  push(item: number, key: number): void;
  /** Item with the least key; -1 when empty. */
  pop(): number;
}

export function makeHeap(): Heap {
  const items: number[] = [];
  const keys: number[] = [];
  const swap = (p: number, q: number) => {
    [items[p], items[q]] = [items[q]!, items[p]!];
    [keys[p], keys[q]] = [keys[q]!, keys[p]!];
  };
  const least = (at: number) => {
    const [left, right] = [2 * at + 1, 2 * at + 2];
    const child = right < keys.length && keys[right]! < keys[left]! ? right : left;
    return child < keys.length && keys[child]! < keys[at]! ? child : at;
  };
  const sink = () => {
    let at = 0;
    for (let child = least(at); child !== at; child = least(at)) {
      swap(at, child);
      at = child;
    }
  };
  return {
    push(item, key) {
      let at = items.push(item) - 1;
      keys.push(key);
      while (at > 0 && keys[(at - 1) >> 1]! > keys[at]!) {
        swap(at, (at - 1) >> 1);
        at = (at - 1) >> 1;
      }
    },
    pop() {
      if (items.length === 0) return -1;
      swap(0, items.length - 1);
      const item = items.pop()!;
      keys.pop();
      sink();
      return item;
    },
  };
}
