import type { Materials } from "../sizing-types.ts";
import { formatCount, type UnitSystem, volumeFigure, volumeUnit } from "../units.ts";

/** Materials that are counted by one number each; areas and lengths are in their pieces. */
export type MaterialKey = Exclude<keyof Materials, "plywoodM2" | "lumberM" | "boardsM">;

/** One material of other sections than bags: what it is called and how much of it there is. */
export interface TakenMaterial {
  readonly key: MaterialKey;
  /** As on an order. */
  readonly name: string;
  /** As the head of a column, with the unit of `figure`. */
  readonly head: string;
  /** With its unit where it has one. */
  readonly amount: string;
  /** Without it; a dash where there is none. */
  readonly figure: string;
  /** As part of a sentence: "12 panels of plywood". */
  readonly words: string;
}

interface MaterialWords {
  readonly key: MaterialKey;
  readonly name: (system: UnitSystem) => string;
  readonly head: string;
  /** Figure and unit apart; no unit for what is counted in pieces. */
  readonly written: (value: number, system: UnitSystem) => { figure: string; unit: string };
  readonly words: (amount: string) => string;
}

function volume(m3: number, system: UnitSystem) {
  return { figure: volumeFigure(m3, system), unit: volumeUnit(system) };
}

function pieces(count: number) {
  return { figure: formatCount(count), unit: "" };
}

const MATERIALS: readonly MaterialWords[] = [
  {
    key: "looseSandM3",
    name: () => "Of the sand, filled loose",
    head: "Loose sand",
    written: volume,
    words: (amount) => `${amount} of loose sand`,
  },
  {
    key: "earthM3",
    name: () => "Earth, tamped in place",
    head: "Earth",
    written: volume,
    words: (amount) => `${amount} of earth`,
  },
  {
    key: "plywoodSheets",
    name: (system) => `Plywood, panels of ${system === "us" ? "4 × 8 ft" : "1.22 × 2.44 m"}`,
    head: "Plywood panels",
    written: pieces,
    words: (amount) => `${amount} panels of plywood`,
  },
  {
    key: "lumberPieces",
    name: (system) => `Lumber, ${system === "us" ? "2 × 4 in, 10 ft" : "5 × 10 cm, 3.05 m"} long`,
    head: "Lumber, pieces",
    written: pieces,
    words: (amount) => `${amount} pieces of lumber`,
  },
  {
    key: "boardPieces",
    name: (system) =>
      `Boards, ${system === "us" ? "1 × 12 in, 12 ft" : "2.5 × 30 cm, 3.66 m"} long`,
    head: "Boards",
    written: pieces,
    words: (amount) => `${amount} boards`,
  },
  {
    key: "stakes",
    name: () => "Stakes and posts",
    head: "Stakes",
    written: pieces,
    words: (amount) => `${amount} stakes`,
  },
];

/**
 * What is taken beside bags, in the order of an order; only what `of` takes some of, so that several reaches
 * can be told in the same columns.
 */
export function takenMaterials(
  materials: Materials,
  system: UnitSystem,
  of: Materials = materials,
): TakenMaterial[] {
  return MATERIALS.filter(({ key }) => of[key] > 0).map(({ key, name, head, written, words }) => {
    const { figure, unit } = written(materials[key], system);
    const amount = unit === "" ? figure : `${figure} ${unit}`;
    return {
      key,
      name: name(system),
      head: unit === "" ? head : `${head}, ${unit}`,
      amount,
      figure: materials[key] > 0 ? figure : "–",
      words: words(amount),
    };
  });
}

/** What a stretch takes, in a few words: "310 bags, 12 panels of plywood, 40 stakes"; empty where nothing. */
export function stretchTakes(
  { bags, materials }: { readonly bags: number; readonly materials: Materials },
  system: UnitSystem,
): string {
  const inBags = bags > 0 ? [`${formatCount(bags)} bags`] : [];
  return [...inBags, ...takenMaterials(materials, system).map(({ words }) => words)].join(", ");
}
