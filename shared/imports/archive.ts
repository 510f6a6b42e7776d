import { Refusal } from "../failure.ts";
import { loadPart } from "../load-part.ts";

/** Files of a zip archive by their names in lower case. */
export type Unpacked = ReadonlyMap<string, Uint8Array>;

/** What is taken out of an archive. */
const WANTED = /\.(shp|dbf|prj|cpg|kml)$/;
/** Most bytes that those files may have unpacked, and most files an archive may have. */
const MOST_BYTES = 100_000_000;
const MOST_FILES = 2000;

/**
 * The parts of shapefiles and the KML in a zip archive; no byte is unpacked beyond what the archive states.
 * @throws Refusal `shapes/zip-damaged`, `shapes/zip-too-large`, `program/part-missing`
 */
export async function unpack(bytes: Uint8Array): Promise<Unpacked> {
  const { unzipSync } = await loadPart("the reader of zip files", () => import("fflate"));
  let sum = 0;
  let count = 0;
  const found = unpacked(() =>
    unzipSync(bytes, {
      filter: ({ name, originalSize }) => {
        count += 1;
        if (count > MOST_FILES) throw tooManyFiles();
        if (!WANTED.test(name.toLowerCase()) || /(^|\/)(__MACOSX\/|\._)/.test(name)) return false;
        sum += originalSize;
        if (sum > MOST_BYTES) throw tooLarge();
        return true;
      },
    }),
  );
  return new Map(Object.entries(found).map(([name, inside]) => [name.toLowerCase(), inside]));
}

function unpacked<T>(work: () => T): T {
  try {
    return work();
  } catch (thrown) {
    if (thrown instanceof Refusal) throw thrown;
    throw new Refusal(
      "shapes/zip-damaged",
      "Expected a whole zip file; this one is cut off or damaged.",
      "Get it again from its source, or zip the files again.",
    );
  }
}

function tooLarge(): Refusal {
  return new Refusal(
    "shapes/zip-too-large",
    `Expected at most ${MOST_BYTES / 1e6} MB of shapes in a zip file; this one has more.`,
    "Cut the shapes down to the site in a GIS, then zip them again.",
  );
}

function tooManyFiles(): Refusal {
  return new Refusal(
    "shapes/zip-too-large",
    `Expected at most ${MOST_FILES} files in a zip file; this one has more.`,
    "Zip only the shapefile: .shp, .dbf, .prj and .cpg.",
  );
}
