import type { PipeName } from "../../checks-trace/pipes.ts";
import type { Culvert, Drain } from "../../plan.ts";
import { capital } from "../capital.ts";
import { listed } from "../list.ts";
import { type RulesOf, rule, type TextOf } from "./text.ts";

/** `the floor drain`. */
export const DRAIN_WORDS: Record<Drain["kind"], string> = {
  "floor-drain": "floor drain",
  "storm-inlet": "storm inlet",
  sewer: "sewer",
};

const PLUG_CULVERT =
  "plug it at the water's end, so that the water presses the plug in: an inflatable plug of the pipe's size, or a plate of plywood with poly sheeting under sandbags";

const PLUG_DRAIN: Record<Drain["kind"], string> = {
  "floor-drain":
    "plug it with a test ball or a twist plug of its size, and brace the plug against the ceiling",
  "storm-inlet": "plug its pipe with an inflatable plug of its size from above ground",
  sewer: "close its backwater valve, or have its cleanout plugged",
};

/** What no plug does. */
const PLUG_LIMITS =
  "A plug can leak or blow out, and rain and seepage no longer drain: have a pump there.";

/** What a gate does for a pipe that is not plugged. */
const GATE_WORDS: Record<"flap" | "gate", string> = {
  flap: "Its flap gate may stick open: do not count on it.",
  gate: "Shut its gate, check that it closes, and mark it as plugged.",
};

function gateWords(gate: Culvert["gate"]): string {
  return gate === "flap" || gate === "gate" ? ` ${GATE_WORDS[gate]}` : "";
}

/** `culvert "North road"`. */
function pipeWords({ name, kind }: PipeName): string {
  return `${kind === "culvert" ? "culvert" : DRAIN_WORDS[kind]} "${name}"`;
}

export function reachedWords(reaches: readonly string[]): string {
  if (reaches.length === 0) return "the ground inside the ring";
  return listed(reaches.map((name) => `"${name}"`));
}

function onlyThrough(pipes: readonly PipeName[], isKnown: boolean): string {
  const names = listed(pipes.map(pipeWords));
  return isKnown
    ? `only through ${names}`
    : `only through ${names}, if its inverts are low or it joins outside: that is not known`;
}

export const PIPE_TEXT: TextOf<
  | ("culvert-open" | "culvert-plugged" | "culvert-above")
  | ("drain-open" | "drain-not-known" | "drain-plugged" | "let-in-by-pipe" | "reached-by-pipe")
> = {
  "culvert-open": ({ culvert, gate, sizeM, invertM }, u) => {
    const size = sizeM === null ? "" : `, ${u.small(sizeM)}`;
    const passes =
      invertM === null
        ? "Its inverts are not measured: count on water through it."
        : `Water passes above ${u.elevation(invertM)}.`;
    return {
      what: `the line crosses culvert "${culvert}"${size}, which is not plugged. ${passes}${gateWords(gate)}`,
      remedy: `Before the water is there, ${PLUG_CULVERT}; or lead the line around it. ${PLUG_LIMITS}`,
    };
  },
  "culvert-plugged": ({ culvert }) => ({
    what: `the line crosses culvert "${culvert}", which is plugged.`,
    remedy: `Watch both ends of it. ${PLUG_LIMITS}`,
  }),
  "culvert-above": ({ culvert, aboveM }, u) => ({
    what: `the line crosses culvert "${culvert}"; its inverts, as typed, are ${u.length(aboveM)} over the top of levee.`,
    remedy: "Measure both inverts again, and have a plug of its size there.",
  }),
  "drain-open": ({ drain, type }) => ({
    what: `${capital(DRAIN_WORDS[type])} "${drain}" behind the line joins outside and is not plugged: water comes up through it.`,
    remedy: `Before the water is there, ${PLUG_DRAIN[type]}. ${PLUG_LIMITS} Never enter a manhole.`,
  }),
  "drain-not-known": ({ drain, type }) => ({
    what: `It is not known whether ${DRAIN_WORDS[type]} "${drain}" behind the line joins outside.`,
    remedy: `Find out where it leads. Until then, ${PLUG_DRAIN[type]}.`,
  }),
  "drain-plugged": ({ drain, type }) => ({
    what: `${capital(DRAIN_WORDS[type])} "${drain}" behind the line is plugged.`,
    remedy: `Watch it. ${PLUG_LIMITS}`,
  }),
  "let-in-by-pipe": ({ reaches, pipes, isKnown }) => ({
    what: `The water reaches ${reachedWords(reaches)} with the levee built, ${onlyThrough(pipes, isKnown)}.`,
    remedy: isKnown
      ? `Before the water is there, ${PLUG_CULVERT}; or lead the line across it. ${PLUG_LIMITS}`
      : "Look at it in the field and measure its inverts, or plug it.",
  }),
  "reached-by-pipe": ({ reaches, pipes, isKnown }) => ({
    what: `With nothing built the water reaches ${reachedWords(reaches)} ${onlyThrough(pipes, isKnown)}.`,
    remedy: isKnown
      ? `Plug it before the water is there and look for others: it may save the levee. ${PLUG_LIMITS}`
      : "Look at it in the field and measure its inverts.",
  }),
};

const SAME_LEVEL = rule(
  "An open pipe brings the water to the same level at both ends once it is above both inverts. How fast it gets through is not counted.",
  "common practice, no source",
);

export const PIPE_RULES: RulesOf<"culvert" | "drain" | "let-in-by-pipe" | "reached-by-pipe"> = {
  culvert: rule(
    "No open pipe leads under the line. Sewers, manholes, field tiles and utility conduits lead water past flood works.",
    "FFO-96; plugs of culverts: common practice, no source",
  ),
  drain: rule(
    "Drains behind the line that join outside are plugged before the water is there; backwater valves have failed.",
    "NDSU-PD, NDSU-RD, FFO-96",
  ),
  "let-in-by-pipe": SAME_LEVEL,
  "reached-by-pipe": SAME_LEVEL,
};
