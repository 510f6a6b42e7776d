const DIRECTIONS = [
  ...(["north", "northeast", "east", "southeast"] as const),
  ...(["south", "southwest", "west", "northwest"] as const),
];

/** `northeast`, of degrees clockwise from north. */
export function compassWords(bearingDeg: number): string {
  return DIRECTIONS[(Math.round(bearingDeg / 45) + 8) % 8]!;
}
