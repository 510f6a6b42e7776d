/** `2 Must fix`. */
export function mustFixWords(count: number): string {
  return `${count} Must fix`;
}

/** What is added to anything good that is said of a line: `, but has 2 Must fix`; empty where it has none. */
export function butMustFix(count: number): string {
  return count > 0 ? `, but has ${mustFixWords(count)}` : "";
}

/** What a crew does about it. */
export function beforeBuilding(count: number): string {
  return `Do not build before ${count === 1 ? "it is" : "they are"} fixed.`;
}
