import type { DOCUMENT_REFUSALS } from "../../../shared/words/refusals/document.ts";
import type { EXPORT_REFUSALS } from "../../../shared/words/refusals/exports.ts";
import type { FIELD_REFUSALS } from "../../../shared/words/refusals/field.ts";
import type { SamplesOf } from "./samples.ts";

const EMPTY = { code: "plan/empty", given: {} };

export const DOCUMENT_SAMPLES: SamplesOf<typeof DOCUMENT_REFUSALS> = {
  "autosave/full": [{ what: "plan" }, { what: "terrain" }],
  "autosave/almost-full": [{ leftBytes: 2.1e9 }],
  "autosave/refused": [{ cause: "denied." }],
  "autosave/again": "no figures",
  "autosave/unreadable": [{ why: EMPTY }],
  "autosave/view-only": "no figures",
  "autosave/taken-over": "no figures",
  "autosave/too-many-pages": "no figures",
  "autosave/terrain-lost": "no figures",
  "plan/several": [
    { first: { name: "a.geojson", why: EMPTY }, others: ["b.geojson"] },
    { first: { name: "a.geojson", why: EMPTY }, others: ["b", "c", "d", "e", "f", "g"] },
  ],
  "reach/outside": "no figures",
  "reach/taken": [{ closestM: 0.5 }],
  "reach/passed": "no figures",
  "reach/stretch": "no figures",
  "reach/short": [{ shortestM: 1 }],
  "ring/no-structure": "no figures",
  "ring/distance": [{ mostM: 500, cameM: 612 }],
  "ring/flat-structure": "no figures",
  "draw/too-few": [
    ...([{ shape: "nothing" }, { shape: "ring" }, { shape: "line" }] as const),
    ...([{ shape: "building" }, { shape: "no-go" }, { shape: "flow" }] as const),
    ...([{ shape: "gauge" }, { shape: "source" }, { shape: "culvert" }] as const),
    ...([{ shape: "road" }, { shape: "drain" }] as const),
    ...([{ shape: "work-place" }, { shape: "truck-way" }] as const),
  ],
  "draw/not-editable": [
    { name: "A", cause: null },
    { name: "A", cause: "Feature is invalid" },
  ],
  "site/unchanged": [
    { name: "A", why: "changed" },
    { name: "A", why: "no-saving" },
  ],
  "base-map/address": "no figures",
};

export const EXPORT_SAMPLES: SamplesOf<typeof EXPORT_REFUSALS> = {
  "export/grid-unit": [{ crs: "EPSG:2000", unitM: 0.9144 }],
  "export/no-picture": "no figures",
  "export/copied": [{ table: "Stakes" }],
  "export/no-clipboard": "no figures",
};

export const FIELD_SAMPLES: SamplesOf<typeof FIELD_REFUSALS> = {
  "codes/other": "no figures",
  "codes/damaged": "no figures",
  "codes/other-plan": [{ ours: "7F3A-21", theirs: "95DD-DE" }],
  "codes/no-camera": "no figures",
  "photo/too-large": [{ name: "boil.jpg", bytes: 52e6, mostBytes: 40e6 }],
  "photo/unreadable": [
    { name: "boil.heic", type: "image/heic" },
    { name: "boil", type: "" },
  ],
  "photo/no-room": [{ cause: "The disk is full." }],
};
