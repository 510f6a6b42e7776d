import { SEMI_MAJOR_M } from "../constants.ts";

/** Semi-major axis and first eccentricity squared of the WGS 84 ellipsoid. */
const ECCENTRICITY_2 = 0.00669437999014;

export type Place = [number, number];

/** Length of one degree of longitude and of latitude at a latitude, metres. */
export function degreesInMetres(lat: number): readonly [eastM: number, northM: number] {
  const sine = Math.sin((lat * Math.PI) / 180);
  const bend = 1 - ECCENTRICITY_2 * sine * sine;
  const eastM = (SEMI_MAJOR_M * Math.cos((lat * Math.PI) / 180)) / Math.sqrt(bend);
  const northM = (SEMI_MAJOR_M * (1 - ECCENTRICITY_2)) / bend ** 1.5;
  return [(eastM * Math.PI) / 180, (northM * Math.PI) / 180];
}

/** A place moved by metres east and north; for drawing, over distances of a levee's base. */
export function moved(at: readonly [number, number], eastM: number, northM: number): Place {
  const [perLon, perLat] = degreesInMetres(at[1]);
  return [at[0] + eastM / perLon, at[1] + northM / perLat];
}
