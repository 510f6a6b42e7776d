import { loadPart } from "../shared/load-part.ts";
import type { AddressedFile, TerrainFile } from "../shared/messages.ts";
import type { RangeAnswer } from "../shared/ranges.ts";
import type { FromWorker, RangeGiven } from "../shared/wire.ts";

const RANGED = () => import("./raster/ranged-file.ts");

/** Files at web addresses as a worker has them: it asks nobody itself, the page does. */
export interface PageRanges {
  /** @throws Refusal as of `rangedFile` */
  readonly fileAt: (file: AddressedFile) => Promise<TerrainFile>;
  readonly hear: (given: RangeGiven) => void;
}

type Given = Pick<RangeGiven, "answer" | "error">;

export function pageRanges(post: (message: FromWorker) => void): PageRanges {
  const waiting = new Map<number, (given: Given) => void>();
  let next = 1;
  const want = async (href: string, from: number, to: number | null) => {
    const ask = next++;
    const given = new Promise<Given>((done) => waiting.set(ask, done));
    post({ kind: "range", ask, href, from, to });
    const { answer, error } = await given;
    if (error !== null) throw Object.assign(new Error(error), { name: error });
    return answer;
  };
  return {
    async fileAt({ name, href, host }) {
      const { rangedFile } = await loadPart("the reader of files at web addresses", RANGED);
      const blob = await rangedFile({
        ...{ host, isPage: true },
        ask: async (from, to) => (await want(href, from, to)) as RangeAnswer,
        size: async () => (await want(href, 0, null)) as number | null,
      });
      return { name, host, blob };
    },
    hear: ({ ask, answer, error }) => {
      waiting.get(ask)?.({ answer, error });
      waiting.delete(ask);
    },
  };
}
