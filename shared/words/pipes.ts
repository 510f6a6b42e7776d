import type { CheckFinding } from "../checks/findings.ts";
import type { Culvert, Drain, LonLat, Plan } from "../plan.ts";
import type { Check } from "../sizing-types.ts";
import type { UnitSystem } from "../units.ts";
import type { PipeCase, TracedAlternative, TracedPipe } from "../water-types.ts";
import { capital } from "./capital.ts";
import { DRAIN_WORDS } from "./checks/pipes.ts";
import { mustFixWords } from "./must-fix.ts";
import type { OrderRow } from "./order-sheet.ts";
import { fieldLookWords } from "./possible-culverts.ts";
import { unitsOf } from "./units.ts";
import { overtopsWords } from "./water.ts";

/** `Open. Water passes above 264.20 ft.` */
export function pipeStateWords(
  pipe: Culvert | Drain,
  traced: TracedPipe | null,
  system: UnitSystem,
): string {
  const state = pipe.plugged ? "Plugged." : "Open.";
  if ("joinsOutside" in pipe && pipe.joinsOutside === false)
    return `${state} Joins nothing outside.`;
  if (!traced) return state;
  if (!traced.isKnown) return `${state} ${notKnownWords(pipe)}`;
  if (traced.passesAboveM === null) return state;
  const level = unitsOf(system).elevation(traced.passesAboveM);
  return `${state} Water ${pipe.plugged ? "would pass" : "passes"} above ${level}.`;
}

function notKnownWords(pipe: Culvert | Drain): string {
  return "joinsOutside" in pipe
    ? "Where it leads is not known."
    : "Its inverts are not known: measure them.";
}

/** For a pipe that is plugged: another plug. */
const SPARE = "1 spare";

/** Plugs to get for the pipes that a line's checks name. */
export function plugRows(plan: Plan, checks: readonly Check[], system: UnitSystem): OrderRow[] {
  const named = new Set(checks.flatMap(({ finding }) => pipesIn(finding)));
  const culverts = (plan.culverts ?? []).filter(({ name }) => named.has(name));
  const drains = (plan.drains ?? []).filter(({ name }) => named.has(name));
  return [
    ...culverts.map(({ name, sizeM, plugged }) => ({
      name: `Culvert "${name}"`,
      amount: plugged ? SPARE : "1",
      note: `${sizeM === null ? "Measure its inside first" : `${unitsOf(system).small(sizeM)} inside`}. An inflatable plug of its size, or plywood, poly sheeting and sandbags at the water's end (common practice, no source).`,
    })),
    ...drains.map(({ name, kind, plugged }) => ({
      name: `${capital(DRAIN_WORDS[kind])} "${name}"`,
      amount: plugged ? SPARE : "1",
      note: "Measure its pipe first. A test ball or twist plug of its size, with a brace to the ceiling indoors (NDSU-PD, NDSU-RD).",
    })),
  ];
}

/** How many plugs to get: `2`, `1 + 1 spare`; null where none is needed. */
export function plugsWords(
  plan: Plan,
  checks: readonly Check[],
  system: UnitSystem,
): string | null {
  const amounts = plugRows(plan, checks, system).map(({ amount }) => amount);
  const spare = amounts.filter((amount) => amount === SPARE).length;
  if (amounts.length === 0) return null;
  return spare === 0 ? `${amounts.length}` : `${amounts.length - spare} + ${spare} spare`;
}

/** What a line does with every pipe plugged and with every one open. */
interface PipeCasesWords {
  readonly name: string;
  /** `water gets in above stage 30.9 ft`. */
  readonly words: string;
}

