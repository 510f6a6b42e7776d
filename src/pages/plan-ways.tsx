import "./plan-ways.css";
import type { Exported } from "../../shared/exports/exported.ts";
import type { LonLat, Plan } from "../../shared/plan.ts";
import type { SizedLine } from "../../shared/sizing-types.ts";
import { PLAN_WAYS } from "../../shared/words/plan-ways.ts";
import { beside, spotAt } from "../drawing/line/along.ts";
import type { PlanFrame } from "./plan-frame.ts";
import type { Label } from "./plan-labels.ts";
import { pathOf, type Spot } from "./plan-paths.ts";

/** Distance of places that are looked at along a path, millimetres. */
const STEP_MM = 4;

interface PlanWaysProps {
  readonly of: Exported;
  readonly frame: PlanFrame;
}

/** Ways out: two edges, nothing between. */
export function PlanRoads({ of: { plan }, frame: { toSpot } }: PlanWaysProps) {
  return (plan.roads ?? []).map(({ id, path }) => (
    <g key={id}>
      <path class="plan-road-edge" d={pathOf(path, toSpot, false)} />
      <path class="plan-road" d={pathOf(path, toSpot, false)} />
    </g>
  ));
}

/** Pipes, drains, places to look for one: by shape alone, so that a copier keeps them apart. */
export function PlanPipes({ of: { plan }, frame: { toSpot } }: PlanWaysProps) {
  const { culverts = [], drains = [] } = plan;
  return (
    <>
      {culverts.map(({ id, path, plugged }) => (
        <g key={id}>
          <path class="plan-culvert" d={pathOf(path, toSpot, false)} />
          {[path[0]!, path.at(-1)!].map((end, k) => (
            <Opening
              key={k}
              at={toSpot(end)}
              shape="M-1.2 0a1.2 1.2 0 1 0 2.4 0a1.2 1.2 0 1 0-2.4 0z"
              plugged={plugged}
            />
          ))}
        </g>
      ))}
      {drains.map(({ id, at, plugged }) => (
        <Opening key={id} at={toSpot(at)} shape="M-1.3-1.3h2.6v2.6h-2.6z" plugged={plugged} />
      ))}
      {toLookAt(plan).map(({ id, path }) => (
        <g key={id} transform={translated(toSpot(path[0]!))}>
          <circle class="plan-look" r="2" />
          <text class="plan-look-sign" y="1.1" text-anchor="middle">
            ?
          </text>
        </g>
      ))}
    </>
  );
}

interface OpeningProps {
  readonly at: Spot;
  readonly shape: string;
  readonly plugged: boolean;
}

/** An end of a pipe, or a drain; crossed out where it is plugged. */
function Opening({ at, shape, plugged }: OpeningProps) {
  return (
    <g class="plan-opening" transform={translated(at)}>
      <path d={shape} />
      {plugged && <path d="M-1.2-1.2 1.2 1.2M-1.2 1.2 1.2-1.2" />}
    </g>
  );
}

/** The ways left open: the levee's own place between two posts, blank. */
export function PlanClosures({ of: { plan, line }, frame }: PlanWaysProps) {
  return closuresOn(plan, line, frame).map(({ fromM, toM }) => {
    const corners = [fromM, toM].flatMap((m, k) => {
      const spot = spotAt(line.walk, m);
      if (!spot) return [];
      const outM = frame.scale.mPerMm;
      const ends = [
        frame.toSpot(beside(spot, spot.toeLeftM + outM)),
        frame.toSpot(beside(spot, -spot.toeRightM - outM)),
      ];
      return k === 0 ? ends : ends.reverse();
    });
    const d = `M${corners.map(([x, y]) => `${x.toFixed(2)} ${y.toFixed(2)}`).join("L")}Z`;
    return <path key={fromM} class="plan-closure" d={d} />;
  });
}

/** What is written at them, those that lie on this drawing. */
export function wayLabels({ plan, line, system }: Exported, frame: PlanFrame): Label[] {
  const { roads = [], culverts = [], drains = [] } = plan;
  const label = (key: string, at: LonLat | null, texts: readonly string[]): Label[] => {
    const point = at && frame.toSpot(at);
    if (!point || !isOn(point, frame)) return [];
    const [first, ...rest] = texts;
    const words = [
      { text: first!, look: "strong" as const },
      ...rest.map((text) => ({ text, look: "small" as const })),
    ];
    return [{ key, point, words, layout: "stack", away: [0, 0], reach: "around", hasLeader: true }];
  };
  return [
    ...closuresOn(plan, line, frame).flatMap((closure) => {
      const at = spotAt(line.walk, (closure.fromM + closure.toM) / 2)?.at;
      const words = PLAN_WAYS.closure(closure, system);
      return label(`closure ${closure.fromM}`, at ? [at[0], at[1]] : null, words);
    }),
    ...culverts.flatMap((each) =>
      label(`culvert ${each.id}`, each.path[0]!, PLAN_WAYS.culvert(each)),
    ),
    ...drains.flatMap((each) => label(`drain ${each.id}`, each.at, PLAN_WAYS.drain(each))),
    ...toLookAt(plan).flatMap((each) =>
      label(`look ${each.id}`, each.path[0]!, PLAN_WAYS.look(each)),
    ),
    ...roads.flatMap((each) =>
      label(`road ${each.id}`, middleOn(each.path, frame), PLAN_WAYS.road(each)),
    ),
  ];
}

function toLookAt({ possibleCulverts = [] }: Plan) {
  return possibleCulverts.filter(({ answer }) => answer === "look");
}

function closuresOn(plan: Plan, line: SizedLine, { fromM, toM }: PlanFrame) {
  const { closures = [] } = plan.alignments.find(({ id }) => id === line.id) ?? {};
  return closures.filter((each) => each.toM > fromM && each.fromM < toM);
}

/** The middle of what a drawing shows of a path; null where that is nothing. */
function middleOn(path: readonly LonLat[], frame: PlanFrame): LonLat | null {
  const shown = path.slice(1).flatMap((b, i) => {
    const a = path[i]!;
    const [[ax, ay], [bx, by]] = [frame.toSpot(a), frame.toSpot(b)];
    const count = Math.ceil(Math.hypot(bx - ax, by - ay) / STEP_MM);
    return Array.from({ length: count }, (_, k): LonLat => {
      const share = (k + 0.5) / count;
      return [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share];
    }).filter((at) => isOn(frame.toSpot(at), frame));
  });
  return shown[Math.floor(shown.length / 2)] ?? null;
}

function isOn([x, y]: Spot, { widthMm, heightMm }: PlanFrame): boolean {
  return x > 0 && y > 0 && x < widthMm && y < heightMm;
}

function translated([x, y]: Spot): string {
  return `translate(${x.toFixed(2)} ${y.toFixed(2)})`;
}
