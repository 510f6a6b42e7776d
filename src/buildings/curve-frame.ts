/** Where a plot of buildings against bags lies, CSS pixels. */
export interface CurveFrame {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly x: (bags: number) => number;
  readonly y: (buildings: number) => number;
  /** Figures along the sides. */
  readonly columns: readonly number[];
  readonly rows: readonly number[];
}

interface CurveExtent {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly mostBags: number;
  readonly mostBuildings: number;
}

const ROW_PX = 42;
const COLUMN_PX = 74;

export function curveFrame({
  widthPx,
  heightPx,
  mostBags,
  mostBuildings,
}: CurveExtent): CurveFrame {
  const [left, right, top, bottom] = [28, widthPx - 16, 22, heightPx - 36];
  const rowStep = roundStep(mostBuildings / Math.max(1, (bottom - top) / ROW_PX), 1);
  const columnStep = roundStep(mostBags / Math.max(1, (right - left) / COLUMN_PX), 1);
  return {
    ...{ left, right, top, bottom },
    x: (bags) => left + (bags / mostBags) * (right - left),
    y: (buildings) => bottom - (buildings / mostBuildings) * (bottom - top),
    columns: steps(mostBags, columnStep),
    rows: steps(mostBuildings, rowStep),
  };
}

/** The path through points that go up by steps. */
export function stepPath(
  points: readonly { readonly bags: number; readonly buildings: number }[],
  { x, y }: Pick<CurveFrame, "x" | "y">,
): string {
  return points
    .map(({ bags, buildings }, index) =>
      index === 0
        ? `M${x(bags).toFixed(1)} ${y(buildings).toFixed(1)}`
        : `H${x(bags).toFixed(1)}V${y(buildings).toFixed(1)}`,
    )
    .join("");
}

/** The least of 1, 2, 4, 5 times a power of ten that is not below a step. */
function roundStep(wanted: number, least: number): number {
  if (!(wanted > least)) return least;
  const size = 10 ** Math.floor(Math.log10(wanted));
  return ([1, 2, 4, 5, 10].find((each) => each * size >= wanted) ?? 10) * size;
}

function steps(most: number, step: number): number[] {
  return Array.from({ length: Math.floor(most / step + 1e-9) + 1 }, (_, index) => index * step);
}
