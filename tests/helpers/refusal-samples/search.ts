import type { SEARCH_REFUSALS } from "../../../shared/words/refusals/search.ts";
import type { SamplesOf } from "./samples.ts";

const TOWARD = [{ towardDeg: -45 }, { towardDeg: 179.9 }] as const;

export const SEARCH_SAMPLES: SamplesOf<typeof SEARCH_REFUSALS> = {
  "site/no-structure": [{ ofPlan: true }, { ofPlan: false }],
  "site/flat-structure": "no figures",
  "site/window-misses-structure": "no figures",
  "site/too-wide": [{ acrossM: 2400, mostM: 2000 }],
  "site/too-few-corners": [
    { closed: true, corners: 2 },
    { closed: false, corners: 1 },
  ],
  "site/out-of-time": [
    { capMs: 10, buildings: 1 },
    { capMs: 2500, buildings: 3 },
  ],
  "site/no-ring": [{ buildings: 1 }, { buildings: 4 }],
  "site/no-ground": "no figures",
  "site/edge-of-data": TOWARD,
  "site/water-in-the-way": TOWARD,
  "site/all-no-go": TOWARD,
  "site/window-too-small": TOWARD,
  "plan/no-such-line": [{ id: "a-7" }],
  "buildings/no-water": [{ levelM: 265.4 }],
  "choice/bad-figure": [
    { lineId: null, came: -3 },
    { lineId: "a-7", came: -0.5 },
  ],
  "choice/same-id": [{ id: "a-7" }],
};
