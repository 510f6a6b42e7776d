const ANGLES = new Set([
  ...["lon", "lat", "bounds", "corners", "coordinates", "at"],
  ...["path", "sillAt", "entersAt", "firstOverAt"],
]);
const ANGLE_DIGITS = 9;
const DIGITS = 4;
/** Flows in SI are small numbers. */
const FLOW = /PerS$/;
const FLOW_DIGITS = 9;

/**
 * JSON for people and programs: what is not a number (no ground data) becomes null; metres and the like
 * are rounded to four decimals, degrees and flows to nine.
 */
export function toJson(value: unknown): string {
  return `${JSON.stringify(rounded(value), null, 1)}\n`;
}

/** A value with its numbers as {@link toJson} writes them. */
export function rounded(value: unknown, digits = DIGITS): unknown {
  if (typeof value === "number") return roundTo(value, digits);
  if (Array.isArray(value)) return value.map((item) => rounded(item, digits));
  if (value === null || typeof value !== "object") return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, item]) => [
      key,
      rounded(item, ANGLES.has(key) ? ANGLE_DIGITS : FLOW.test(key) ? FLOW_DIGITS : digits),
    ]),
  );
}

function roundTo(value: number, digits: number): number | null {
  if (!Number.isFinite(value)) return null;
  const scale = 10 ** digits;
  return Math.round(value * scale) / scale + 0;
}
