import type { PLAN_REFUSALS } from "../../../shared/words/refusals/plan.ts";
import type { PLAN_NOTES } from "../../../shared/words/refusals/plan-notes.ts";
import type { SamplesOf } from "./samples.ts";

const BARN = { of: "structure", name: "Barn" } as const;

export const PLAN_SAMPLES: SamplesOf<typeof PLAN_REFUSALS & typeof PLAN_NOTES> = {
  "plan/not-json": [
    { file: "plan", kind: "empty" },
    { file: "plan", kind: "tiff" },
    { file: "shapes", kind: "zip" },
    { file: "shapes", kind: "binary" },
    { file: "kml-gpx", kind: "xml" },
    { file: "plan", cause: "Unexpected token" },
  ],
  "plan/too-large": [{ file: "plan", came: 9_000_000, most: 8_000_000 }],
  "plan/cannot-read": [{ name: "barn.geojson", cause: "The file could not be found." }],
  "plan/too-deep": [{ file: "plan", deepest: 64 }],
  "plan/truncated": [
    { file: "shapes", open: 1 },
    { file: "shapes", open: 3 },
  ],
  "plan/hostile-key": [{ file: "plan" }],
  "plan/foreign": [
    { how: "no-collection", came: "Point" },
    { how: "no-settings" },
    { how: "settings-lost" },
  ],
  "plan/newer-version": [{ version: 2, known: 1 }],
  "plan/bad-version": [{ came: 1.5, most: 1 }],
  "plan/other-crs": [{ named: "EPSG:26915" }, { came: 5 }],
  "plan/no-features": [{ came: { entries: 2 } }],
  "plan/bad-feature": [
    { at: { of: "feature", feature: 2 }, complaint: { is: "no-feature", came: null } },
    { at: { of: "feature", feature: 2 }, complaint: { is: "no-properties", came: [1, 2] } },
    { at: { of: "feature", feature: 2 }, complaint: { is: "no-name", came: true } },
    {
      at: { of: "file" },
      complaint: { is: "too-many", what: "features", most: 20_000, came: 20_001 },
    },
    { at: { of: "file" }, complaint: { is: "too-many", what: "noGo", most: 200, came: 201 } },
    { at: { of: "gauge", feature: 7 }, complaint: { is: "second", what: "gauge" } },
  ],
  "plan/bad-geometry": [
    {
      at: { ...BARN, corner: 3 },
      complaint: { is: "no-lon-lat", came: [51, 123], likely: "swapped" },
    },
    { at: { of: "shape" }, complaint: { is: "no-lon-lat", came: [5e5, 4e6], likely: "grid" } },
    { at: { of: "structure" }, complaint: { is: "no-lon-lat", came: "north", likely: null } },
    { at: { of: "shape", feature: 3 }, complaint: { is: "no-list", came: 7 } },
    { at: { of: "shape", name: "Mill" }, complaint: { is: "no-corners", came: 7 } },
    { at: { of: "shape", name: "Mill" }, complaint: { is: "no-pair", came: { listOf: 9 } } },
    { at: BARN, complaint: { is: "no-polygon", came: null } },
    { at: BARN, complaint: { is: "no-outline" } },
    { at: BARN, complaint: { is: "no-point" } },
    { at: BARN, complaint: { is: "no-way" } },
    {
      at: BARN,
      complaint: { is: "other-type", expected: ["Point", "MultiPoint"], came: "Polygon" },
    },
    { at: BARN, complaint: { is: "several-parts", type: "MultiPolygon", parts: 2 } },
  ],
  "plan/bad-value": [
    { how: "no-settings", came: "yes" },
    {
      how: "setting",
      setting: "water",
      expected: { as: "object", keys: ["by", "stageM"] },
      came: 3,
    },
    { how: "setting", setting: "title", expected: { as: "text" }, came: 3 },
    {
      how: "invalid",
      why: { code: "plan/invalid", given: { is: "unknown-entry", key: "moat" } },
    },
  ],
  "plan/invalid": [
    { is: "no-plan", came: 3 },
    { is: "unknown-entry", key: "moat" },
    { is: "no-list", list: "roads", came: 3 },
    { is: "too-many", list: "terrain", most: 5000, came: 5001 },
    { is: "same-id", list: "alignments", id: "a" },
    { is: "no-chosen", chosenId: "z" },
    {
      is: "value",
      of: { list: "structures", called: "Barn" },
      corner: 2,
      said: "Expected a name.",
    },
    { is: "value", of: { list: "terrain", called: 4 }, corner: null, said: "Expected a name." },
    { is: "value", of: null, corner: null, said: "Expected a name." },
  ],
  "plan/unknown-section": [{ known: ["pyramid", "braced-wall"], came: "moat" }],
  "plan/no-water-stated": "no figures",
  "plan/elevation-ruling": "no figures",
  "plan/setting-kept": [{ setting: "water.color" }],
  "plan/nad83-taken": [{ offM: 2 }],
  "plan/other-roles-kept": [{ count: 1 }, { count: 3 }],
  "plan/kept-without-geometry": [{ at: BARN }],
  "plan/kept-as-other-type": [{ at: BARN, type: "Point", expected: ["LineString"] }],
  "plan/name-cut": [{ at: BARN, most: 120 }],
  "plan/parts-apart": [{ at: BARN, parts: 2 }],
  "plan/holes-left-out": [{ at: BARN }],
  "plan/id-changed": [{ at: BARN, was: "a", now: "a-2" }],
  "plan/no-chosen": [{ chosenId: "z" }],
  "plan/more-notes": [{ count: 12 }],
};
