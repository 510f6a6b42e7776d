/** A rectangle in pixels, y downwards. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/**
 * One place a label may take; `cost` says how much worse it is than the best, `turned` that it runs upwards,
 * `text` what is written there in place of the label's own words.
 */
export interface Spot extends Box {
  readonly cost: number;
  readonly turned?: boolean;
  readonly text?: string;
}

/** A label and where it would like to stand, best spots first or by cost. */
export interface WantedLabel {
  readonly key: string;
  readonly text: string;
  readonly spots: readonly Spot[];
}

export interface PlacedLabel {
  readonly key: string;
  readonly text: string;
  readonly box: Box;
  readonly turned: boolean;
}

/** Something a label had better not cover; `cost` per square pixel covered, Infinity for never. */
export interface Obstacle extends Box {
  readonly cost: number;
}

/**
 * Gives each label its cheapest spot, in the order given (most important first). Placed labels never
 * overlap each other nor leave `bounds`; a label without a free spot is left out.
 */
export function placeLabels(
  labels: readonly WantedLabel[],
  obstacles: readonly Obstacle[],
  bounds: Box,
): PlacedLabel[] {
  const placed: PlacedLabel[] = [];
  for (const label of labels) {
    const spot = cheapest(label.spots, placed, obstacles, bounds);
    if (!spot) continue;
    const { left, top, right, bottom } = spot;
    placed.push({
      key: label.key,
      text: spot.text ?? label.text,
      box: { left, top, right, bottom },
      turned: spot.turned === true,
    });
  }
  return placed;
}

function cheapest(
  spots: readonly Spot[],
  placed: readonly PlacedLabel[],
  obstacles: readonly Obstacle[],
  bounds: Box,
): Spot | null {
  let best: Spot | null = null;
  let bestCost = Infinity;
  const ordered = [...spots].sort((a, b) => a.cost - b.cost);
  for (const spot of ordered) {
    if (spot.cost >= bestCost) break;
    if (!inside(spot, bounds) || placed.some((label) => shared(label.box, spot) > 0)) continue;
    const cost = obstacles.reduce((sum, each) => sum + toll(each, spot), spot.cost);
    if (cost >= bestCost) continue;
    best = spot;
    bestCost = cost;
  }
  return best;
}

function toll(obstacle: Obstacle, spot: Spot): number {
  const covered = shared(obstacle, spot);
  return covered > 0 ? covered * obstacle.cost : 0;
}

function inside(box: Box, bounds: Box): boolean {
  return (
    box.left >= bounds.left &&
    box.right <= bounds.right &&
    box.top >= bounds.top &&
    box.bottom <= bounds.bottom
  );
}

function shared(a: Box, b: Box): number {
  const width = Math.min(a.right, b.right) - Math.max(a.left, b.left);
  const height = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
  return width > 0 && height > 0 ? width * height : 0;
}
