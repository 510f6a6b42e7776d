import { createHash } from "node:crypto";
import type { Building } from "../../shared/buildings/types.ts";
import type { OpenTerrainRequest } from "../../shared/messages.ts";
import type { Plan } from "../../shared/plan.ts";
import type { CheckPart } from "../../shared/words/refusals/terminal.ts";

/** All that the answers of a check follow from. */
interface Asked {
  readonly plan: Plan;
  readonly buildings: readonly Building[];
  readonly levelsM: readonly number[];
  readonly mostOnOneLine: number;
  readonly ground: Omit<OpenTerrainRequest, "files"> & {
    readonly files: readonly {
      readonly name: string;
      readonly bytes: number;
      readonly at: number;
    }[];
  };
}

/** What the parts of a name are of, in their order. */
const PARTS: readonly CheckPart[] = ["plan", "buildings", "stages", "people", "ground"];
/** Of each part. */
const DIGITS = 8;

/** A name for a check that follows from all that its answers follow from, each part of it for itself. */
export function checkName({ plan, buildings, levelsM, mostOnOneLine, ground }: Asked): string {
  const { title: _, alignments: __, chosenId: ___, progress: ____, carried: _____, ...read } = plan;
  const parts = [read, buildings, levelsM, mostOnOneLine, ground];
  return parts.map((part) => digestOf(JSON.stringify(part))).join("");
}

/** In what two checks differ; nothing where one of them is no name of a check. */
export function differences(name: string, other: unknown): readonly CheckPart[] {
  if (typeof other !== "string" || other.length !== name.length) return [];
  return PARTS.filter((_, k) => partOf(name, k) !== partOf(other, k));
}

function partOf(name: string, k: number): string {
  return name.slice(k * DIGITS, (k + 1) * DIGITS);
}

function digestOf(text: string): string {
  return createHash("sha256").update(text).digest("hex").slice(0, DIGITS);
}
