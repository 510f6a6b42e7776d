import type { LoneValue } from "../../../shared/ground-marks.ts";
import type { GROUND_REFUSALS } from "../../../shared/words/refusals/ground.ts";
import type { SamplesOf } from "./samples.ts";

const MARK: LoneValue = {
  ...{ value: -99, unit: "foot", file: { name: "dem.tif", bytes: 1 }, cells: 437, share: 0.044 },
  ...{ looked: "all", side: "below", gapM: 100.4 },
};
const LEFT = {
  ...{ rmseM: 0.35, correctionM: 0.1, datumNote: "NGVD 29", sameDatumNote: "Both NGVD 29" },
  offsetM: 0.4,
};

export const GROUND_SAMPLES: SamplesOf<typeof GROUND_REFUSALS> = {
  "ground/none": "no figures",
  "ground/mark-unknown": [
    { mark: MARK },
    { mark: { ...MARK, cells: 1, share: 0.0004, looked: "plan", side: "above" } },
    { mark: { ...MARK, looked: "sample" } },
  ],
  "ground/other-data": [
    { left: LEFT, canUndo: true },
    {
      left: { rmseM: null, correctionM: 0, datumNote: "", sameDatumNote: "", offsetM: 0.4 },
      canUndo: false,
    },
    { left: { ...LEFT, offsetM: null }, canUndo: false },
  ],
  "plan/elsewhere": [{ apart: null }, { apart: { distanceM: 320_000, bearingDeg: 224 } }],
  "plan/example-left": [{ ground: "dem.tif" }],
  "plan/other-terrain": [{ names: ["west.tif", "east.tif"] }],
  "place/unreadable": [{ came: "north" }],
  "place/elsewhere": [{ came: "44.1, -93.2" }],
  "file/directory": [
    { folder: "survey", most: null },
    { folder: "survey", most: 5000 },
  ],
  "address/unreadable": [{ came: "ftp://host.example/dem.tif" }],
  "address/hosts": [{ hosts: ["https://a.example", "https://b.example"] }],
  "address/ask": [{ names: "west.tif, east.tif", hosts: ["a.example"] }],
};
