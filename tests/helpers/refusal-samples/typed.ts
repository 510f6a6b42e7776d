import { SETTINGS } from "../../../shared/settings.ts";
import type { TYPED_REFUSALS } from "../../../shared/words/refusals/typed.ts";
import type { SamplesOf } from "./samples.ts";

const crown = SETTINGS["section.crownM"];
const conductivity = SETTINGS["holding.fillHighMPerS"];

export const TYPED_SAMPLES: SamplesOf<typeof TYPED_REFUSALS> = {
  "setting/unreadable": [
    { setting: crown, hasDefault: true, came: "wide" },
    { setting: conductivity, hasDefault: false, came: "" },
  ],
  "setting/out-of-range": [{ setting: crown, hasDefault: true, came: "400" }],
  "field/out-of-range": [
    { kind: "offset", least: 0, most: 50, came: 80 },
    { kind: "fine-length", least: 0, most: 50, came: 80 },
    { kind: "station", least: 0, most: 50, came: 80 },
    { kind: "bearing", least: 0, most: 359, came: -2 },
    { kind: "coordinate", least: -90, most: 90, came: 91 },
    { kind: "fall-in-100", least: 0, most: 0.1, came: 0.2 },
    { kind: "times-height", least: 2, most: 5, came: 8 },
    { kind: "elevation", least: -500, most: 9000, came: 9001 },
  ],
  "field/not-whole": [{ came: 2.5 }],
  "length/unreadable": [
    { came: "a lot", isDecimalComma: false },
    { came: "3,5", isDecimalComma: true },
    { came: "", isDecimalComma: false },
  ],
  "station/unreadable": [
    { came: "12+100", below: 100 },
    { came: "here", below: null },
  ],
  "degrees/unreadable": [
    { least: -90, most: 90, came: "91" },
    { least: -90, most: 90, came: "" },
  ],
  "corners/unreadable": [{ least: 4, most: 200 }],
  "lesson/not-a-figure": [
    { knob: "slope", came: "steep" },
    { knob: "baseRatio", came: "" },
  ],
  "time/start": [{ came: "soon" }, { came: "" }],
  "readings/no-line": "no figures",
};
