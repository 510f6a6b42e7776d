/** The part of the line that is shown, metres of chainage. */
export interface Stretch {
  readonly fromM: number;
  readonly toM: number;
}

/** Shortest stretch one can zoom to, metres. */
const SHORTEST_M = 10;

/** The whole line. */
export function wholeLine(lengthM: number): Stretch {
  return { fromM: 0, toM: lengthM };
}

/** `stretch` cut to the line as it is now; null stands for the whole line. */
export function withinLine(stretch: Stretch | null, lengthM: number): Stretch {
  if (!stretch) return wholeLine(lengthM);
  return moved(stretch.fromM, stretch.toM - stretch.fromM, lengthM);
}

/** `stretch` made `factor` times as long (below 1 zooms in), with `aboutM` staying where it is on the screen. */
export function zoomed(stretch: Stretch, lengthM: number, aboutM: number, factor: number): Stretch {
  const spanM = stretch.toM - stretch.fromM;
  const nextM = Math.min(lengthM, Math.max(Math.min(SHORTEST_M, lengthM), spanM * factor));
  const share = spanM > 0 ? (aboutM - stretch.fromM) / spanM : 0;
  return moved(aboutM - share * nextM, nextM, lengthM);
}

/** `stretch` moved along the line, stopped at its ends. */
export function panned(stretch: Stretch, lengthM: number, byM: number): Stretch {
  return moved(stretch.fromM + byM, stretch.toM - stretch.fromM, lengthM);
}

/** `stretch` moved just so far that `chainageM` is in view, a tenth of the view from its edge. */
export function showing(stretch: Stretch, lengthM: number, chainageM: number): Stretch {
  const marginM = (stretch.toM - stretch.fromM) / 10;
  if (chainageM < stretch.fromM) {
    return panned(stretch, lengthM, chainageM - marginM - stretch.fromM);
  }
  if (chainageM > stretch.toM) return panned(stretch, lengthM, chainageM + marginM - stretch.toM);
  return stretch;
}

/** True when a part, and not the whole line, is shown. */
export function isPart(stretch: Stretch, lengthM: number): boolean {
  return stretch.toM - stretch.fromM < lengthM * (1 - 1e-9);
}

function moved(fromM: number, spanM: number, lengthM: number): Stretch {
  const span = Math.min(spanM, lengthM);
  const from = Math.min(Math.max(0, fromM), lengthM - span);
  return { fromM: from, toM: from + span };
}
