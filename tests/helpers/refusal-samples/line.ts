import type { LINE_REFUSALS } from "../../../shared/words/refusals/line.ts";
import type { SamplesOf } from "./samples.ts";

export const LINE_SAMPLES: SamplesOf<typeof LINE_REFUSALS> = {
  "plan/no-water": "no figures",
  "plan/empty": "no figures",
  "plan/too-wide": [{ widestM: 14_000, mostM: 12_000 }],
  unexpected: [{ message: "No such corner." }],
  cancelled: [{ overtaken: true }, { overtaken: false }],
};
