import type { SizedLine } from "../../shared/sizing-types.ts";
import type { LineTime } from "../../shared/time/types.ts";
import { stepName } from "../../shared/words/crew-parts.ts";

/** One crew's step, or what is on HOLD, as drawn over the stations; pixels. */
export interface LiftBox {
  readonly name: string;
  readonly crew: number;
  readonly isOnHold: boolean;
  readonly fromPx: number;
  readonly toPx: number;
  readonly topPx: number;
}

/** Where the name of a step stands; `leadPx` is the point that a line leads to, null where it stands in its step. */
interface LiftLabel {
  readonly name: string;
  readonly xPx: number;
  readonly yPx: number;
  readonly leadPx: { readonly x: number; readonly y: number } | null;
}

/** The steps of a line over its stations: down is below the mark on the stake. */
export interface LiftLayout {
  /** From the highest to the lowest, so that each hides the foot of those above it. */
  readonly boxes: readonly LiftBox[];
  readonly labels: readonly LiftLabel[];
  /** Outline of what is built, from the mark to the lowest ground under the base: one for each piece that is known. */
  readonly bodies: readonly (readonly (readonly [x: number, y: number])[])[];
  readonly deepestM: number;
  readonly x: (chainageM: number) => number;
  readonly y: (belowM: number) => number;
}

export interface LiftRoom {
  readonly leftPx: number;
  readonly rightPx: number;
  readonly topPx: number;
  readonly bottomPx: number;
  /** Size of the type of the names. */
  readonly typePx: number;
  readonly widthOf: (text: string) => number;
}

const PAD_PX = 2;
/** Names that do not fit in their steps stand in rows under the ground. */
const LEAD_PX = 12;

/** Lays out the steps in the room for them. */
export function liftLayout(line: SizedLine, time: LineTime, room: LiftRoom): LiftLayout {
  const { lengthM, greatestHeightM } = line.totals;
  const deepestM = Math.max(greatestHeightM, 0.1);
  const x = (chainageM: number) =>
    room.leftPx + (chainageM / lengthM) * (room.rightPx - room.leftPx);
  const y = (belowM: number) =>
    room.topPx + (Math.min(belowM, deepestM) / deepestM) * (room.bottomPx - room.topPx);
  const boxes = boxesOf(time, lengthM, x, y);
  return {
    ...{ boxes, deepestM, x, y, bodies: bodiesOf(line, x, y) },
    labels: labelsOf(boxes, depthAt(line, x, y), room),
  };
}

function boxesOf(
  time: LineTime,
  lengthM: number,
  x: LiftLayout["x"],
  y: LiftLayout["y"],
): LiftBox[] {
  const spans = (fromM: number, toM: number) =>
    fromM <= toM
      ? [{ fromM, toM }]
      : [
          { fromM, toM: lengthM },
          { fromM: 0, toM },
        ];
  return time.parts
    .flatMap((part) => {
      const own = { crew: part.crew };
      return [
        ...part.steps.map((step) => ({
          ...{ ...own, ...step, isOnHold: false },
          name: stepName(part, step.number),
        })),
        ...part.holds.map((hold) => ({ ...own, ...hold, name: "HOLD", isOnHold: true, belowM: 0 })),
      ];
    })
    .sort((a, b) => a.belowM - b.belowM)
    .flatMap(({ name, crew, isOnHold, fromM, toM, belowM }) =>
      spans(fromM, toM).map((span) => ({
        ...{ name, crew, isOnHold, topPx: y(belowM) },
        ...{ fromPx: x(span.fromM), toPx: x(span.toM) },
      })),
    );
}

/** Depth of the lowest ground under the base at a pixel; the mark where nothing is known. */
function depthAt(
  { walk }: SizedLine,
  x: LiftLayout["x"],
  y: LiftLayout["y"],
): (xPx: number) => number {
  const depths: number[] = [];
  for (const [i, chainageM] of walk.chainageM.entries()) {
    const depthM = walk.crestM[i]! - walk.lowestGroundM[i]!;
    if (depthM > 0) depths[Math.round(x(chainageM))] = y(depthM);
  }
  return (xPx) => {
    for (let off = 0; off < 12; off++) {
      const found = depths[Math.round(xPx) - off] ?? depths[Math.round(xPx) + off];
      if (found !== undefined) return found;
    }
    return y(0);
  };
}

function bodiesOf({ walk }: SizedLine, x: LiftLayout["x"], y: LiftLayout["y"]) {
  const bodies: [number, number][][] = [];
  let open: [number, number][] = [];
  const close = () => {
    if (open.length > 1) bodies.push([[open[0]![0], y(0)], ...open, [open.at(-1)![0], y(0)]]);
    open = [];
  };
  for (const [i, chainageM] of walk.chainageM.entries()) {
    const depthM = walk.crestM[i]! - walk.lowestGroundM[i]!;
    if (depthM > 0) open.push([x(chainageM), y(depthM)]);
    else close();
  }
  close();
  return bodies;
}

