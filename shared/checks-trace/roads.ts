import type { TraceFinding, TraceRule, WaterContext } from "./trace-rule.ts";

/** Names are as the person typed them; metres. */
export type RoadFinding =
  | {
      readonly kind: "road-floods";
      readonly road: string;
      readonly elevationM: number;
      readonly stageM: number | null;
      /** By the likely forecast; null where it is not known. */
      readonly hour: string | null;
      /** Under water from the first hour of the forecast on. */
      readonly fromStart: boolean;
      readonly leavesBefore: boolean | null;
    }
  | { readonly kind: "road-not-known"; readonly road: string };

/** Where the exit road first floods, and whether people leave by then. */
export const exitRoad: TraceRule<WaterContext> = {
  id: "exit-road",
  find: ({ roads }) =>
    roads.flatMap((traced): TraceFinding[] => {
      const { name: road, isKnown, floodsAboveM, at } = traced;
      const { stageM, hour, fromStart, leavesBefore } = traced;
      if (!isKnown) {
        return [{ severity: "caution", at: null, finding: { kind: "road-not-known", road } }];
      }
      if (floodsAboveM === null) return [];
      const byLeave = leavesBefore === null ? "caution" : leavesBefore ? "note" : "stop";
      const severity = fromStart ? "stop" : byLeave;
      const elevationM = floodsAboveM;
      const finding = {
        kind: "road-floods",
        road,
        elevationM,
        stageM,
        hour,
        fromStart,
        leavesBefore,
      } as const;
      return [{ severity, at, finding }];
    }),
};
