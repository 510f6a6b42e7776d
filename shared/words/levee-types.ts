import { FOOT_M, INCH_M } from "../constants.ts";
import { type Units, unitsOf } from "./units.ts";

/** What a levee type says of itself. */
export interface LeveeTypeText {
  /** `Sandbag pyramid`. */
  readonly name: string;
  /** What it is and where it serves, one sentence. */
  readonly about: string;
  readonly source: string;
  /** Where its height limit comes from, where sources disagree, or what it depends on. */
  readonly limit: { readonly source: string; readonly note: string };
  /** The trade's cautions, each one sentence with what to do. */
  readonly cautions: readonly string[];
}

export type LeveeTypeId = keyof typeof TEXT;

/** Words of a levee type. An id that is not known is a programmer's error. */
export function leveeTypeText(id: string, units: Units): LeveeTypeText {
  return TEXT[id as LeveeTypeId](units);
}

export function leveeTypeName(id: string): string {
  return leveeTypeText(id, unitsOf("us")).name;
}

/** A name or sentence to go on with in the middle of a sentence. */
export function inSentence(words: string): string {
  return `${words[0]!.toLowerCase()}${words.slice(1)}`;
}

const TEXT = {
  pyramid: (u: Units): LeveeTypeText => ({
    name: "Sandbag pyramid",
    about: "Bags laid to a base three times the height: the standard sandbag levee.",
    source: "NDSU-11, FFO-96",
    limit: {
      source: "common practice, no source; MO-2217",
      note: `Sources disagree: ${u.figure(3 * FOOT_M)} preferred and ${u.figure(5 * FOOT_M)} practical (MO-2217); tables go to ${u.figure(6 * FOOT_M)} (EMI-L4).`,
    },
    cautions: [],
  }),
  "braced-wall": (u: Units): LeveeTypeText => ({
    name: "Braced wall of bags and plywood",
    about:
      "Bags straight up with plywood behind and braces to the ground: where there is no room for a base, and only as strong as its bracing.",
    source: "common practice, no source; braces as in DWR-03",
    limit: {
      source: "judgement; F312",
      note: `No published limit for such a wall; F312 limits floodwalls to ${u.figure(3 * FOOT_M)} of flood, the bracing of boards is published for less than ${u.figure(3 * FOOT_M)} (EMI-L4, FFO-96).`,
    },
    cautions: [
      "Have the posts, braces and stakes sized by a licensed engineer and follow the local code: soft, wet ground lets stakes go.",
      "Call for utility locates before driving a stake; brace on the land side, nail every joint twice (DWR-03) and watch the stakes as the water rises.",
      "Never brace it against the wall of a building.",
    ],
  }),
  "plywood-box": (u: Units): LeveeTypeText => ({
    name: "Plywood box filled with sand",
    about:
      "Two rows of plywood, staked and tied across, filled with loose sand: half to two thirds of the width of a pyramid, and no bags.",
    source: "FFO-96, DWR-03 (mud box)",
    limit: {
      source: "judgement; FFO-96, DWR-03",
      note: `Loose sand has no published limit above that of bags. FFO-96 gives ${u.figure(6 * FOOT_M)} for tamped earth or clay at a width of twice the height; DWR-03 shows ${u.figure(3 * FOOT_M)} at ${u.small(30 * INCH_M)} wide.`,
    },
    cautions: [
      "Never fill it with sandbags: tamped earth or clay in layers (FFO-96); loose sand is weaker.",
      "Line it with poly sheeting that has holes at the bottom, or with burlap, and close its ends with bags (DWR-03).",
      "Wet sand bursts boards that are not tied: whether posts and ties carry its push is not calculated; ask a licensed engineer.",
      "Call for utility locates before driving a post or stake.",
    ],
  }),
  "lumber-topping": (u: Units): LeveeTypeText => ({
    name: "Lumber and sack topping",
    about: `Boards on driven stakes, backed with sacks and braced: raises a levee or firm ground by less than ${u.figure(3 * FOOT_M)} where the crown is narrow.`,
    source: "DWR-03 p49; EMI-L4, FFO-96 (flashboards)",
    limit: {
      source: "EMI-L4, FFO-96",
      note: `For toppings of ${u.figure(1.5 * FOOT_M)} to less than ${u.figure(3 * FOOT_M)}; below ${u.figure(1.5 * FOOT_M)} a cap of earth or bags serves (FFO-96).`,
    },
    cautions: [
      "Call for utility locates, drive the stakes, never dig for them, and tamp the earth behind (EMI-L4, FFO-96).",
      "Line the trench under the boards with empty sacks and put two nails in every joint (DWR-03).",
      "Waves break it and wood warps: cover its water side with poly sheeting and watch it (EMI-L4, FFO-96).",
      "Have a licensed engineer judge the ground or levee under it before it is loaded higher.",
    ],
  }),
  "earth-levee": (u: Units): LeveeTypeText => ({
    name: "Earth levee",
    about:
      "Earth tamped in layers, flatter than bags: where there is room, earth and equipment for it, and no bags to spare.",
    source: "IS-280, IL-RET, LSU",
    limit: {
      source: "F312, IS-280",
      note: `Flood of at most ${u.figure(5 * FOOT_M)} for a levee (F312) and ${u.figure(FOOT_M)} of freeboard; IS-280 prints ${u.figure(6 * FOOT_M)} of settled height.`,
    },
    cautions: [
      "Call for utility locates, strip all sod and place the earth in thin layers, each tamped (IL-RET): loose earth washes away.",
      "Cover its water side with poly sheeting weighted with bags before waves or current reach it; that sheeting is not in the count.",
      "Keep heavy equipment off a wet crown (FFO-96), and follow the local code: earthworks often need a permit and a licensed engineer.",
    ],
  }),
  raised: (): LeveeTypeText => ({
    name: "Raised sandbag levee",
    about:
      "A pyramid that is already built and is raised on its own base, widened where that would get too narrow: only what is added is counted.",
    source: "NDSU-NR (base at least twice the height)",
    limit: {
      source: "common practice, no source; MO-2217",
      note: "As for a pyramid: what is there and what is added together stay within the height limit.",
    },
    cautions: [
      "Measure what is already built before you count on it: height, base and how far it has settled.",
      "Take back the poly sheeting on the crown, lay the new bags in bond with the old, and bring new sheeting up over the raised face (common practice, no source).",
      "Raise no part that leaks, leans or moves: widen it on the land side first.",
    ],
  }),
  "two-bag-wall": (u: Units): LeveeTypeText => ({
    name: "Narrow wall, two bags wide",
    about: `Bags straight up, two wide: up to ${u.figure(FOOT_M)} high with clusters of bags behind it; deeper water pushes it away.`,
    source: "NDSU-11",
    limit: {
      source: "NDSU-11",
      note: `A wall of up to ${u.figure(FOOT_M)} needs no pyramid where clusters of bags support it every ${u.figure(5 * FOOT_M)}; nothing higher is published for a narrow wall.`,
    },
    cautions: [
      `Set a cluster of bags against its land side every ${u.figure(5 * FOOT_M)} (NDSU-11); those bags are not in the count: add them.`,
      "Do not raise it: water of a few feet pushes it away. Where the river may go higher, lay the base of a pyramid from the start.",
    ],
  }),
} as const;

/** What a line is built as, in a few words: `sandbag pyramid`, `sandbag pyramid and 2 more`. */
export function typesWords(reaches: readonly { readonly section: string }[]): string {
  const [first, ...more] = [...new Set(reaches.map(({ section }) => section))];
  if (!first) return "";
  const name = inSentence(leveeTypeName(first));
  return more.length > 0 ? `${name} and ${more.length} more` : name;
}

/** `2 figures differ from their defaults`. */
export function changedFiguresWords(count: number): string {
  return count === 1
    ? "1 figure differs from its default"
    : `${count} figures differ from their defaults`;
}
