import { distanceWords, elevationWords, lengthWords, stationWords } from "../checks/words.ts";
import { FAR_M } from "../level-doubt.ts";
import { isProtected } from "../protected.ts";
import type { FirstOver, Passage } from "../water-types.ts";
import { type LineContext, nameOf, type TraceFinding, type TraceRule } from "./trace-rule.ts";

/** Nearer to the line than this is at it, metres. */
const AT_LINE_M = 3;

/** Water that gets to what the line is for. */
export const notDry: TraceRule<LineContext> = {
  id: "not-dry",
  rule: "With the levee built to its crest, the forecast water reaches no structure it is for. Ground counts as under water when it is strictly below the surface and joined to a source over such ground, corner to corner too.",
  source: "common practice, no source",
  find: (context) => {
    const { wayIn, kind } = context.line;
    if (!wayIn) return [];
    const over = wayIn.groundM === null ? "" : `, over ground at ${elevationWords(wayIn.groundM)}`;
    return [
      {
        severity: "stop",
        fromM: wayIn.chainageM,
        at: wayIn.at,
        message: `The water comes in ${placeWords(wayIn)}${over}, and reaches ${nameOf(context, wayIn.structureId)}.`,
        remedy:
          kind === "ring"
            ? "Lead the ring round all that is to stay dry, with the water outside it."
            : "Lead the ends on until the ground reaches the crest, or close the line to a ring.",
      },
    ];
  },
};

/** Water that can get in only over ground that is not known. */
export const entersThroughHole: TraceRule<LineContext> = {
  id: "enters-through-hole",
  rule: "A hole in the data is never taken as ground that holds water back.",
  source: "judgement",
  find: (context) =>
    context.line.structures.flatMap(({ id, throughHole, wet }): TraceFinding[] => {
      if (!throughHole) return [];
      const name = nameOf(context, id);
      const remedy = "Survey the ground elevations there, or open elevation data that covers it.";
      if (throughHole.alone) {
        const message = `There is no elevation data at the place marked: whether ${name} stays dry hangs on the ground in that hole, and is not known.`;
        return [{ severity: "stop", at: throughHole.at, message, remedy }];
      }
      if (wet) return [];
      const message = `The ground is not known at the place marked: if it is low there, the rising water reaches ${name} over it first.`;
      return [{ severity: "caution", at: throughHole.at, message, remedy }];
    }),
};

/** How far the river may rise; not said where that is so far that water and ground cannot belong together. */
export const holdsTo: TraceRule<LineContext> = {
  id: "holds-to",
  rule: "The level at which a rising river first reaches what the line is for, by the lowest way over ground and crest.",
  source: "common practice, no source",
  find: ({ plan, line }) => {
    const { firstOver, dry } = line;
    if (!firstOver || dry !== true || firstOver.riseM > FAR_M) return [];
    const early = firstOver.riseM < plan.water.freeboardM - 0.005;
    return [
      {
        severity: early ? "caution" : "note",
        fromM: firstOver.chainageM,
        at: firstOver.at,
        message: `Overtops above ${levelWords(firstOver)}, ${lengthWords(firstOver.riseM)} above the sized-for water; freeboard is not protection. ${beyondWords(firstOver)}`,
        remedy: early ? earlyRemedy(line.kind) : LEAVE_REMEDY,
      },
    ];
  },
};

const LEAVE_REMEDY =
  "Set the stage at which people leave by the exit road and the time they need, not by this level. Watch this place first.";

function earlyRemedy(kind: "ring" | "line"): string {
  const why = "The ground lets water in before the crest does";
  return kind === "ring"
    ? `${why}: lead the ring over higher ground at the place marked.`
    : `${why}: lead the ends on until the ground reaches the crest.`;
}

/** "stage 32.0 ft, which is 873.90 ft at that place" */
function levelWords({ stageM, elevationM }: FirstOver): string {
  const level = elevationWords(elevationM);
  return stageM === null ? level : `stage ${lengthWords(stageM)}, which is ${level} at that place`;
}

