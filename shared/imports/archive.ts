import { Refusal, refusal } from "../failure.ts";
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
        if (count > MOST_FILES) throw refusal("shapes/zip-too-large", { mostFiles: MOST_FILES });
        if (!WANTED.test(name.toLowerCase()) || /(^|\/)(__MACOSX\/|\._)/.test(name)) return false;
        sum += originalSize;
        if (sum > MOST_BYTES) throw refusal("shapes/zip-too-large", { mostBytes: MOST_BYTES });
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
    throw refusal("shapes/zip-damaged");
  }
}
