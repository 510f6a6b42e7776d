import { Misuse } from "./verb.ts";

interface Bounds {
  readonly least: number;
  readonly most: number;
  readonly whole?: boolean;
}

/** The number that an option gives; null when it is not given. @throws Misuse for anything else or out of bounds */
export function numberFrom(
  options: ReadonlyMap<string, readonly string[]>,
  name: string,
  { least, most, whole = false }: Bounds,
): number | null {
  const word = options.get(name)?.[0];
  if (word === undefined) return null;
  const value = /^\d+(\.\d+)?$/.test(word) ? Number(word) : Number.NaN;
  if (value >= least && value <= most && (!whole || Number.isInteger(value))) return value;
  const kind = whole ? "a whole number" : "a number";
  throw new Misuse(`${name} is ${kind} from ${least} to ${most}; came ${word}.`);
}
