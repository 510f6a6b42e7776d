import type { Stretch } from "./stretch.ts";

/** Where along a line a finding is, metres of chainage. */
export type Where =
  | { readonly at: "whole-line" }
  | { readonly at: "station"; readonly chainageM: number }
  | {
      readonly at: "stretch";
      readonly fromM: number;
      readonly toM: number;
      /** True on a ring where it runs over the closing point, so that it ends before it begins. */
      readonly overClosing: boolean;
    }
  | {
      /** Several stretches in one; the worst of them is named. */
      readonly at: "stretches";
      readonly count: number;
      /** True where the worst few of all are listed on their own beside it. */
      readonly isRest: boolean;
      readonly lengthM: number;
      readonly worst: Where;
    };

/** Where a stretch runs. */
export function whereOf({ parts, whole }: Stretch): Where {
  if (whole) return { at: "whole-line" };
  const [fromM, toM] = [parts[0]!.fromM, parts.at(-1)!.toM];
  return { at: "stretch", fromM, toM, overClosing: parts.length > 1 };
}

/** A station. */
export function atStation(chainageM: number): Where {
  return { at: "station", chainageM };
}
