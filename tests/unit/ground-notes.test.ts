import { describe, expect, it } from "vitest";
import type { FileNote, GroundNote } from "../../shared/ground-notes.ts";
import { groundNoteWords } from "../../shared/words/ground-notes.ts";
import { BRITISH, FOREIGN, NEVER } from "../helpers/never-said.ts";

const TILES = { finest: ["a.tif"], coarser: [], offGrid: [], overlap: false };

const OF_FILES: { readonly [K in FileNote["kind"]]: readonly FileNote[] } = {
  bands: [null, "tiles.vrt"].map((vrt) => ({ kind: "bands", bands: 4, vrt })),
  rasters: [{ kind: "rasters", rasters: 2 }],
  "unit-stated": [{ kind: "unit-stated", stated: "metre", chosen: "us-survey-foot" }],
  strays: [{ kind: "strays", values: [-9999, 9999] }],
};

const NOTES: { readonly [K in GroundNote["kind"]]: readonly GroundNote[] } = {
  "of-files": Object.values(OF_FILES)
    .flat()
    .flatMap((note) =>
      [["a.tif"], ["a.tif", "b.tif", "c.tif"]].map((names) => ({ kind: "of-files", note, names })),
    ),
  vrt: [[], ["b.tif"], ["b.tif", "c.tif", "d.tif", "e.tif", "f.tif"]].map((unnamed) => ({
    ...{ kind: "vrt", vrt: "tiles.vrt", unnamed },
  })),
  tiles: [
    { kind: "tiles", ...TILES, overlap: true },
    { kind: "tiles", ...TILES, coarser: ["b.tif", "c.tif"], overlap: true },
    { kind: "tiles", ...TILES, coarser: ["b.tif"], offGrid: ["c.tif"] },
  ],
  loose: [{ kind: "loose", name: "other.tfw" }],
};

describe("what is to be known of elevation data", () => {
  it.each(Object.values(NOTES).flat())("is said whole, in the trade's words: %j", (note) => {
    const words = groundNoteWords(note);
    expect(words).toMatch(/^["A-Z].*\.$/);
    expect(words).not.toMatch(/undefined|NaN|\[object| {2}|\.\./);
    for (const never of [NEVER, BRITISH, FOREIGN.us, FOREIGN.metric]) {
      expect(words).not.toMatch(never);
    }
  });

  it("names the files it is of, and what counts where they overlap", () => {
    expect(NOTES["of-files"].slice(0, 2).map(groundNoteWords)).toEqual([
      '"a.tif": 4 bands: heights are read from the first.',
      '"a.tif" and 2 more: 4 bands: heights are read from the first.',
    ]);
    expect(NOTES.tiles.slice(0, 2).map(groundNoteWords)).toEqual([
      "Files overlap: where they do, the first one with data counts.",
      'Cells of several sizes: "a.tif" has finer cells than "b.tif" and "c.tif". Where files overlap, the finer one with data counts. Heights of the coarser are interpolated between its cells.',
    ]);
  });
});
