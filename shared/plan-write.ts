import type { Carried, LonLat, Plan } from "./plan.ts";
import { type Entries, entriesOf, type Role } from "./plan-feature.ts";
import { isClockwise, rounded, turned } from "./plan-geometry.ts";
import { PLAN_VERSION } from "./plan-schema.ts";

/**
 * A plan as the text of a plan file: GeoJSON (RFC 7946), one feature on a line, outlines counter-clockwise
 * and closed, coordinates to nine decimals. `readPlanFile` gives the same plan back.
 */
export function writePlanFile(plan: Plan): string {
  const { carried } = plan;
  const features = [...ourFeatures(plan), ...(carried?.features ?? [])];
  const head = { type: "FeatureCollection", drystead: settingsOf(plan), ...carried?.members };
  const opened = JSON.stringify(head, null, 2).replace(/\n\}$/, "");
  const lines = features.map((feature) => `    ${JSON.stringify(feature)}`).join(",\n");
  return `${opened},\n  "features": [${lines === "" ? "" : `\n${lines}\n  `}]\n}\n`;
}

function settingsOf(plan: Plan): Entries {
  const {
    title,
    water,
    ground,
    section,
    practice,
    holding,
    time,
    leave = null,
    survey = null,
    progress = [],
    terrain,
    chosenId,
  } = plan;
  const ours = {
    ...{ title, chosenId, terrain, water, ground, section, practice, holding, time, leave },
    ...(survey ? { survey } : {}),
    ...(progress.length > 0 ? { progress } : {}),
  };
  return merged({ version: PLAN_VERSION, ...ours }, plan.carried?.settings ?? {});
}

function merged(ours: Entries, carried: Entries): Entries {
  const result: Entries = { ...ours };
  for (const [key, value] of Object.entries(carried)) {
    const group = entriesOf(ours[key]);
    if (group) result[key] = merged(group, entriesOf(value) ?? {});
    else if (!Object.hasOwn(ours, key)) result[key] = value;
  }
  return result;
}

function ourFeatures(plan: Plan): Entries[] {
  const { structures, alignments, noGo, sources, culverts, drains, possibleCulverts } = plan;
  const { roads, workPlaces, gauge, flow, carried } = plan;
  const point = (at: LonLat) => ({ type: "Point", coordinates: at.map(rounded) });
  return [
    ...structures.map(({ id, name, floorM, protect, outline }) =>
      polygon(
        "structure",
        id,
        { name, floorM, ...(protect === undefined ? {} : { protect }) },
        outline,
        carried,
      ),
    ),
    ...alignments.map(
      ({ id, name, reachBreaksM, pinned, reachSections, setbackM, closures, kind, corners }) => {
        const properties = {
          ...{ name, reachBreaksM },
          ...(pinned ? { pinned } : {}),
          ...(reachSections ? { reachSections } : {}),
          ...(setbackM === undefined ? {} : { setbackM }),
          ...(closures ? { closures } : {}),
        };
        return kind === "ring"
          ? polygon("alignment", id, properties, corners, carried)
          : feature("alignment", id, properties, lineOf(corners), carried);
      },
    ),
    ...noGo.map(({ id, name, outline }) => polygon("no-go", id, { name }, outline, carried)),
    ...(sources ?? []).map(({ id, name, at }) =>
      feature("source", id, { name }, point(at), carried),
    ),
    ...(culverts ?? []).map(({ id, path, ...properties }) =>
      feature("culvert", id, properties, lineOf(path), carried),
    ),
    ...(drains ?? []).map(({ id, at, ...properties }) =>
      feature("drain", id, properties, point(at), carried),
    ),
    ...(possibleCulverts ?? []).map(({ id, path, ...properties }) =>
      feature("possible-culvert", id, properties, lineOf(path), carried),
    ),
    ...(roads ?? []).map(({ id, name, path }) =>
      feature("road", id, { name }, lineOf(path), carried),
    ),
    ...(workPlaces ?? []).map(({ id, path, ...properties }) =>
      feature(
        "work-place",
        id,
        properties,
        properties.kind === "truck-way" ? lineOf(path) : point(path[0]!),
        carried,
      ),
    ),
    ...(gauge
      ? [feature("gauge", "", { name: gauge.name }, gauge.at && point(gauge.at), carried)]
      : []),
    ...(flow ? [feature("flow", "", {}, lineOf([flow.from, flow.to]), carried)] : []),
  ];
}

function lineOf(corners: readonly LonLat[]): Entries {
  return { type: "LineString", coordinates: corners.map((at) => at.map(rounded)) };
}

function polygon(
  role: Role,
  id: string,
  properties: Entries,
  outline: readonly LonLat[],
  carried: Carried | undefined,
): Entries {
  const clockwise = isClockwise(outline);
  const ring = (clockwise ? turned(outline) : outline).map((at) => at.map(rounded));
  const geometry = { type: "Polygon", coordinates: [[...ring, ring[0]]] };
  const direction = clockwise ? { direction: "clockwise" } : {};
  return feature(role, id, { ...properties, ...direction }, geometry, carried);
}

function feature(
  role: Role,
  id: string,
  properties: Entries,
  geometry: Entries | null,
  carried: Carried | undefined,
): Entries {
  const rest = carried?.byFeature[`${role}:${id}`];
  return {
    type: "Feature",
    ...(id === "" ? {} : { id }),
    properties: { role, ...properties, ...rest?.properties },
    geometry,
    ...rest?.members,
  };
}
