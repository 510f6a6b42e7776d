import { describe, expect, it } from "vitest";
import type { RangeAnswer } from "../../shared/ranges.ts";
import type { FromWorker, RangeGiven } from "../../shared/wire.ts";
import { makeRemoteEngine, type WorkerLike } from "../../src/engine/remote.ts";
import { makeEngine } from "../../workers/engine.ts";
import { serveEngine } from "../../workers/serve.ts";
import { rasterFile } from "../helpers/raster-files.ts";

const HREF = "https://host.example/cog.tif";
const ADDRESSED = [{ name: "cog.tif", href: HREF, host: "host.example" }];

/** A worker in this process, whose page answers ranges in its own way. */
function engineWith(
  onRange?: (wanted: { from: number; to: number | null }) => Promise<RangeGiven["answer"]>,
) {
  const spawn = (): WorkerLike => {
    const worker: WorkerLike = {
      postMessage: () => {},
      terminate: () => {},
      onmessage: null,
      onerror: null,
    };
    const answer = serveEngine(makeEngine(), (message) => {
      worker.onmessage?.({
        data: structuredClone(message) as FromWorker,
      } as MessageEvent<FromWorker>);
    });
    worker.postMessage = (message) => void answer(structuredClone(message));
    return worker;
  };
  return makeRemoteEngine(spawn, {
    silenceMs: 60_000,
    onRestart: () => {},
    ...(onRange && { onRange }),
  });
}

describe("a raster at an address in the page", () => {
  it("is read by the worker through the page, as the file is", async () => {
    const file = await rasterFile("cog.tif");
    const { size } = file.blob;
    const asked: number[] = [];
    const engine = engineWith(async ({ from, to }): Promise<RangeAnswer> => {
      asked.push(from);
      const end = Math.min(to!, size);
      const bytes = await file.blob.slice(from, end).arrayBuffer();
      const range = `bytes ${from}-${end - 1}/${size}`;
      return { status: 206, range, tag: null, modifiedMs: null, elsewhere: null, bytes };
    });
    const there = await engine.openTerrain({
      files: [],
      addressed: ADDRESSED,
      verticalUnit: "metre",
    });
    const here = await makeEngine().openTerrain({ files: [file], verticalUnit: "metre" });
    expect(there).toEqual(here);
    expect(asked[0]).toBe(0);
  });

  it("is refused where the page does not ask", async () => {
    const opening = engineWith().openTerrain({
      files: [],
      addressed: ADDRESSED,
      verticalUnit: null,
    });
    await expect(opening).rejects.toMatchObject({
      code: "address/unreachable",
      message: expect.stringContaining("host.example"),
    });
  });
});
