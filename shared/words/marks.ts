/** Said of cells that no ground can have and the file does not declare, without the file's name. */
export function strayWords(values: readonly number[]): string {
  return `cells with ${values.join(", ")} are counted as no elevation data: no ground has that height`;
}
