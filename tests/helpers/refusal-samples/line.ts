import type { LINE_REFUSALS } from "../../../shared/words/refusals/line.ts";
import type { SamplesOf } from "./samples.ts";

export const LINE_SAMPLES: SamplesOf<typeof LINE_REFUSALS> = {
  "plan/no-water": "no figures",
  "line/too-few-corners": [{ kind: "ring", name: "A", corners: 2, least: 3 }],
  "line/no-length": [{ name: "A" }],
  "line/too-long": [{ mostM: 40_000, lengthM: 52_000 }],
  "plan/empty": "no figures",
  "plan/too-wide": [{ widestM: 14_000, mostM: 12_000 }],
  unexpected: [{ message: "No such corner." }],
  cancelled: [{ overtaken: true }, { overtaken: false }],
};
