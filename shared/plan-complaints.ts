import { type Refusal, refusal } from "./failure.ts";
import type { FeatureList } from "./plan-draft.ts";
import type { Role } from "./plan-feature.ts";
import type { MAX_COUNT } from "./plan-schema.ts";
import type { Came } from "./plan-text.ts";

/** What of a file a complaint is about: a shape or feature by its name, or its number from 1, and a corner of it. */
export interface FilePlace {
  readonly of: Role | "feature" | "shape" | "file";
  readonly name?: string;
  readonly feature?: number;
  /** From 1. */
  readonly corner?: number;
}

/** What is wrong with a pair of coordinates, with the likely cause. */
export interface LonLatComplaint {
  readonly is: "no-lon-lat";
  readonly came: Came;
  readonly likely: "swapped" | "grid" | null;
}

/** What is wrong with coordinates. */
export type GeometryComplaint =
  | LonLatComplaint
  | { readonly is: "no-list" | "no-corners" | "no-pair" | "no-polygon"; readonly came: Came }
  | { readonly is: "no-outline" | "no-point" | "no-way" }
  | { readonly is: "other-type"; readonly expected: readonly string[]; readonly came: Came }
  | { readonly is: "several-parts"; readonly type: string; readonly parts: number };

/** What is wrong with a feature beside its coordinates. */
export type FeatureComplaint =
  | { readonly is: "no-feature" | "no-properties" | "no-name"; readonly came: Came }
  | {
      readonly is: "too-many";
      readonly what: FeatureList | "features";
      readonly most: number;
      readonly came: number;
    }
  | { readonly is: "second"; readonly what: "gauge" | "flow" };

/** The lists of a plan. */
export type PlanList = keyof typeof MAX_COUNT;

/** Why a value is no plan. */
export type PlanComplaint =
  | { readonly is: "no-plan"; readonly came: Came }
  | { readonly is: "unknown-entry"; readonly key: string }
  | { readonly is: "no-list"; readonly list: PlanList; readonly came: Came }
  | {
      readonly is: "too-many";
      readonly list: PlanList;
      readonly most: number;
      readonly came: number;
    }
  | { readonly is: "same-id"; readonly list: PlanList; readonly id: Came }
  | { readonly is: "no-chosen"; readonly chosenId: Came }
  | BadPlanValue;

/** A value of a plan that is not as it should be. */
export interface BadPlanValue {
  readonly is: "value";
  /** The entry of a list that has it, by its name or else its number from 1; null = none has. */
  readonly of: { readonly list: PlanList; readonly called: string | number } | null;
  /** From 1. */
  readonly corner: number | null;
  /** What is wrong with it: a sentence of `words/refusals/plan-values`, in the units of a plan file. */
  readonly said: string;
}

/** A file's defect in one feature's coordinates. */
export function badGeometry(at: FilePlace, complaint: GeometryComplaint): Refusal {
  return refusal("plan/bad-geometry", { at, complaint });
}

/** A file's defect in one feature. */
export function badFeature(at: FilePlace, complaint: FeatureComplaint): Refusal {
  return refusal("plan/bad-feature", { at, complaint });
}
