import { describe, expect, it, test } from "vitest";
import { referenceFromKeys } from "../../workers/raster/geotiff/reference-keys.ts";
import { utmFromKeys } from "../../workers/raster/geotiff/utm-keys.ts";

const codes = (from: number, to: number) =>
  Array.from({ length: to - from + 1 }, (_, i) => from + i);
const keysOf = (code: number, more = {}) => ({
  GTModelTypeGeoKey: 1,
  ProjectedCSTypeGeoKey: code,
  ...more,
});
const PLACES = [
  [500_000, 5_000_000],
  [170_123.4, 250_000],
  [829_000, 7_654_321.9],
] as const;

describe("a UTM zone without the list of all references", () => {
  test.each([
    [26_901, 26_923],
    [32_601, 32_660],
    [32_701, 32_760],
  ])("is the list's own, EPSG:%i to EPSG:%i", (from, to) => {
    for (const code of codes(from, to)) {
      const ours = utmFromKeys("dem.tif", keysOf(code));
      const listed = referenceFromKeys("dem.tif", keysOf(code));
      expect(ours).toMatchObject({ label: listed.label, note: listed.note });
      for (const [x, y] of PLACES) {
        expect(ours?.toLonLat(x, y)).toEqual(listed.toLonLat(x, y));
        expect(ours?.fromLonLat(...listed.toLonLat(x, y))).toEqual(
          listed.fromLonLat(...listed.toLonLat(x, y)),
        );
      }
    }
  });

  it("takes no other code, unit or model for one", () => {
    for (const code of [26_900, 26_924, 32_600, 32_661, 32_761, 2249, 3857]) {
      expect(utmFromKeys("dem.tif", keysOf(code))).toBeNull();
    }
    expect(utmFromKeys("dem.tif", keysOf(26_915, { ProjLinearUnitsGeoKey: 9003 }))).toBeNull();
    expect(utmFromKeys("dem.tif", keysOf(26_915, { ProjLinearUnitsGeoKey: 9001 }))).not.toBeNull();
    expect(utmFromKeys("dem.tif", { GTModelTypeGeoKey: 2, GeographicTypeGeoKey: 4326 })).toBeNull();
  });
});
