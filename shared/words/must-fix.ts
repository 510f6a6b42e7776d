/** `2 Must fix`. */
export function mustFixWords(count: number): string {
  return `${count} Must fix`;
}
