import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { RASTERS } from "../helpers/raster-files.ts";
import { seededRandom } from "../helpers/seeded-random.ts";
import { changedBytes, changedJson, changedText, oneOf, type Random } from "./mutate.ts";

export type Input =
  | {
      readonly kind: "raster";
      readonly of: string;
      readonly name: string;
      readonly bytes: Uint8Array<ArrayBuffer>;
      readonly besides: readonly {
        readonly name: string;
        readonly bytes: Uint8Array<ArrayBuffer>;
      }[];
    }
  | { readonly kind: "plan"; readonly of: string; readonly text: string }
  | { readonly kind: "forecast"; readonly of: string; readonly text: string };

const ROOT = join(import.meta.dirname, "../..");
const PLANS = [
  "tests/fixtures/plans/minimal.geojson",
  "tests/fixtures/plans/whole.geojson",
  "sample-terrain/demo.geojson",
];
const FORECASTS = [
  "time,stage ft\n2026-04-03T14:00-05:00,29.1\n2026-04-03T20:00-05:00,30.4\n2026-04-04T02:00-05:00,31.2\n",
  "date;time;zone;likely m;low m;high m\n2026-04-03;14:00;-05:00;8.9;8.7;9.3\n2026-04-03;20:00;-05:00;9.2;8.9;9.8\n",
  "2026-04-03 14:00 29.1\n2026-04-03 20:00 30.4\n2026-04-04 02:00 31.2\n",
  "Date/Time\tStage\tFlow\n04/06/2026 07:00 AM CDT\t31.2ft\t45.6kcfs\n04/06/2026 01:00 PM CDT\t31.9ft\t47kcfs\n",
  ".ER CEDW4 260406 C DH07/HGIFF/DIH6/29.1/30.4E/M/31.2\n.E1 /31.9/31.4:crest:/\n",
  ".B LCR 0406 C DH07/HG/DRH-12/HG\nCEDW4 9.7/6.2E :Weir\n.END\n",
  "# notes\nagency_cd\tsite_no\tdatetime\ttz_cd\t1_00065\t1_00065_cd\n5s\t15s\t20d\t6s\t14n\t10s\nUSGS\t01\t2026-04-06 07:00\tCDT\t31.2\tP\nUSGS\t01\t2026-04-06 07:15\tCDT\t31.3\tP\n",
];

/** Rasters to start from: every fixture, and the side-car files that belong to it by name. */
const rasterNames = readdirSync(RASTERS)
  .filter((name) => /\.(tif|asc)$/.test(name))
  .sort();

/** Input number `index` of a seed: always the same. Half are rasters, a quarter plans, a quarter forecasts. */
export function makeInput(seed: number, index: number): Input {
  const random = seededRandom(Math.imul(seed, 0x9e3779b1) ^ Math.imul(index + 1, 0x85ebca6b));
  const turn = index % 4;
  if (turn < 2) return rasterInput(random);
  if (turn === 2) return planInput(random);
  const sound = oneOf(random, FORECASTS);
  return { kind: "forecast", of: sound.split("\n")[0]!, text: changedText(sound, random) };
}

function rasterInput(random: Random): Input {
  const of = oneOf(random, rasterNames);
  const stem = of.replace(/\.\w+$/, "");
  const besides = readdirSync(RASTERS)
    .filter(
      (name) =>
        name !== of &&
        (name.startsWith(`${of}.`) || (name.startsWith(`${stem}.`) && !rasterNames.includes(name))),
    )
    .map((name) => ({ name, bytes: new Uint8Array(readFileSync(join(RASTERS, name))) }));
  const sound = new Uint8Array(readFileSync(join(RASTERS, of)));
  const hit = besides.length > 0 && random() < 0.3 ? oneOf(random, besides) : null;
  return {
    ...{ kind: "raster", of, name: of },
    bytes: hit ? sound : changedBytes(sound, random),
    besides: besides.map((each) =>
      each === hit ? { name: each.name, bytes: changedBytes(each.bytes, random) } : each,
    ),
  };
}

function planInput(random: Random): Input {
  const of = oneOf(random, PLANS);
  const sound = readFileSync(join(ROOT, of), "utf8");
  const text =
    random() < 0.75
      ? JSON.stringify(changedJson(JSON.parse(sound), random))
      : changedText(sound, random);
  return { kind: "plan", of, text };
}
