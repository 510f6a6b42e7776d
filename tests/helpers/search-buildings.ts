import { polygon } from "@turf/turf";
import type { FoundRing, Outline, SearchRequest } from "../../workers/search/types.ts";
import {
  BASE_RATIO,
  LEVEL_SECTION,
  rasterGround,
  rectangle,
  requestFor,
  roughTerrain,
  SETBACK_M,
  seeded,
} from "./search-terrain.ts";

/** A seeded building, one in three L-shaped, on seeded ground, some with a no-go area beside it. */
export function seededBuilding(seed: number): SearchRequest {
  const chance = seeded(seed * 7919 + 3);
  const [widthM, depthM, turnDeg] = [8 + 14 * chance(), 6 + 8 * chance(), 360 * chance()];
  const ground = rasterGround(120, 1, roughTerrain(seed + 1000, 60));
  const building =
    chance() < 0.33 ? lShape(widthM, depthM, turnDeg) : rectangle(widthM, depthM, turnDeg);
  const floorM = building.reduce((sum, [x, y]) => sum + ground.heightAt(x, y) / building.length, 0);
  const noGo: Outline[] = [];
  if (chance() < 0.4) {
    const angle = 2 * Math.PI * chance();
    const away = widthM / 2 + 8 + 10 * chance();
    const at = [away * Math.cos(angle), away * Math.sin(angle)] as const;
    noGo.push(rectangle(4 + 6 * chance(), 3 + 4 * chance(), 360 * chance(), at));
  }
  const crestM = floorM + 0.3 + 0.7 * chance();
  return requestFor(ground, building, crestM, { noGo, window: { reachM: 30 } });
}

function lShape(widthM: number, depthM: number, turnDeg: number): Outline {
  const [w, d, turn] = [widthM / 2, depthM / 2, (turnDeg * Math.PI) / 180];
  const corners = [
    [-w, -d],
    [w, -d],
    [w, 0],
    [0, 0],
    [0, d],
    [-w, d],
  ];
  return corners.map(([x, y]) => [
    x! * Math.cos(turn) - y! * Math.sin(turn),
    x! * Math.sin(turn) + y! * Math.cos(turn),
  ]);
}

/** Degrees for metres, small enough that Turf's sphere is flat. */
export function onTurf(outline: Outline) {
  return polygon([[...outline, outline[0]!].map(([x, y]) => [x * 1e-5, y * 1e-5])]);
}

function away(outline: Outline, x: number, y: number): number {
  return outline.reduce((least, [x1, y1], k) => {
    const [x2, y2] = outline[(k + 1) % outline.length]!;
    const [ex, ey] = [x2 - x1, y2 - y1];
    const t = Math.max(0, Math.min(1, ((x - x1) * ex + (y - y1) * ey) / (ex * ex + ey * ey)));
    return Math.min(least, Math.hypot(x - x1 - t * ex, y - y1 - t * ey));
  }, Infinity);
}

/** Volume by the midpoint rule every 5 cm, and the least room to structure and no-go beyond the rule. */
export function measured(request: SearchRequest, ring: FoundRing) {
  let volumeM3 = 0;
  let roomM = Infinity;
  ring.corners.forEach(([x1, y1], k) => {
    const [x2, y2] = ring.corners[(k + 1) % ring.corners.length]!;
    const steps = Math.ceil(Math.hypot(x2 - x1, y2 - y1) / 0.05);
    const stepM = Math.hypot(x2 - x1, y2 - y1) / steps;
    for (let i = 0; i < steps; i++) {
      const t = (i + 0.5) / steps;
      const [x, y] = [x1 + t * (x2 - x1), y1 + t * (y2 - y1)];
      const heightM = Math.max(0, request.crestAt(x, y) - request.ground.heightAt(x, y));
      const halfM = (BASE_RATIO * heightM) / 2;
      volumeM3 += LEVEL_SECTION.areaAt(heightM) * stepM;
      roomM = Math.min(roomM, away(request.structures[0]!, x, y) - SETBACK_M - halfM);
      for (const area of request.noGo) roomM = Math.min(roomM, away(area, x, y) - halfM);
    }
  });
  return { volumeM3, roomM };
}
