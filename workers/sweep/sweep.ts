/* The check of many buildings: fetched when first needed. */
export { checkBuilding } from "./check-building.ts";
export { checkGroup } from "./check-group.ts";
export { traceBuildings } from "./trace-buildings.ts";