/**
 * A name in the middle of what is seen of its step, or under the ground with a line to it; one for each. HOLD stands
 * on every stretch that is, never moved; where two would touch, on the wider.
 */
function labelsOf(
  boxes: readonly LiftBox[],
  depthPx: (xPx: number) => number,
  room: LiftRoom,
): LiftLabel[] {
  const names = new Map<string, LiftLabel & { readonly roomPx: number }>();
  for (const [k, box] of boxes.entries()) {
    const seen = seenOf(box, boxes.slice(k + 1), depthPx);
    const fits =
      box.isOnHold ||
      (seen.bottomPx - box.topPx >= room.typePx &&
        seen.toPx - seen.fromPx >= room.widthOf(box.name) + 2 * PAD_PX);
    const halfPx = room.widthOf(box.name) / 2 + 2 * PAD_PX;
    const middleX = (seen.fromPx + seen.toPx) / 2;
    const xPx = box.isOnHold
      ? Math.min(Math.max(middleX, room.leftPx + halfPx), room.rightPx - halfPx)
      : middleX;
    const middlePx = (box.topPx + seen.bottomPx) / 2;
    const roomPx = fits ? seen.toPx - seen.fromPx : 0;
    const label = fits
      ? { name: box.name, xPx, yPx: middlePx, leadPx: null, roomPx }
      : {
          ...{ name: box.name, xPx, yPx: seen.bottomPx + LEAD_PX, roomPx },
          leadPx: { x: xPx, y: middlePx },
        };
    const key = box.isOnHold ? `${box.name} ${k}` : box.name;
    const before = names.get(key);
    if (!before || roomPx > before.roomPx) names.set(key, label);
  }
  return spread([...names.values()], depthPx, room);
}

/** The widest run of a box that no lower one hides, and its least depth there. */
function seenOf(
  box: LiftBox,
  lower: readonly LiftBox[],
  depthPx: (xPx: number) => number,
): { fromPx: number; toPx: number; bottomPx: number } {
  const over = lower.filter(({ fromPx, toPx }) => toPx > box.fromPx + 1 && fromPx < box.toPx - 1);
  const edges = [box.fromPx, box.toPx, ...over.flatMap(({ fromPx, toPx }) => [fromPx, toPx])]
    .filter((px) => px >= box.fromPx && px <= box.toPx)
    .sort((a, b) => a - b);
  let best = { fromPx: box.fromPx, toPx: box.toPx, bottomPx: box.topPx };
  let most = -1;
  for (let k = 1; k < edges.length; k++) {
    const [fromPx, toPx] = [edges[k - 1]!, edges[k]!];
    const middlePx = (fromPx + toPx) / 2;
    const tops = over
      .filter((each) => each.fromPx < middlePx && each.toPx > middlePx)
      .map(({ topPx }) => topPx)
      .filter((topPx) => topPx > box.topPx + 0.5);
    const bottomPx = Math.min(depthPx(middlePx), ...tops);
    const room = Math.min(toPx - fromPx, 60) * Math.min(bottomPx - box.topPx, 30);
    if (room > most) [best, most] = [{ fromPx, toPx, bottomPx }, room];
  }
  return best;
}

/** Names under the ground moved down until none touches another or the ground. */
function spread(
  labels: readonly (LiftLabel & { readonly roomPx: number })[],
  depthPx: (xPx: number) => number,
  { typePx, widthOf }: LiftRoom,
): LiftLabel[] {
  const placed: LiftLabel[] = [];
  const inSteps = labels.filter(({ leadPx }) => leadPx === null);
  for (const label of inSteps.sort((a, b) => b.roomPx - a.roomPx)) {
    const touches = placed.some(
      ({ name, xPx }) =>
        name === label.name && Math.abs(xPx - label.xPx) < widthOf(name) + 2 * PAD_PX,
    );
    if (!touches) placed.push(label);
  }
  for (const label of labels.filter(({ leadPx }) => leadPx !== null)) {
    const half = widthOf(label.name) / 2 + PAD_PX;
    const grounds = [-1, -0.5, 0, 0.5, 1].map((k) => depthPx(label.xPx + k * half));
    let yPx = Math.max(...grounds) + typePx * 0.9;
    const touches = () =>
      placed.some(
        (other) =>
          Math.abs(other.yPx - yPx) < typePx &&
          Math.abs(other.xPx - label.xPx) < half + widthOf(other.name) / 2,
      );
    while (touches()) yPx += typePx;
    placed.push({ ...label, yPx });
  }
  return placed;
}
