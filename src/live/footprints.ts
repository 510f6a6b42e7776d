import { computed, effect, type ReadonlySignal, signal } from "@preact/signals";
import type { ShapeFile } from "../../shared/imports/found-shapes.ts";
import type { LonLat } from "../../shared/plan.ts";
import {
  buildingsOf,
  columnsOf,
  type Footprint,
  type FootprintColumns,
  nameOf,
} from "../../shared/plan-footprints.ts";
import { edit } from "../document/edits/alternatives.ts";
import { plan } from "../document/store.ts";
import { tool } from "./screen.ts";

/** Footprints that were imported: a layer of the map from which buildings are picked. Lasts as long as the page. */
export interface FootprintLayer {
  /** Name of the file. */
  readonly name: string;
  readonly footprints: readonly Footprint[];
  readonly columns: ReturnType<typeof columnsOf>;
  /** All shapes of the file, those off the elevation data too. */
  readonly whole: WholeFile;
}

/** The shapes of a file, and the corners of all of them in turn on Earth; null = the file has them so. */
interface WholeFile {
  readonly file: ShapeFile;
  readonly places: readonly LonLat[] | null;
}

export const footprintLayer = signal<FootprintLayer | null>(null);
/** Which columns of the layer say a building's name and floor. */
export const footprintColumns = signal<FootprintColumns>({
  name: null,
  floor: null,
  floorUnit: null,
});
/** Whether a click on the map picks a footprint. */
export const isPicking = signal(false);
/** Whether a search for a line keeps off those that are no building of the plan. */
export const keepsOff = signal(true);
/** A place that the person typed, to be looked for on the map; null when there is none. */
export const placeMarked = signal<LonLat | null>(null);

const ADDRESS = /addr|site|situs|name|label/i;

/** Puts footprints on the map in place of those there, and lets the person pick. */
export function showFootprints(
  name: string,
  footprints: readonly Footprint[],
  whole: WholeFile,
): void {
  const columns = columnsOf(footprints);
  footprintColumns.value = {
    ...{ floor: null, floorUnit: null },
    name: columns.all.find((each) => ADDRESS.test(each)) ?? null,
  };
  footprintLayer.value = { name, footprints, columns, whole };
  isPicking.value = true;
}

/** Outlines of the plan's buildings, as {@link outlineKey} writes them, with their ids. */
const present: ReadonlySignal<ReadonlyMap<string, string>> = computed(
  () => new Map(plan.value.structures.map(({ id, outline }) => [outlineKey(outline), id])),
);

function outlineKey(outline: readonly LonLat[]): string {
  return JSON.stringify(outline);
}

/** Whether a footprint is a building of the plan. */
export function isTaken({ corners }: Footprint): boolean {
  return present.value.has(outlineKey(corners));
}

/** Makes a footprint a building of the plan, or takes it out again. */
export function pick(footprint: Footprint): void {
  const id = present.peek().get(outlineKey(footprint.corners));
  const name = nameOf(footprint, footprintColumns.peek()) ?? "the building";
  if (id === undefined) {
    return void edit({
      note: `Take ${name}`,
      change: (now) => ({
        ...now,
        structures: [
          ...now.structures,
          ...buildingsOf([footprint], now.structures, footprintColumns.peek()),
        ],
      }),
    });
  }
  edit({
    note: `Leave out ${name}`,
    change: (now) => ({ ...now, structures: now.structures.filter((each) => each.id !== id) }),
  });
}

/** Footprints whose columns have the text, those nearest to a place first. */
export function nearestFootprints(
  { footprints }: FootprintLayer,
  at: LonLat | null,
  text: string,
  most: number,
): readonly Footprint[] {
  const wanted = text.trim().toLowerCase();
  const fits = ({ columns }: Footprint) =>
    wanted === "" ||
    Object.values(columns).some((value) => String(value).toLowerCase().includes(wanted));
  const found = footprints.filter(fits);
  if (!at) return found.slice(0, most);
  return found
    .map((footprint) => ({ footprint, far: roughDistance(footprint.middle, at) }))
    .sort((a, b) => a.far - b.far)
    .slice(0, most)
    .map(({ footprint }) => footprint);
}

/** For sorting alone: degrees of latitude on a flat Earth. */
function roughDistance([lonA, latA]: LonLat, [lonB, latB]: LonLat): number {
  return Math.hypot((lonA - lonB) * Math.cos((latB * Math.PI) / 180), latA - latB);
}

/** A tool taken in hand ends the picking. */
export function keepPicking(): () => void {
  return effect(() => {
    if (tool.value !== "move") isPicking.value = false;
  });
}
