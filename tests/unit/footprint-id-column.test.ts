import { expect, it, vi } from "vitest";
import { foundShapes } from "../../shared/imports/found-shapes.ts";
import type { Footprint } from "../../shared/plan-footprints.ts";
import { notices } from "../../src/document/notices.ts";
import {
  idColumn,
  listed,
  listedFrom,
  listedNotes,
  pickIdColumn,
  removeFootprints,
  setPriority,
} from "../../src/live/buildings/listed.ts";
import { footprintLayer, showFootprints } from "../../src/live/footprints.ts";

vi.mock("../../src/engine.ts", () => ({ engine: {} }));

const PARCELS = ["P-7", "P-7", "3", null];

const FILE = foundShapes({ type: "FeatureCollection", features: PARCELS.map(house) }, null);
const FOOTPRINTS = FILE.outlines.map(
  ({ corners, columns }): Footprint => ({ corners, columns, middle: corners[0]! }),
);

it("ids come from the column that is picked, none twice, and priorities stay with their buildings", () => {
  showFootprints("parcels.geojson", FOOTPRINTS, { file: FILE, places: null });
  const ids = () => listed.value?.buildings.map(({ id }) => id);
  expect([idColumn.value, ids()]).toEqual(["id", ["1", "2", "30", "40"]]);
  setPriority("30", "first");
  pickIdColumn("parcel");
  expect(ids()).toEqual(["P-7", "P-7 (2)", "3", "4"]);
  expect(listed.value?.buildings.map(({ priority }) => priority)).toEqual(["", "", "first", ""]);
  expect(listedNotes.value.join()).toContain("P-7 (now P-7 (2))");
  pickIdColumn(null);
  expect(ids()).toEqual(["1", "2", "3", "4"]);
  expect(listed.value?.buildings[2]?.priority).toBe("first");
});

it("answers that were found by other ids count no longer; the same column picked again changes nothing", () => {
  showFootprints("parcels.geojson", FOOTPRINTS, { file: FILE, places: null });
  const before = listedFrom.value;
  pickIdColumn("id");
  expect(listedFrom.value).toBe(before);
  setPriority("30", "first");
  expect(listedFrom.value).toBe(before);
  pickIdColumn("parcel");
  expect(listedFrom.value).not.toBe(before);
});

function house(parcel: string | null, i: number) {
  const [west, south] = [-93.1874 + i / 1e3, 44.0521];
  const corners = [
    [west, south],
    [west + 2e-4, south],
    [west + 2e-4, south + 2e-4],
    [west, south + 2e-4],
    [west, south],
  ];
  return {
    ...{ type: "Feature", properties: { id: i < 2 ? i + 1 : 10 * (i + 1), parcel } },
    geometry: { type: "Polygon", coordinates: [corners] },
  };
}

it("footprints are removed, and a notice brings them back with what was said of them", () => {
  showFootprints("parcels.geojson", FOOTPRINTS, { file: FILE, places: null });
  setPriority(listed.value!.buildings[2]!.id, "first");
  const before = [footprintLayer.value, listed.value?.buildings];
  removeFootprints();
  expect([footprintLayer.value, listed.value]).toEqual([null, null]);
  const [notice] = notices.value;
  expect(notice?.failure).toMatchObject({ given: { name: "parcels.geojson", count: 4 } });
  notice?.act?.run();
  expect([footprintLayer.value, listed.value?.buildings]).toEqual(before);
  expect(notices.value).toEqual([]);
});
