import type { PROGRAM_REFUSALS } from "../../../shared/words/refusals/program.ts";
import type { SamplesOf } from "./samples.ts";

export const PROGRAM_SAMPLES: SamplesOf<typeof PROGRAM_REFUSALS> = {
  "program/new-version": "no figures",
  "engine/crashed": "no figures",
  "program/part-missing": [{ part: "the printed pages" }],
};
