import type { ThroughFinding } from "../checks-trace/pipes.ts";
import type { PossibleCulvertFinding } from "../checks-trace/possible-culverts.ts";
import type { RoadFinding } from "../checks-trace/roads.ts";
import type { WayInFinding } from "../checks-trace/way-in.ts";
import type { WholePlanFinding } from "../checks-trace/whole-plan.ts";
import type { BagFinding } from "./bag.ts";
import type { CloseBankFinding } from "./close-bank.ts";
import type { ClosureFinding } from "./closures.ts";
import type { CompleteFinding } from "./complete.ts";
import type { GroundFinding } from "./ground.ts";
import type { HeightFinding } from "./height.ts";
import type { InsideFinding } from "./inside.ts";
import type { KeptSetbackFinding } from "./kept-setback.ts";
import type { LeaveFinding } from "./leave.ts";
import type { LevelFinding } from "./level.ts";
import type { LineFinding } from "./line.ts";
import type { OverlapFinding } from "./overlap.ts";
import type { PipeFinding } from "./pipes.ts";
import type { PlaceFinding } from "./place.ts";
import type { TypeFinding } from "./sections.ts";
import type { SeepFinding } from "./seep.ts";
import type { StandFinding } from "./stand.ts";
import type { SurveyFinding } from "./survey.ts";
import type { TimeFinding } from "./time.ts";
import type { WaterFinding } from "./water.ts";

/** What a check found: its kind with its figures in SI and the ids and names it speaks of. */
export type CheckFinding =
  | BagFinding
  | CloseBankFinding
  | ClosureFinding
  | CompleteFinding
  | GroundFinding
  | HeightFinding
  | InsideFinding
  | KeptSetbackFinding
  | LeaveFinding
  | LevelFinding
  | LineFinding
  | OverlapFinding
  | PipeFinding
  | PlaceFinding
  | PossibleCulvertFinding
  | TypeFinding
  | SeepFinding
  | StandFinding
  | SurveyFinding
  | RoadFinding
  | ThroughFinding
  | TimeFinding
  | WaterFinding
  | WayInFinding
  | WholePlanFinding;

/** Identifier of a check's rule, e.g. `over-limit`. */
export type RuleId =
  | ("over-limit" | "bond-trench" | "room-to-raise" | "type-limit" | "type-cautions" | "types-meet")
  | ("bracing-not-calculated" | "carpentry" | "heavy-bag" | "bag-density" | "narrow-base")
  | ("water-level" | "incomplete-totals" | "no-ground" | "open-toe" | "crosses-itself")
  | ("bases-overlap" | "enclosure" | "setback" | "kept-setback" | "no-go" | "tie-in")
  | ("close-bank" | "narrow-low" | "cross-slope" | "coarse-raster" | "datum" | "fall-direction")
  | ("freeboard" | "sliding" | "overturning" | "exit-gradient" | "creep" | "pumps")
  | ("pump-failure" | "inside-holes" | "time" | "forecast-crest" | "forecast-zero")
  | ("water-gets-in" | "enters-through-hole" | "overtops" | "building-wet" | "if-it-fails")
  | ("source-inside" | "crosses-water" | "not-reached" | "building-off-data" | "idle-source")
  | ("ground-reading" | "culvert" | "drain" | "let-in-by-pipe" | "reached-by-pipe")
  | "possible-culvert"
  | ("exit-road" | "closure")
  | ("leave" | "no-water" | "low-unconnected" | "hole-reached" | "coarse-trace");
