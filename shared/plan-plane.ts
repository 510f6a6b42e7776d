import proj4 from "proj4";
import type { LonLat } from "./plan.ts";

/**
 * A flat map of the site in metres, x east and y north of its origin: a transverse Mercator on the
 * WGS 84 ellipsoid with its centre at the origin and unit scale there. Within 9 km of the origin
 * lengths differ from the ellipsoid's by less than 1 part in 1,000,000, and straight lines are
 * geodesics to the millimetre for legs up to 1 km.
 */
export interface PlanPlane {
  readonly origin: LonLat;
  toPlane(at: LonLat): [number, number];
  toLonLat(xM: number, yM: number): [number, number];
}

export function planPlane(origin: LonLat): PlanPlane {
  const definition = `+proj=tmerc +lat_0=${origin[1]} +lon_0=${origin[0]} +k=1 +x_0=0 +y_0=0 +ellps=WGS84 +units=m +no_defs`;
  const converter = proj4("+proj=longlat +ellps=WGS84 +no_defs", definition);
  return {
    origin,
    toPlane: (at) => converter.forward([at[0], at[1]]) as [number, number],
    toLonLat: (xM, yM) => converter.inverse([xM, yM]) as [number, number],
  };
}
