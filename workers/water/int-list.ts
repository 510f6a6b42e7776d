/** A growing list of whole numbers, without the boxes of an ordinary one. */
export interface IntList {
  values: Int32Array;
  length: number;
}

export function intList(capacity = 1024): IntList {
  return { values: new Int32Array(capacity), length: 0 };
}

export function append(list: IntList, value: number): void {
  if (list.length === list.values.length) list.values = doubled(list.values);
  list.values[list.length++] = value;
}

/** A copy with twice the room. */
export function doubled(values: Int32Array): Int32Array<ArrayBuffer> {
  const larger = new Int32Array(2 * values.length);
  larger.set(values);
  return larger;
}
