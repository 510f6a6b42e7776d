import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { createServer } from "node:https";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import fc from "fast-check";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { askRange, askSize, type RangeWay } from "../../shared/ranges.ts";
import { readRasterAddress } from "../../shared/raster-address.ts";
import { saveAddressed } from "../../workers/command/save-addressed.ts";
import { rangedFile } from "../../workers/raster/ranged-file.ts";
import { type Manner, type RangeServer, rangeServer } from "../helpers/range-server.ts";
import { seededRandom } from "../helpers/seeded-random.ts";
import { drystead, ROOT } from "../helpers/terminal.ts";
import { vrtText } from "../helpers/vrt-text.ts";

const random = seededRandom(7);
const FILE = Uint8Array.from({ length: 400_003 }, () => Math.floor(256 * random()));
const DEMO = join(ROOT, "sample-terrain/demo.tif");
const PLAN = join(ROOT, "sample-terrain/demo.geojson");

let server: RangeServer;
let demo: RangeServer;
beforeAll(async () => {
  server = await rangeServer(FILE);
  demo = await rangeServer(new Uint8Array(readFileSync(DEMO)), "demo.tif");
});
afterAll(async () => {
  await server.close();
  await demo.close();
});

function way(manner: Manner, mostMs = 5000): RangeWay {
  const href = server.at(manner);
  return {
    ...{ host: new URL(href).host, isPage: false },
    ask: (from, to) => askRange(fetch, href, from, to, mostMs),
    size: () => askSize(fetch, href),
  };
}

const open = (manner: Manner, mostMs?: number) => rangedFile(way(manner, mostMs), [1, 1]);
const codeOf = (work: Promise<unknown>) =>
  work.then(
    () => "read",
    (thrown) => thrown.code,
  );

describe("a file at a web address", () => {
  it("is what its slices say, whatever they are", async () => {
    const file = await open("well");
    expect(file.size).toBe(FILE.length);
    const at = fc.integer({ min: 0, max: FILE.length + 1000 });
    await fc.assert(
      fc.asyncProperty(at, at, async (a, b) => {
        const [from, to] = [Math.min(a, b), Math.max(a, b)];
        const read = new Uint8Array(await file.slice(from, to).arrayBuffer());
        expect(Buffer.compare(read, FILE.subarray(from, to))).toBe(0);
      }),
      { seed: 3, numRuns: 60 },
    );
  });

  it("is asked for each block once, blocks beside each other together", async () => {
    const file = await open("well");
    server.asked.length = 0;
    await file.slice(70_000, 300_000).arrayBuffer();
    await file.slice(80_000, 200_000).arrayBuffer();
    expect(server.asked).toEqual(["GET bytes=65536-327679"]);
  });

  it.each(["cut-once", "busy-once"] as const)("%s is read all the same", async (manner) => {
    const file = await open(manner);
    const read = new Uint8Array(await file.slice(100_000, 300_000).arrayBuffer());
    expect(Buffer.compare(read, FILE.subarray(100_000, 300_000))).toBe(0);
  });

  it("says its length when asked apart, where its parts do not", async () => {
    expect(await codeOf(open("no-length"))).toBe("address/no-length");
  });

  it.each([
    ["whole", "address/no-ranges"],
    ["forbidden", "address/answer"],
    ["missing", "address/answer"],
    ["sends-on", "address/elsewhere"],
    ["cut-always", "address/unreachable"],
    ["shorter", "address/cut-off"],
    ["other-part", "address/lies"],
  ] as const)("%s is refused as %s", async (manner, code) => {
    expect(await codeOf(open(manner))).toBe(code);
  });

  it("that never answers is refused as slow", async () => {
    expect(await codeOf(open("slow", 40))).toBe("address/slow");
  });

  it("whose length is not true is refused where it ends", async () => {
    const file = await open("longer");
    expect(await codeOf(file.slice(FILE.length + 10, FILE.length + 100).arrayBuffer())).toBe(
      "address/lies",
    );
  });

  it("that changes while it is read is refused", async () => {
    const file = await open("changes");
    expect(await codeOf(file.slice(200_000, 200_010).arrayBuffer())).toBe("address/changed");
  });

  it("on a host that is not there is refused, and the host is named", async () => {
    const gone = {
      ...way("well"),
      host: "gone.example",
      ask: () => Promise.reject(new TypeError()),
    };
    await expect(rangedFile(gone, [1, 1])).rejects.toMatchObject({
      code: "address/unreachable",
      message: expect.stringContaining("gone.example"),
    });
  });
});

describe("an address", () => {
  it.each([
    "ftp://a.example/b.tif",
    "https://",
    "https://u:p@a.example/b.tif",
    "http://*/b.tif",
    "dem.tif",
    "https://a.example/b c.tif",
  ])("is not %s", (text) =>
    expect(readRasterAddress(text)).toMatchObject({ failure: { code: "address/unreadable" } }),
  );

  it("has a host, and a name for the file", () => {
    expect(readRasterAddress(" https://a.example:8443/x/dem%201.tif?v=2#top ")).toEqual({
      ok: true,
      value: {
        href: "https://a.example:8443/x/dem%201.tif?v=2",
        ...{ origin: "https://a.example:8443", host: "a.example:8443", name: "dem 1.tif" },
      },
    });
  });
});

