/** A straight scale from figures to pixels. */
export interface LinearScale {
  /** Pixels of a value; NaN for NaN. */
  (value: number): number;
  readonly domain: Ends;
  readonly range: Ends;
  invert(px: number): number;
  /** Round values inside the domain, about as many as asked for, rising. */
  ticks(count: number): number[];
  /** Decimals that tell such ticks apart. */
  decimals(count: number): number;
}

type Ends = readonly [from: number, to: number];

/**
 * @param domain rising
 * @param niceFor widens the domain to round values, as for so many ticks; null leaves it
 */
export function linearScale(domain: Ends, range: Ends, niceFor: number | null = null): LinearScale {
  const [from, to] = niceFor === null ? domain : widened(domain, niceFor);
  const span = to - from;
  const perUnit = (range[1] - range[0]) / span;
  const middle = (range[0] + range[1]) / 2;
  const scale = (value: number) =>
    span === 0 && !Number.isNaN(value) ? middle : range[0] + (value - from) * perUnit;
  return Object.assign(scale, {
    ...{ domain: [from, to] as const, range },
    invert: (px: number) => (perUnit === 0 ? from : from + (px - range[0]) / perUnit),
    ticks: (count: number) => ticksOf(from, to, count),
    decimals: (count: number) => (span > 0 ? Math.max(0, -stepOf(from, to, count).power) : 0),
  });
}

/** A step of 1, 2 or 5 times a power of ten. */
interface Step {
  readonly times: number;
  readonly power: number;
}

/** The step that comes nearest, by ratio, to so many in a span. */
function stepOf(from: number, to: number, count: number): Step {
  const exact = (to - from) / Math.max(1, count);
  const power = Math.floor(Math.log10(exact));
  const rest = exact / 10 ** power;
  if (rest >= Math.sqrt(50)) return { times: 1, power: power + 1 };
  return { times: rest >= Math.sqrt(10) ? 5 : rest >= Math.sqrt(2) ? 2 : 1, power };
}

/** So many steps from zero; divided where the step is a fraction, so that 3 x 0.1 is 0.3. */
function stepped({ times, power }: Step, steps: number): number {
  return power < 0 ? (steps * times) / 10 ** -power : steps * times * 10 ** power;
}

function stepsTo(value: number, { times, power }: Step): number {
  return power < 0 ? (value * 10 ** -power) / times : value / (times * 10 ** power);
}

function ticksOf(from: number, to: number, count: number): number[] {
  if (!(to > from)) return from === to ? [from] : [];
  const step = stepOf(from, to, count);
  const first = Math.ceil(stepsTo(from, step));
  const last = Math.floor(stepsTo(to, step));
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => stepped(step, first + i));
}

const MOST_ROUNDS = 10;

function widened(domain: Ends, count: number): Ends {
  let [from, to] = domain;
  for (let round = 0; round < MOST_ROUNDS && to > from; round++) {
    const step = stepOf(from, to, count);
    const wider = [
      stepped(step, Math.floor(stepsTo(from, step))),
      stepped(step, Math.ceil(stepsTo(to, step))),
    ] as const;
    if (wider[0] === from && wider[1] === to) break;
    [from, to] = wider;
  }
  return [from, to];
}
