import type { Holding } from "../../../shared/holding/types.ts";

/** A picture of the level inside over the hours without pumps, in units of its own box. */
export interface LevelPicture {
  readonly width: number;
  readonly height: number;
  /** Between the least and the most that may come in. */
  readonly band: string;
  readonly most: string;
  readonly least: string;
  readonly structureY: number | null;
  /** When the structure is wet at the soonest; null when that is not within the hours shown. */
  readonly soonestX: number | null;
  readonly outsideY: number;
  readonly sumpY: number;
  readonly ticks: readonly { readonly hours: number; readonly x: number }[];
}

const BOX = { width: 300, height: 112, left: 4, right: 292, top: 16, bottom: 92 };

/** Lays the level inside out, early hours wider than late ones; null where the ground inside is not known. */
export function levelPicture({ inside, pumping }: Holding): LevelPicture | null {
  const hours = pumping.withoutPumps;
  const lastH = hours.at(-1)?.hours ?? 0;
  const outsideM = inside?.storage.at(-1)?.levelM;
  if (!inside || outsideM === undefined || !(outsideM > inside.lowestM) || lastH === 0) return null;
  const topM = Math.max(outsideM, inside.structureM ?? outsideM);
  const x = (h: number) => BOX.left + Math.sqrt(h / lastH) * (BOX.right - BOX.left);
  const y = (levelM: number) =>
    BOX.bottom - ((levelM - inside.lowestM) / (topM - inside.lowestM)) * (BOX.bottom - BOX.top);
  const { soonest, latest } = pumping.hoursToStructure;
  const curve = (pick: "lowM" | "highM", crossingH: number | null) => {
    const points = [
      { h: 0, levelM: inside.lowestM },
      ...hours.map((row) => ({ h: row.hours, levelM: row[pick] ?? row.outsideM })),
    ];
    if (crossingH !== null && crossingH < lastH && inside.structureM !== null) {
      points.push({ h: crossingH, levelM: Math.min(inside.structureM, outsideM) });
    }
    return points
      .sort((a, b) => a.h - b.h)
      .map(({ h, levelM }) => `${round(x(h))} ${round(y(levelM))}`);
  };
  const most = curve("highM", soonest);
  const least = curve("lowM", latest);
  const isWetSoon = soonest !== null && soonest < lastH && inside.structureM !== null;
  return {
    width: BOX.width,
    height: BOX.height,
    band: `M${most.join("L")}L${[...least].reverse().join("L")}Z`,
    most: `M${most.join("L")}`,
    least: `M${least.join("L")}`,
    structureY: inside.structureM === null ? null : round(y(inside.structureM)),
    soonestX: isWetSoon ? round(x(soonest)) : null,
    outsideY: round(y(outsideM)),
    sumpY: BOX.bottom,
    ticks: [0, ...hours.map((row) => row.hours)].map((h) => ({ hours: h, x: round(x(h)) })),
  };
}

function round(value: number): number {
  return Math.round(value * 10) / 10;
}
