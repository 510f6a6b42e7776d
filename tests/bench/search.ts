import { spawnSync } from "node:child_process";
import { booleanContains, kinks } from "@turf/turf";
import { UndirectedGraph } from "graphology";
import { dijkstra } from "graphology-shortest-path";
import type { GroundSampler } from "../../shared/ground.ts";
import { boxAround } from "../../shared/site.ts";
import { siteLattice } from "../../workers/search/lattice.ts";
import { driven } from "../../workers/search/progress.ts";
import { searchGround } from "../../workers/search/search-ground.ts";
import { searchLattice, USUAL_OPTIONS } from "../../workers/search/search-lattice.ts";
import { searchRing } from "../../workers/search/search-ring.ts";
import { grown, searchTerms, windowBox } from "../../workers/search/search-terms.ts";
import type { FoundRing, SearchOptions, SearchRequest } from "../../workers/search/types.ts";
import { measured, onTurf, seededBuilding } from "../helpers/search-buildings.ts";
import { rasterGround, rectangle, requestFor, seeded } from "../helpers/search-terrain.ts";
import type { BenchRow } from "./row.ts";

/**
 * The ring search on seeded ground at 1 m. Times are medians of warm runs and include reading the ground.
 * Peers are named general-purpose shortest-path programs doing one Dijkstra search from one node on the same
 * prices: scikit-image's MCP_Geometric (8 neighbours, compiled), where Debian's python3-skimage is
 * installed, and graphology's single source Dijkstra.
 */
const RUNS = 5;
const HOUSE = rectangle(15, 10, 20);

/** A valley: a fall, long waves, an old channel and survey noise. */
function valley(sizeM: number): GroundSampler {
  const noise = seeded(7);
  return rasterGround(sizeM, 1, (x, y) => {
    const waves = 0.25 * Math.sin(x / 31) * Math.cos(y / 23) + 0.15 * Math.sin((x + y) / 11);
    const channel = -0.9 * Math.exp(-((y - 40 - 12 * Math.sin(x / 60)) ** 2) / 40);
    return 0.002 * x + 0.004 * y + waves + channel + 0.03 * (noise() - 0.5);
  });
}

/** A bowl whose rim stands above the crest but for a gap: the worst case, a far free loop. */
function bowl(sizeM: number): GroundSampler {
  const noise = seeded(9);
  const rimM = 0.4 * sizeM;
  return rasterGround(sizeM, 1, (x, y) => {
    const rim = 2.5 * Math.exp(-((Math.hypot(x, y) - rimM) ** 2) / 60);
    const gap = x > 0 && Math.abs(y) < 3 ? 0 : 1;
    return rim * gap + 0.05 * (noise() - 0.5);
  });
}

function requestOn(ground: GroundSampler, reachM: number): SearchRequest {
  return requestFor(ground, HOUSE, 0.75, { window: { reachM } });
}

/** Reach of the window that takes in all of a square raster, metres. */
function wholeReach(sizeM: number): number {
  return sizeM / 2 - 24;
}

function medianMs(work: () => void, runs = RUNS): number {
  work();
  const times = Array.from({ length: runs }, () => {
    const startedAt = performance.now();
    work();
    return performance.now() - startedAt;
  });
  times.sort((a, b) => a - b);
  return times[times.length >> 1]!;
}

function row(name: string, ms: number, promisedMs: number | null): BenchRow {
  return { name, ms, promisedMs, peer: null, peerMs: null };
}

function searchRow(
  name: string,
  request: SearchRequest,
  promisedMs: number | null,
  options: SearchOptions = {},
): BenchRow {
  const { statistics, cutShort } = searchRing(request, options);
  const ms = medianMs(() => searchRing(request, options));
  const cells = `${Math.round(statistics.cells / 1000)} k nodes`;
  const bytes = options.nearOnly
    ? ""
    : `, ${Math.round(statistics.bytes / statistics.cells)} B each`;
  return row(`${name} (${cells}${bytes}${cutShort ? ", cut short" : ""})`, ms, promisedMs);
}

function followRow(): BenchRow {
  const request = requestOn(valley(300), 60);
  const ground = searchGround(request.ground, grown(windowBox(request.window, [HOUSE]), 15));
  let step = 0;
  const ms = medianMs(() => {
    const crestM = 0.65 + 0.02 * (step++ % 10);
    searchRing({ ...request, ground, crestAt: () => crestM });
  }, 11);
  return row("one step of a stage that is followed, 60 m window", ms, 200);
}