/** What a river higher than that does, as a sentence. */
function beyondWords(first: FirstOver): string {
  if (first.over === "crest") {
    return `A higher river runs over the top of levee, all along the line at about the same time; it is worst at ${stationWords(first.chainageM)}, where the levee stands highest.`;
  }
  const ground = first.groundM === null ? "without data" : `at ${elevationWords(first.groundM)}`;
  return `A higher river comes in ${placeWords(first)}, over ground ${ground}.`;
}

/** Structures beside the line. */
export const structureWetAnyway: TraceRule<LineContext> = {
  id: "structure-wet-anyway",
  rule: "What the line leaves outside is known to be under water.",
  source: "judgement",
  find: ({ plan, line, structures }) =>
    structures
      .filter(({ id }) => line.leftWet.includes(id))
      .map(({ id, name, depthM, sillAt }) => {
        const deep = depthM === null ? "" : `, ${lengthWords(depthM)} deep`;
        const isChosen = plan.structures.some((each) => each.id === id && !isProtected(each));
        return {
          severity: isChosen ? "note" : "caution",
          at: sillAt,
          message: isChosen
            ? `"${name}" is left outside and will be flooded${deep}.`
            : `"${name}" lies outside the line, and the forecast water reaches it${deep}.`,
          remedy: isChosen
            ? "Clear it in time: fuel, chemicals and livestock first."
            : "Clear it in time, or lead the line round it.",
        };
      }),
};

/** What a failure would mean. */
export const ifItFails: TraceRule<LineContext> = {
  id: "if-it-fails",
  rule: "People know how deep the water would stand if the levee failed, and leave in time.",
  source: "common practice, no source",
  find: ({ line, structures }) => {
    const kept = new Set(line.structures.filter(({ wet }) => wet === false).map(({ id }) => id));
    const deep = structures.filter(({ id, depthM }) => kept.has(id) && depthM !== null);
    if (deep.length === 0) return [];
    const worst = deep.reduce((most, each) => (each.depthM! > most.depthM! ? each : most));
    return [
      {
        severity: "caution",
        at: null,
        message: `If the levee fails at the forecast level, water stands up to ${lengthWords(worst.depthM!)} deep at "${worst.name}".`,
        remedy: "Decide the stage at which people leave, and leave then.",
      },
    ];
  },
};

/** A ring with the river in it. */
export const sourceInside: TraceRule<LineContext> = {
  id: "source-inside",
  rule: "Water comes from outside of a ring.",
  source: "judgement",
  find: ({ plan, line }) =>
    (plan.sources ?? [])
      .filter(({ id }) => line.sourcesInside.includes(id))
      .map(({ name, at }) => ({
        severity: "stop",
        at,
        message: `The source "${name}" lies inside the ring.`,
        remedy: "Move the mark into the river, or the ring away from it.",
      })),
};

/** A line through water that is there before any flood. */
export const crossesWater: TraceRule<LineContext> = {
  id: "crosses-water",
  rule: "The line stays out of water as it stood on the day of the survey: ground joined to a marked source and no more than 0.1 m higher.",
  source: "judgement",
  find: ({ line }) =>
    line.inWaterM.map(({ fromM, toM }) => ({
      severity: "stop",
      fromM,
      toM,
      at: null,
      message: `${stationWords(fromM)} to ${stationWords(toM)}: the line crosses water that is there already, on ${distanceWords(toM - fromM)}.`,
      remedy: "Lead the line over dry ground: bags cannot be laid in standing water.",
    })),
};

/** Where a passage is: at a station, round an end, or beside the line. */
function placeWords({ chainageM, fromLineM, end }: Passage): string {
  const station = stationWords(chainageM);
  const isFar = fromLineM > AT_LINE_M;
  if (end !== null) {
    return `round the end at ${station}${isFar ? `, ${distanceWords(fromLineM)} away from it` : ""}`;
  }
  return isFar ? `${distanceWords(fromLineM)} beside the line at ${station}` : `at ${station}`;
}
