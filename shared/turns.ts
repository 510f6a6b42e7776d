/** A place where a row of heights turns: a local high or low that stands out by more than a prominence. */
export interface Turn {
  readonly index: number;
  readonly kind: "high" | "low";
}

/**
 * Local highs and lows that stand out by more than `prominenceM` from the next turns on both sides, in order
 * of index. Smaller wiggles are passed over. The ends of an open row, and the edges of gaps (NaN), are no
 * turns. In a closed row the last value is the first one's place again.
 */
export function turnsOf(heightsM: Float64Array, prominenceM: number, closed: boolean): Turn[] {
  const found: Turn[] = [];
  const whole = closed && !heightsM.some(Number.isNaN);
  if (whole) {
    const top = heightsM.reduce((best, m, i) => (m > heightsM[best]! ? i : best), 0);
    const around = heightsM.length - 1;
    const order = Array.from({ length: around + 1 }, (_, k) => (top + k) % around);
    followRun(found, heightsM, order, prominenceM, true);
  } else {
    for (const run of runsWithoutGap(heightsM, closed)) {
      followRun(found, heightsM, run, prominenceM, false);
    }
  }
  return found.sort((a, b) => a.index - b.index);
}

function followRun(
  found: Turn[],
  heightsM: Float64Array,
  order: readonly number[],
  prominenceM: number,
  startsOnTop: boolean,
): void {
  let heading: "up" | "down" | null = startsOnTop ? "up" : null;
  let high = order[0]!;
  let low = order[0]!;
  for (const index of order) {
    const heightM = heightsM[index]!;
    if (heading !== "down" && heightM > heightsM[high]!) high = index;
    if (heading !== "up" && heightM < heightsM[low]!) low = index;
    if (heading !== "down" && heightsM[high]! - heightM > prominenceM) {
      if (heading === "up") found.push({ index: high, kind: "high" });
      heading = "down";
      low = index;
    } else if (heading !== "up" && heightM - heightsM[low]! > prominenceM) {
      if (heading === "down") found.push({ index: low, kind: "low" });
      heading = "up";
      high = index;
    }
  }
}

/** Runs of indices between gaps; in a closed row the run over the closing point is one run. */
function runsWithoutGap(heightsM: Float64Array, closed: boolean): number[][] {
  const runs: number[][] = [];
  let run: number[] = [];
  const last = closed ? heightsM.length - 1 : heightsM.length;
  for (let i = 0; i < last; i++) {
    if (!Number.isNaN(heightsM[i]!)) run.push(i);
    else if (run.length > 0) {
      runs.push(run);
      run = [];
    }
  }
  if (run.length > 0) runs.push(run);
  const joins = closed && runs.length > 1 && runs[0]![0] === 0 && run.at(-1) === last - 1;
  if (joins) runs.unshift([...runs.pop()!, ...runs.shift()!]);
  return runs;
}
