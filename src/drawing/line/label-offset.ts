/** Directions that labels are moved in: steps of 15 degrees, so that a map layer can list them all. */
export const DIRECTIONS = 24;

/**
 * The direction nearest to a vector east and north, 0 to `DIRECTIONS` - 1, counted clockwise from north. A whole
 * number, because a map's tiles keep no lists among the properties of a feature.
 */
export function directionOf(east: number, north: number): number {
  const turns = Math.atan2(east, north) / (2 * Math.PI);
  return (Math.round(turns * DIRECTIONS) + DIRECTIONS) % DIRECTIONS;
}

/** How far a label stands from its point: `spreadEm` more sideways, because words are wider than high. */
export interface LabelReach {
  readonly em: number;
  readonly spreadEm: number;
}

/** Where a label moved in a direction has its middle, right and down, in heights of its type. */
export function labelOffset(direction: number, { em, spreadEm }: LabelReach): [number, number] {
  const angle = (direction / DIRECTIONS) * 2 * Math.PI;
  const [east, north] = [Math.sin(angle), Math.cos(angle)];
  return [round(east * (em + spreadEm * Math.abs(east))), round(-north * em)];
}

function round(value: number): number {
  return Math.round(value * 100) / 100;
}