describe("the terminal program", () => {
  it("sizes on a raster at an address as on the file, reading parts of it", async () => {
    const there = await drystead(["size", PLAN, "--terrain", demo.at("well")]);
    const here = await drystead(["size", PLAN, "--terrain", DEMO]);
    expect(there.code).toBe(0);
    const totals = (out: string) =>
      JSON.parse(out).alternatives.map((each: { totals: { bags: number } }) => each.totals.bags);
    expect(totals(there.out)).toEqual(totals(here.out));
    expect(totals(there.out)[0]).toBe(17_879);
  });

  it("refuses one without ranges, and says so", async () => {
    const { code, said } = await drystead(["size", PLAN, "--terrain", demo.at("whole")]);
    expect(code).toBe(1);
    expect(said).toContain("sends only the whole");
    expect(said).toContain("(address/no-ranges)");
  });

  it("says of a server whose certificate nobody vouches for that it is that", async () => {
    const pem = (name: string) => readFileSync(join(ROOT, "tests/fixtures/tls", name));
    const secure = createServer({ key: pem("key.pem"), cert: pem("cert.pem") }, () => {
      throw new Error("The file was asked for.");
    });
    await new Promise<void>((done) => secure.listen(0, "127.0.0.1", done));
    const { port } = secure.address() as AddressInfo;
    const address = `https://localhost:${port}/dem.tif`;
    const { code, said } = await drystead(["size", PLAN, "--terrain", address]);
    secure.close();
    expect(code).toBe(1);
    expect(said).toContain("its certificate is not (DEPTH_ZERO_SELF_SIGNED_CERT)");
    expect(said).toContain("(address/certificate)");
  });

  it("says of a bare raster that the files beside it are not looked for there", async () => {
    const bare = readFileSync(join(ROOT, "tests/fixtures/rasters/bare.tif"));
    const there = await rangeServer(new Uint8Array(bare), "bare.tif");
    const { code, said } = await drystead(["size", PLAN, "--terrain", there.at("well")]);
    await there.close();
    expect(code).toBe(1);
    expect(said).toContain("only the file itself is read, not the files beside it (.tfw, .prj");
    expect(said).toContain('Download "bare.tif" with the files beside it');
  });

  it("reads a VRT at an address with the files beside it, on that host, as it does from a folder", async () => {
    const demoTif = new Uint8Array(readFileSync(DEMO));
    const grid = { x0: 420_000, y0: 4_761_024, cell: 1, columns: 1024, rows: 1024 };
    const to = { column: 0, row: 0, columns: 1024, rows: 1024 };
    const tile = { file: "tiles/demo.tif", columns: 1024, rows: 1024, to };
    const text = vrtText(grid, [tile]);
    const vrt = new TextEncoder().encode(text);
    const there = await rangeServer(vrt, "county.vrt", new Map([["demo.tif", demoTif]]));
    const { code, out, said } = await drystead(["size", PLAN, "--terrain", there.at("well")]);
    await there.close();
    expect([code, said]).toEqual([0, expect.not.stringContaining("Expected")]);
    expect(JSON.parse(out).alternatives[0].totals.bags).toBe(17_879);
    const absolute = new TextEncoder().encode(text.replace("tiles/demo.tif", "/srv/demo.tif"));
    const other = await rangeServer(absolute, "county.vrt");
    const refused = await drystead(["size", PLAN, "--terrain", other.at("well")]);
    await other.close();
    expect([refused.code, refused.said]).toEqual([
      1,
      expect.stringContaining("address/vrt-source"),
    ]);
  });

  it("takes side-car files at addresses that are named beside the raster's", async () => {
    const of = (name: string) =>
      new Uint8Array(readFileSync(join(ROOT, "tests/fixtures/rasters", name)));
    const beside = new Map([
      ["bare.tfw", of("bare.tfw")],
      ["ascii.prj", of("ascii.prj")],
    ]);
    const there = await rangeServer(of("bare.tif"), "bare.tif", beside);
    const at = (name: string) => there.at("well").replace("bare.tif", name);
    const words = ["size", PLAN, "--terrain", at("bare.tif"), at("bare.tfw"), at("ascii.prj")];
    const { said } = await drystead([...words, "--vertical-unit", "m"]);
    await there.close();
    expect(said).not.toContain("not the files beside it");
  });

  it("copies a raster at an address for a program that opens files alone", async () => {
    const folder = mkdtempSync(join(tmpdir(), "drystead-copy-"));
    const blob = await open("well");
    const said: string[] = [];
    const file = { name: "../dem 1.tif", blob, host: "h.example" };
    const path = await saveAddressed(file, folder, (sentence) => said.push(sentence));
    expect(path).toBe(join(folder, ".._dem_1.tif"));
    expect(new Uint8Array(readFileSync(path))).toEqual(FILE);
    expect(said).toEqual(['"../dem 1.tif" is copied whole, 1 MB, for the pages.']);
    const large = { ...file, blob: { ...blob, size: 3e9 } };
    await expect(saveAddressed(large, folder, () => {})).rejects.toMatchObject({
      code: "print/address-too-large",
    });
    rmSync(folder, { recursive: true });
  });
});