function buildingsRow(count: number): BenchRow {
  const times: number[] = [];
  for (let seed = 1; seed <= count; seed++) {
    const request = seededBuilding(seed);
    const startedAt = performance.now();
    const { rings } = searchRing(request);
    times.push(performance.now() - startedAt);
    const fault = faultOf(request, rings[0]!);
    if (fault) throw new Error(`The ring round building ${seed} ${fault}.`);
  }
  times.sort((a, b) => a - b);
  const worst = Math.round(times.at(-1)!);
  return row(
    `each of ${count} seeded buildings, 30 m window (slowest ${worst} ms)`,
    times[count >> 1]!,
    null,
  );
}

/** What is wrong with a ring, looked at with Turf and by distances measured apart from the search. */
function faultOf(request: SearchRequest, ring: FoundRing): string | null {
  const outline = onTurf(ring.corners);
  if (kinks(outline).features.length > 0) return "crosses itself";
  if (!booleanContains(outline, onTurf(request.structures[0]!))) return "does not enclose it";
  if (ring.corners.length > request.rule.maxCorners) return "has too many corners";
  return measured(request, ring).roomM > -0.002 ? null : "is closer than the rule";
}

/**
 * Prices of a square of the valley, and our whole closed search on prices, as a site is searched: the best
 * ring near the house on half-metre nodes, then every ring of the square with that price to beat.
 */
function closedSearch(sizeM: number) {
  const terms = searchTerms(requestOn(valley(sizeM), wholeReach(sizeM)));
  const near = driven(siteLattice(terms, grown(boxAround(HOUSE), 25), 1, 0.4));
  const lattice = driven(siteLattice(terms, terms.box, 2, 0.4));
  const inside = terms.obstacles[0]!.shape.inside;
  const options = { ...USUAL_OPTIONS, by: "divide" as const };
  const ms = medianMs(() => {
    const [ring] = driven(searchLattice(near, inside, options)).rings;
    driven(searchLattice(lattice, inside, { ...options, knownPrice: ring!.price }));
  });
  return { lattice, ms };
}

const SKIMAGE = `
import sys, time, numpy
from skimage.graph import MCP_Geometric
side = int(sys.argv[1]); prices = numpy.frombuffer(sys.stdin.buffer.read(), dtype="<f4").reshape(side, -1)
prices = numpy.where(numpy.isfinite(prices), prices, -1).astype(float)
start = numpy.argwhere(prices > 0)[0]
times = []
for _ in range(5):
    begun = time.perf_counter(); MCP_Geometric(prices).find_costs([tuple(start)]); times.append(time.perf_counter() - begun)
print(sorted(times)[2] * 1000)
`;

function againstSkimage(sizeM: number): BenchRow {
  const { lattice, ms } = closedSearch(sizeM);
  const input = Buffer.from(lattice.price.buffer);
  const run = spawnSync("/usr/bin/python3", ["-c", SKIMAGE, String(lattice.rows)], { input });
  const peerMs = run.status === 0 ? Number(run.stdout.toString()) : null;
  const peer = "scikit-image MCP_Geometric, one Dijkstra";
  const name = `whole closed search, ${sizeM} x ${sizeM}`;
  return {
    ...row(name, ms, peerMs),
    peer: peerMs === null ? `${peer}: not installed` : peer,
    peerMs,
  };
}

function againstGraphology(sizeM: number): BenchRow {
  const { lattice, ms } = closedSearch(sizeM);
  const { price, columns } = lattice;
  const graph = new UndirectedGraph();
  const open = [...price.keys()].filter((node) => price[node]! < Infinity);
  for (const node of open) graph.addNode(node);
  for (const node of open) {
    for (const to of [node + 1, node + columns, node + columns + 1, node + columns - 1]) {
      if (!(price[to]! < Infinity)) continue;
      const length = to === node + 1 || to === node + columns ? 1 : Math.SQRT2;
      graph.addEdge(node, to, { weight: ((price[node]! + price[to]!) / 2) * length });
    }
  }
  const peerMs = medianMs(() => dijkstra.singleSource(graph, open[0]!, "weight"), 3);
  const peer = "graphology 0.26, one Dijkstra";
  return { ...row(`whole closed search, ${sizeM} x ${sizeM}`, ms, null), peer, peerMs };
}

/** Rows of the bench. */
export async function rows(): Promise<readonly BenchRow[]> {
  const near: SearchOptions = { nearOnly: true };
  const growth = [125, 250, 500, 1000].map((sizeM) => {
    const promised = sizeM === 500 ? 500 : sizeM === 1000 ? 1000 : null;
    const request = requestOn(valley(sizeM), wholeReach(sizeM));
    return searchRow(`ring and whole window, valley ${sizeM} x ${sizeM}`, request, promised);
  });
  return [
    searchRow("first ring, valley 500 x 500", requestOn(valley(500), wholeReach(500)), 150, near),
    ...growth,
    searchRow("worst case, bowl 500 x 500", requestOn(bowl(500), wholeReach(500)), 2000),
    followRow(),
    againstSkimage(500),
    againstGraphology(200),
    buildingsRow(1000),
  ];
}
