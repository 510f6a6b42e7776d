/** The same value, frozen to its depth; what is frozen already is taken to be frozen below too. */
export function frozen<T>(value: T): T {
  const waiting: unknown[] = [value];
  while (waiting.length > 0) {
    const next = waiting.pop();
    if (typeof next !== "object" || next === null || Object.isFrozen(next)) continue;
    Object.freeze(next);
    waiting.push(...Object.values(next));
  }
  return value;
}
