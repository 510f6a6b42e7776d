import type { Spread } from "./types.ts";

const SLACK = 1e-4;

/** A factor of safety as a range, rounded down so that it promises no more than there is. */
export function factorWords({ low, high }: Spread): string {
  const [from, to] = [roundedDown(low), roundedDown(high)];
  return from === to ? from : `${from} to ${to}`;
}

/** To one decimal, never up. */
export function roundedDown(value: number): string {
  return (Math.floor(value * 10 + SLACK) / 10).toFixed(1);
}