/** Both cases of all culverts and drains; empty where there is none. @param checks of the line, all that are known */
export function pipeCasesWords(
  { pipes }: Pick<TracedAlternative, "pipes">,
  checks: readonly Check[],
  plan: Plan,
  system: UnitSystem,
): PipeCasesWords[] {
  if (!pipes) return [];
  const others = checks.filter(
    ({ severity, continued, finding }) =>
      severity === "stop" && !continued && !OPEN_PIPES.has(finding.kind),
  ).length;
  const words = (of: PipeCase) => {
    const { firstOverM: elevationM, firstOverRiseM: riseM } = of;
    const firstOver = elevationM === null || riseM === null ? null : { elevationM, riseM };
    return overtopsWords({ ...of, firstOver }, plan, system);
  };
  const plugged = words(pipes.plugged);
  return [
    { name: "All culverts and drains open", words: words(pipes.open) },
    {
      name: "All of them plugged",
      words: others > 0 ? `${plugged}; ${mustFixWords(others)} beside the plugs` : plugged,
    },
  ];
}

/** Must fix that plugs alone fix. */
const OPEN_PIPES: ReadonlySet<CheckFinding["kind"]> = new Set([
  "culvert-open",
  "drain-open",
  "let-in-by-pipe",
]);

/** Names of the culverts and drains that a finding is about. */
function pipesIn(finding: CheckFinding): readonly string[] {
  switch (finding.kind) {
    case "culvert-open":
    case "culvert-plugged":
    case "culvert-above":
      return [finding.culvert];
    case "drain-open":
    case "drain-not-known":
    case "drain-plugged":
      return [finding.drain];
    case "let-in-by-pipe":
      return finding.pipes.map(({ name }) => name);
    default:
      return [];
  }
}

/** Findings about a culvert under the line, where a round stops anyway. */
const STOPS_A_ROUND: ReadonlySet<CheckFinding["kind"]> = new Set([
  "culvert-open",
  "culvert-plugged",
  "culvert-above",
]);

/** Why a round stops where the line crosses a culvert; null for other findings. */
export function culvertStopWords(finding: CheckFinding): string | null {
  switch (finding.kind) {
    case "culvert-open":
      return `culvert "${finding.culvert}" is open: plug it, then watch both ends`;
    case "culvert-plugged":
    case "culvert-above":
      return `culvert "${finding.culvert}": look for water at both ends`;
    default:
      return null;
  }
}

interface PipeStop {
  readonly name: string;
  readonly look: string;
  /** Null for a pipe of the plan, which is found by its name. */
  readonly at: LonLat | null;
}

/** Pipes away from the line that a round looks at, places where one is still to be looked for, and what for. */
export function pipeStops(checks: readonly Check[]): PipeStop[] {
  const names = checks
    .filter(({ finding: { kind } }) => !STOPS_A_ROUND.has(kind))
    .flatMap(({ finding }) => pipesIn(finding));
  const pipes = [...new Set(names)].map((name) => ({
    name: `"${name}"`,
    look: "Look for water coming up, and for a plug that moves or leaks. Report it at once.",
    at: null,
  }));
  const toLookFor = checks.flatMap(({ finding, at }) =>
    finding.kind === "culvert-to-look-for" ? [{ ...fieldLookWords(finding.place), at }] : [],
  );
  return [...pipes, ...toLookFor];
}

/** What the list of culverts and drains says, and what can be chosen in it. */
export const PIPE_WORDS = {
  lookFor:
    "Elevation data does not show pipes. Look for culverts under roads, floor drains, storm inlets, field tiles, and trenches of water, sewer, gas and cable, whose loose fill lets water through. Draw them here.",
  gates: [
    { value: "", words: "gate not known" },
    { value: "none", words: "no gate" },
    { value: "flap", words: "flap gate" },
    { value: "gate", words: "gate" },
  ],
  drains: [
    { value: "floor-drain", words: "floor drain" },
    { value: "storm-inlet", words: "storm inlet" },
    { value: "sewer", words: "sewer" },
  ],
  joins: [
    { value: "", words: "where it leads: not known" },
    { value: "yes", words: "joins outside" },
    { value: "no", words: "joins nothing outside" },
  ],
} as const;
