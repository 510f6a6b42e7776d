import { timeOf } from "../../../shared/defaults.ts";
import type { Forecast, Plan, TimeSettings } from "../../../shared/plan.ts";
import { waterElevationAtGauge } from "../../../shared/stage.ts";
import { lengthIn, lengthUnit, type UnitSystem } from "../../../shared/units.ts";
import { edit } from "./alternatives.ts";
import { asGiven } from "./settings.ts";

/** A plan with some of its time settings changed. */
export function withTime(plan: Plan, change: Partial<TimeSettings>): Plan {
  return { ...plan, time: { ...timeOf(plan), ...change } };
}

/** A plan with other people at work. */
export function withPeople(plan: Plan, people: number): Plan {
  return { ...plan, practice: { ...plan.practice, people } };
}

/** A plan with so many people around the clock: under lights, in as many shifts as fill the day. */
export function withPeopleDayAndNight(plan: Plan, people: number): Plan {
  const shiftH = Math.max(1, timeOf(plan).shiftH);
  const shifts = Math.ceil(24 / shiftH);
  return withTime(withPeople(plan, people), { lit: true, shifts, shiftH });
}

/** A plan whose water at the gauge stands at an elevation, by stage where it is given by stage. */
export function withLevel(plan: Plan, levelM: number): Plan {
  const { water } = plan;
  const riseM = levelM - waterElevationAtGauge(water);
  const moved =
    water.by === "stage"
      ? { stageM: water.stageM + riseM }
      : { elevationM: water.elevationM + riseM };
  return { ...plan, water: asGiven({ ...water, ...moved }) };
}

/** Sizes every line for a water level at the gauge, elevation in metres. @returns whether the plan took it */
export function sizeForLevel(levelM: number): boolean {
  return edit({
    note: "Size for a level of the forecast",
    change: (now) => withLevel(now, levelM),
  });
}

/** A forecast as text that can be read again: a first line with names and units, a row for each time. */
export function forecastText({ rows, levels }: Forecast, system: UnitSystem): string {
  const unit = lengthUnit(system);
  const bands = (["lowM", "highM"] as const).filter((band) =>
    rows.every((row) => row[band] !== null),
  );
  const figure = (m: number) => lengthIn(m, system).toFixed(2);
  const names = [
    "time",
    `${levels}_${unit}`,
    ...bands.map((band) => `${band.slice(0, -1)}_${unit}`),
  ];
  const lines = rows.map((row) =>
    [row.at, figure(row.levelM), ...bands.map((band) => figure(row[band]!))].join(", "),
  );
  return [names.join(", "), ...lines].join("\n");
}
