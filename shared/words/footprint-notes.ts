import { MOST_WEIGHT } from "../buildings/from-shapes.ts";
import type {
  BuildingNote,
  FoundBuildings,
  LeftOutBuilding,
  LeftOutKind,
} from "../buildings/from-shapes-types.ts";
import { MAX_CORNERS } from "../plan-schema.ts";
import { formatArea, formatCount, type UnitSystem } from "../units.ts";

/** Button of the notice that footprints were removed. */
export const BRING_BACK = "Bring them back";

/** Examples that a sentence names. */
const MOST_NAMED = 5;

/** One building or shape that a sentence speaks of. */
interface Case {
  readonly sentence: Sentence;
  /** What it is called in the list of examples; empty = it is only counted. */
  readonly example: string;
  readonly count: number;
}

/** For one, and for many. */
type Sentence = readonly [string, string];

const LEFT_OUT: Readonly<Record<LeftOutKind, Sentence>> = {
  duplicate: [
    "outline repeats another and is left out",
    "outlines repeat another and are left out",
  ],
  sliver: [
    "outline is too small or narrow for a building and is left out",
    "outlines are too small or narrow for a building and are left out",
  ],
};
const TAKEN_IN: Readonly<Record<LeftOutKind, Sentence>> = {
  duplicate: [
    "outline repeats another and is taken all the same",
    "outlines repeat another and are taken all the same",
  ],
  sliver: [
    "outline is too small or narrow for a building and is taken all the same",
    "outlines are too small or narrow for a building and are taken all the same",
  ],
};
const NO_OUTLINE: Sentence = [
  "shape without an outline (a point, a line, or empty) is left out",
  "shapes without an outline (points, lines, or empty) are left out",
];
const BAD_SHAPE: Readonly<Record<Extract<BuildingNote, { kind: "left-out" }>["why"], Sentence>> = {
  "few-corners": [
    "shape with fewer than 3 corners is left out",
    "shapes with fewer than 3 corners are left out",
  ],
  "many-corners": [
    `shape with over ${formatCount(MAX_CORNERS)} corners is left out`,
    `shapes with over ${formatCount(MAX_CORNERS)} corners are left out`,
  ],
  "bad-coordinates": [
    "shape with coordinates that cannot be read is left out",
    "shapes with coordinates that cannot be read are left out",
  ],
};
const OFF_WHOLLY: Sentence = [
  "building is off the elevation data",
  "buildings are off the elevation data",
];
const OFF_PARTLY: Sentence = [
  "building is partly off the elevation data",
  "buildings are partly off the elevation data",
];
const PARTS: Sentence = [
  "building has several parts; one line goes around all of them",
  "buildings have several parts; one line goes around all of them",
];
const HOLES: Sentence = [
  "outline has holes; only its outer edge counts",
  "outlines have holes; only their outer edge counts",
];
const CROSSING: Sentence = [
  "outline crosses itself; correct it in a GIS",
  "outlines cross themselves; correct them in a GIS",
];
const REPEATED: Sentence = [
  "building has an id that is in the file twice, and gets another",
  "buildings have an id that is in the file twice, and get another",
];
const NO_FLOOR: Sentence = ["building has no floor", "buildings have no floor"];
const FLOOR: Sentence = [
  "floor is not taken: not a figure, 0, or far from the ground",
  "floors are not taken: not a figure, 0, or far from the ground",
];
const NEITHER = `neither First, Never, nor a number above 0 up to ${formatCount(MOST_WEIGHT)}`;
const PRIORITY: Sentence = [
  `priority is not taken: ${NEITHER}`,
  `priorities are not taken: ${NEITHER}`,
];

/** What is to be said of the buildings of a file, a sentence each: what is left out comes first. */
export function footprintNotes(
  { leftOut, notes }: FoundBuildings,
  system: UnitSystem,
): readonly string[] {
  const cases = [
    ...leftOut.map(({ building: { id }, why }) => doubtful(LEFT_OUT, id, why, system)),
    ...notes.map((note) => caseOf(note, system)),
  ];
  const bySentence = new Map<Sentence, Case[]>();
  for (const each of cases) {
    const same = bySentence.get(each.sentence);
    if (same) same.push(each);
    else bySentence.set(each.sentence, [each]);
  }
  return [...bySentence.values()].map(sentenceOf);
}

/** A button's words for kinds of outlines that are left out: `Take the 3 outlines that repeat another`. */
export function takeInWords(kind: LeftOutKind, count: number): string {
  const isOne = count === 1;
  const those = isOne ? "Take the outline that" : `Take the ${formatCount(count)} outlines that`;
  if (kind === "duplicate") return `${those} ${isOne ? "repeats" : "repeat"} another`;
  return `${those} ${isOne ? "is" : "are"} too small or narrow for a building`;
}

function doubtful(
  sentences: Readonly<Record<LeftOutKind, Sentence>>,
  id: string,
  why: LeftOutBuilding["why"],
  system: UnitSystem,
): Case {
  const how = why.kind === "duplicate" ? `as ${why.of}` : formatArea(why.areaM2, system);
  return { sentence: sentences[why.kind], example: `${id} (${how})`, count: 1 };
}

function caseOf(note: BuildingNote, system: UnitSystem): Case {
  const of = (sentence: Sentence, example: string): Case => ({ sentence, example, count: 1 });
  switch (note.kind) {
    case "parts":
      return of(PARTS, `${note.id} (${note.parts})`);
    case "holes":
      return of(HOLES, note.id);
    case "self-crossing":
      return of(CROSSING, note.id);
    case "off-data":
      return of(note.isWholly ? OFF_WHOLLY : OFF_PARTLY, note.id);
    case "repeated-id":
      return of(REPEATED, `${note.came} (now ${note.id})`);
    case "no-floor":
      return of(NO_FLOOR, note.id);
    case "doubtful-floor":
      return of(FLOOR, `${note.id} ("${note.came.slice(0, 20)}")`);
    case "bad-priority":
      return of(PRIORITY, `${note.id} ("${note.came.slice(0, 20)}")`);
    case "taken-in":
      return doubtful(TAKEN_IN, note.id, note.why, system);
    case "left-out":
      return of(BAD_SHAPE[note.why], `shape ${formatCount(note.feature + 1)}`);
    case "no-outline":
      return { sentence: NO_OUTLINE, example: "", count: note.count };
  }
}

function sentenceOf(cases: readonly Case[]): string {
  const count = cases.reduce((sum, each) => sum + each.count, 0);
  const [one, many] = cases[0]!.sentence;
  const lead = `${formatCount(count)} ${count === 1 ? one : many}`;
  const named = cases.flatMap(({ example }) => (example === "" ? [] : [example]));
  if (named.length === 0) return `${lead}.`;
  const more = named.length - MOST_NAMED;
  const rest = more > 0 ? ` and ${formatCount(more)} more` : "";
  return `${lead}: ${named.slice(0, MOST_NAMED).join(", ")}${rest}.`;
}
