import { describe, expect, it } from "vitest";
import { refused } from "../../shared/failure.ts";
import { readShapes } from "../../shared/imports/shapes.ts";
import { placeFootprints } from "../../shared/plan-footprints.ts";
import { HOSTILE, HOSTILE_LINE, hostileExport, written } from "../helpers/exported-line.ts";
import { parseXml, readGeoJson } from "../helpers/read-shapes.ts";

const shapesOf = (text: string) => readShapes(text, parseXml);

describe("shapes from KML and GPX", () => {
  it("come back from the KML that we write: a building with its name at its place, and every stake", async () => {
    const exported = hostileExport("us");
    const shapes = await shapesOf(await written("kml", exported));
    const points = shapes.features.filter(({ geometry }) => geometry.type === "Point");
    expect(points.filter(({ properties }) => properties?.name === HOSTILE.pile)).toHaveLength(1);
    expect(points).toHaveLength(HOSTILE_LINE.stations.length + 1);
    const building = shapes.features.find(
      ({ properties }) => properties?.name === HOSTILE.building,
    )!;
    const file = readGeoJson(JSON.stringify({ type: "FeatureCollection", features: [building] }));
    const placed = file.ok ? placeFootprints(file.value, null, null) : file;
    expect(placed).toMatchObject({ ok: true });
    const [first] = placed.ok ? placed.value.footprints : [];
    const outline = exported.plan.structures[0]!.outline;
    expect(first!.corners).toHaveLength(outline.length);
    for (const [i, [lon, lat]] of outline.entries()) {
      expect(first!.corners[i]![0]).toBeCloseTo(lon, 8);
      expect(first!.corners[i]![1]).toBeCloseTo(lat, 8);
    }
  });

  it("come back from the GPX that we write: the line as a track of all its stakes, and each as a point", async () => {
    const { features } = await shapesOf(await written("gpx", hostileExport("us")));
    const [track] = features.filter(({ geometry }) => geometry.type === "LineString");
    const count = HOSTILE_LINE.stations.length;
    expect((track!.geometry as { coordinates: unknown[] }).coordinates).toHaveLength(count);
    const points = features.filter(({ geometry }) => geometry.type === "Point");
    const workPlaces = [HOSTILE.pile, "Farm lane"];
    const names = points.map(({ properties }) => String(properties?.name));
    expect(names.filter((name) => workPlaces.includes(name)).sort()).toEqual(workPlaces.sort());
    expect(points).toHaveLength(count + workPlaces.length);
  });

  it("keep their columns, those of ExtendedData too, and drop how they are drawn", async () => {
    const kml =
      '<kml xmlns="http://www.opengis.net/kml/2.2"><Placemark><name>Barn</name><styleUrl>#a</styleUrl><Style><LineStyle><color>ff0000ff</color></LineStyle></Style><ExtendedData><Data name="floor"><value>881.5</value></Data></ExtendedData><Point><coordinates>-96.5,46.5,3</coordinates></Point></Placemark></kml>';
    expect((await shapesOf(kml)).features).toEqual([
      {
        type: "Feature",
        geometry: { type: "Point", coordinates: [-96.5, 46.5, 3] },
        properties: { name: "Barn", floor: "881.5" },
      },
    ]);
  });

  it.each([
    ["<kml><Placemark>", "shapes/not-xml"],
    ["PK\u0003\u0004", "shapes/not-xml"],
    ["", "shapes/not-xml"],
    ["<svg/>", "shapes/other-format"],
    ["<kml/>", "shapes/none"],
    ['<!DOCTYPE kml [<!ENTITY a "aaaa">]><kml>&a;</kml>', "shapes/entities"],
    [" ".repeat(20_000_001), "plan/too-large"],
  ])("what is no such file is refused: number %#", async (text, code) => {
    expect(await shapesOf(text).catch(refused)).toMatchObject({ ok: false, failure: { code } });
  });
});
