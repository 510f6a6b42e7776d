import type { LonLat } from "../../shared/plan.ts";
import { samePlace } from "../../shared/plan-geometry.ts";

const DECIMALS = 9;

/** What one edit did to the corners of a line. `index` counts from 0; null when nothing changed. */
export interface CornerStep {
  readonly kind: "move" | "insert" | "remove";
  readonly index: number;
}

/** Compares the corners before and after an edit of one corner. */
export function cornerStep(before: readonly LonLat[], after: readonly LonLat[]): CornerStep | null {
  const shorter = Math.min(before.length, after.length);
  let index = 0;
  while (index < shorter && samePlace(before[index]!, after[index]!)) index++;
  if (after.length > before.length) return { kind: "insert", index };
  if (after.length < before.length) return { kind: "remove", index };
  return index < shorter ? { kind: "move", index } : null;
}

/** Names a step for undo. */
export function stepNote({ kind, index }: CornerStep, name: string): string {
  if (kind === "insert") return `Insert corner ${index + 1} in ${name}`;
  if (kind === "remove") return `Remove corner ${index + 1} of ${name}`;
  return `Move corner ${index + 1} of ${name}`;
}

/** Tells a step once it is done. */
export function stepSaid({ kind, index }: CornerStep): string {
  return `Corner ${index + 1} ${{ insert: "added", remove: "removed", move: "moved" }[kind]}`;
}

/** True when two lists of corners are the same places in the same order. */
export function sameCorners(a: readonly LonLat[], b: readonly LonLat[]): boolean {
  return a.length === b.length && a.every((corner, index) => samePlace(corner, b[index]!));
}

/** Rounded to nine decimals of a degree, a tenth of a millimetre: the drawing library refuses more. */
export function rounded(at: readonly number[]): LonLat {
  return [Number(at[0]!.toFixed(DECIMALS)), Number(at[1]!.toFixed(DECIMALS))];
}

/** Corners without those that repeat their neighbour; `closes` drops a repeated first corner at the end. */
export function distinct(corners: readonly LonLat[], closes: boolean): LonLat[] {
  const kept = corners.filter(
    (corner, index) => index === 0 || !samePlace(corner, corners[index - 1]!),
  );
  while (closes && kept.length > 1 && samePlace(kept[0]!, kept.at(-1)!)) kept.pop();
  return kept;
}
