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

/** Whether a label must not take a spot, seeing those that are placed. */
export type IsBarred = (key: string, spot: Spot, placed: readonly PlacedLabel[]) => boolean;

/**
 * Gives each label its cheapest spot, in the order given (most important first). Placed labels never
 * overlap each other nor leave `bounds`; a label without a free spot is left out.
 */
export function placeLabels(
  labels: readonly WantedLabel[],
  obstacles: readonly Obstacle[],
  bounds: Box,
  isBarred: IsBarred = () => false,
): PlacedLabel[] {
  const placed: PlacedLabel[] = [];
  for (const label of labels) {
    const fits = (spot: Spot) =>
      inside(spot, bounds) && placed.every(({ box }) => shared(box, spot) === 0);
    const spot = cheapest(label.spots, obstacles, fits, (each) =>
      isBarred(label.key, each, placed),
    );
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
  obstacles: readonly Obstacle[],
  fits: (spot: Spot) => boolean,
  isBarred: (spot: Spot) => boolean,
): Spot | null {
  let best: Spot | null = null;
  let bestCost = Infinity;
  const ordered = [...spots].sort((a, b) => a.cost - b.cost);
  for (const spot of ordered) {
    if (spot.cost >= bestCost) break;
    if (!fits(spot)) continue;
    const cost = spot.cost + tollOf(obstacles, spot, bestCost - spot.cost);
    if (cost >= bestCost || isBarred(spot)) continue;
    best = spot;
    bestCost = cost;
  }
  return best;
}

/** What a spot costs more for what it covers; no further than `most`. */
function tollOf(obstacles: readonly Obstacle[], spot: Spot, most: number): number {
  let toll = 0;
  for (const obstacle of obstacles) {
    const covered = shared(obstacle, spot);
    if (covered > 0) toll += covered * obstacle.cost;
    if (toll >= most) return toll;
  }
  return toll;
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
