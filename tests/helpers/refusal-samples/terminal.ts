import { failureOf } from "../../../shared/failure.ts";
import type { TERMINAL_REFUSALS } from "../../../shared/words/refusals/terminal.ts";
import type { SamplesOf } from "./samples.ts";

const path = "Plans/river.geojson";
const expected = "raster";
const why = failureOf("forecast/empty");
const has = [{ letter: "A", name: "North" }];
const address = "redis://barn:6379";
const files = [{ name: "dem.tif", bytes: 1_200_000 }];
const pages = { number: "7F3A-21", site: null };

export const TERMINAL_SAMPLES: SamplesOf<typeof TERMINAL_REFUSALS> = {
  "file/missing": [
    { path, expected },
    { path, expected: "culverts" },
  ],
  "file/is-folder": [{ path, expected }],
  "file/not-a-file": [{ path, expected }],
  "file/unreadable": [{ path, expected, cause: "EACCES" }],
  "plan/file-too-large": [{ path, bytes: 40_100_000, most: 32_000_000 }],
  "plan/in-file": [{ path, why }],
  "plan/no-water-given": [
    { path, unknown: [] },
    { path, unknown: ["elevationFt"] },
  ],
  "plan/no-line": [{ toSize: true }, { toSize: false }],
  "plan/which-line": [{ has }],
  "plan/no-line-named": [{ came: "C", has }],
  "plan/no-such-structure": [
    { came: "Barn", has: ["House"] },
    { came: "Barn", has: [] },
  ],
  "address/vrt-files": [{ name: "county.vrt", files: 201, most: 200 }],
  "address/vrt-source": [{ name: "county.vrt", source: "/srv/demo.tif" }],
  "print/no-browser": [
    { named: "/bin/none", onPath: ["chromium"], places: ["/Applications"] },
    { named: null, onPath: ["chromium"], places: ["/Applications"] },
  ],
  "print/browser-failed": [{ path, cause: "Failed to launch." }],
  "print/not-built": [{ folder: "/dist" }],
  "print/no-sections": [{ said: "No section here." }],
  "print/no-pages": [
    { afterS: 300, said: [] },
    { afterS: 300, said: ["No elevation data."] },
  ],
  "print/other-plan": [
    { expected: pages, came: { ...pages, number: "7F3A-22" }, page: null },
    { expected: { ...pages, site: "Farm" }, came: { ...pages, site: "Mill" }, page: "Build 1" },
  ],
  "print/address-too-large": [{ name: "dem.tif", bytes: 3e9, most: 2e9 }],
  "output/no-folder": [{ folder: "/out", cause: "EACCES" }],
  "output/is-input": [{ path }],
  "output/not-written": [
    { path, code: "ENOSPC", message: "no space" },
    { path, code: "", message: "broken" },
  ],
  "footprints/no-polygons": [{ path }],
  "footprints/other-reference": [{ path, ground: "EPSG:32614", came: "EPSG:2264" }],
  "buildings/no-column": [
    { name: "floor", has: ["id", "name"] },
    { name: "floor", has: [] },
  ],
  "culverts/no-column": [{ name: "size", has: ["id"] }],
  "sweep/no-file": [{ path }],
  "sweep/own-output": [{ path }],
  "sweep/bad-line": [{ path: "Out.jsonl", line: 3 }],
  "sweep/other-check": [
    { path: "Out.jsonl", line: 3, differ: [] },
    { path: "Out.jsonl", line: 3, differ: ["plan", "buildings", "stages", "people", "ground"] },
  ],
  "stock/missing": [{ path }],
  "stock/bad-part": [
    { path, fault: "not-json" },
    { path, fault: "no-object", came: "3" },
    { path, fault: "unknown", known: ["bags"], came: "sacks" },
    { path, fault: "figure", part: "bags", came: "-3" },
    { path, fault: "list", part: "mustDo", came: "{}" },
    { path, fault: "in-both", id: "h7" },
  ],
  "engine/thread-ended": [{ cause: "out of memory" }],
  "queue/bad-address": [{ came: "barn" }, { came: null }],
  "queue/not-let-in": [{ address, cause: "NOAUTH" }],
  "queue/no-connection": [{ address, cause: "ECONNREFUSED" }],
  "queue/no-raster": [{ why }],
  "queue/other-raster": [{ expected: files, came: files }],
  "queue/worker-refused": [{ host: "barn", why }],
  "queue/worker-lost": [{ cause: "out of memory" }],
};
