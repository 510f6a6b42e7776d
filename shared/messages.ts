import type {
  CheckBuildingRequest,
  CheckGroupRequest,
  TraceBuildingsRequest,
  TracedBuildings,
} from "./buildings/check-types.ts";
import type {
  BagCurve,
  ChoiceEffort,
  ChoiceQuestion,
  FoundChoice,
  More,
  MoreBuys,
} from "./buildings/choice-types.ts";
import type { CheckedBuilding, CheckedGroup } from "./buildings/types.ts";
import type { LoneValue, MarkChoice } from "./ground-marks.ts";
import type { GroundNote } from "./ground-notes.ts";
import type { GroundSimulation } from "./ground-uncertainty/types.ts";
import type { LonLat, Plan, VerticalUnit } from "./plan.ts";
import type {
  FindRingRequest,
  FindRingResponse,
  ImproveLineRequest,
  ImproveLineResponse,
  SidewaysCostRequest,
  SidewaysCostResponse,
} from "./search-types.ts";
import type { CrossSection, SizedLine } from "./sizing-types.ts";
import type { TraceWaterRequest, WaterTrace } from "./water-types.ts";

/** Bytes of a file, read by slices; a `Blob` or `File` is one. */
export interface FileBytes {
  readonly size: number;
  /** Milliseconds, where it is known. */
  readonly lastModified?: number;
  slice(from: number, to: number): { arrayBuffer(): Promise<ArrayBuffer> };
}

/** A raster file as the browser or Node hands it over; never read whole. */
export interface TerrainFile {
  readonly name: string;
  readonly blob: FileBytes;
  /** The host it is read from, as a person knows it; left out for a file on this machine. */
  readonly host?: string;
}

/** A raster at a web address: a worker reads it through the page, which alone may ask, by ranges. */
export interface AddressedFile {
  readonly name: string;
  readonly href: string;
  /** As a person knows it. */
  readonly host: string;
}

export interface OpenTerrainRequest {
  /** One raster, or the tiles of one survey; its side-car files (`SIDE_CAR_ENDINGS`) among them. */
  readonly files: readonly TerrainFile[];
  /** Rasters at web addresses, beside the files; left out = none. */
  readonly addressed?: readonly AddressedFile[];
  /** Needed when the file states no vertical unit. */
  readonly verticalUnit: VerticalUnit | null;
  /** What the person says of heights that stand apart; left out = nothing. */
  readonly marks?: readonly MarkChoice[];
  /** Heights that stand apart, met while reading, and still to be asked about; left out = none. */
  readonly marksAsked?: readonly LoneValue[];
}

interface HeightRangeRequest {
  readonly files: readonly TerrainFile[];
  readonly addressed?: readonly AddressedFile[];
}

/** What the heights of elevation data without a vertical unit are, to choose the unit by. */
export interface HeightRange {
  /** As stored: metres or feet is what is asked. */
  readonly lowest: number;
  readonly highest: number;
  /** West, south, east, north in degrees. */
  readonly bounds: readonly [number, number, number, number];
}

export interface GroundSummary {
  readonly name: string;
  readonly files: readonly {
    readonly name: string;
    readonly bytes: number;
    readonly format: string;
  }[];
  /** Corners of the raster in longitude and latitude, from the upper left clockwise. */
  readonly corners: readonly [LonLat, LonLat, LonLat, LonLat];
  /** west, south, east, north in degrees. */
  readonly bounds: readonly [number, number, number, number];
  readonly columns: number;
  readonly rows: number;
  /** Cell size on the ground at the middle of the raster, metres. */
  readonly cellXM: number;
  readonly cellYM: number;
  /** Longer side of the coarsest cells where files of several cell sizes are open, metres. */
  readonly coarsestCellM?: number;
  /** Horizontal reference as the file states it, e.g. "EPSG:26915" or "user-defined: ...". */
  readonly crs: string;
  /** Set when source datum and WGS 84 differ without a grid to shift by. */
  readonly crsNote: DatumDoubt | null;
  readonly verticalUnit: VerticalUnit;
  /** Who said so: the file, or the person. */
  readonly verticalUnitFrom: "file" | "person";
  /** Vertical datum as the file states it; null when it does not. */
  readonly verticalDatum: string | null;
  readonly lowestM: number;
  readonly highestM: number;
  /** Share of cells without data, 0..1, of what was looked at. */
  readonly holeShare: number;
  /** True when lowest, highest and share come from an overview or a sample, not every cell. */
  readonly fromOverview: boolean;
  readonly notes: readonly GroundNote[];
  /** What the person said of heights that stand apart. */
  readonly marks: readonly MarkChoice[];
  /** Heights that stand apart and of which nobody has said what they are: nothing is counted before. */
  readonly marksAsked: readonly LoneValue[];
}

/**
 * How a horizontal datum was brought to WGS 84: taken as equal to it, or by average parameters, each good to about
 * `errorM`; or by the shift that the file has, which does not say how good it is.
 */
export type DatumDoubt =
  | { readonly kind: "taken-as-equal" | "by-average"; readonly errorM: number }
  | { readonly kind: "by-own-shift" };

interface SizeRequest {
  readonly plan: Plan;
  /** Alternatives to size; all of them when left out. */
  readonly ids?: readonly string[];
  /** True while something is being dragged: totals at +- RMSE are left out. */
  readonly live?: boolean;
}

interface SizeResponse {
  readonly lines: readonly SizedLine[];
}

export interface TileRequest {
  readonly z: number;
  readonly x: number;
  readonly y: number;
  /** Counts the times at which the map asks for its tiles anew: pictures of one tile in one turn show the same. */
  readonly turn?: number;
}

/**
 * 256 x 256 heights of a web-mercator tile, Terrarium-encoded RGBA (display only).
 * Null when the tile lies outside the raster. Where there is no data alpha is 255 and the height is
 * `HOLE_DISPLAY_M`; `holes` says whether any such pixel is there.
 */
export interface TileResponse {
  readonly rgba: Uint8ClampedArray<ArrayBuffer> | null;
  readonly holes: boolean;
  /**
   * Share of the raster that is read, where the tile was made before all of it was: ask again. What is not read is
   * `UNREAD_DISPLAY_M`, or no tile at all.
   */
  readonly share?: number;
}

export interface HeightTileRequest extends TileRequest {
  /** Subtracted fall: heights become relative to a water plane so that the tint is one level. Null = plain heights. */
  readonly fall: { readonly at: LonLat; readonly toward: LonLat; readonly fallPerM: number } | null;
  /**
   * For shading: heights are written as (height - baseM) x scale, to keep more of the fine relief than the
   * encoding's 4 mm, and holes are filled from their rim so that no cliff is shaded there (the hatch of
   * missing ground is drawn over it). `fall` is then left out of account.
   */
  readonly relief?: { readonly baseM: number; readonly scale: number };
}

/** Height written into display tiles where there is no data: far above any water. */
export const HOLE_DISPLAY_M = 9000;
/** Height written into display tiles where the raster is not read yet: above what stands for a hole. */
export const UNREAD_DISPLAY_M = 12_000;

export interface ContoursRequest {
  readonly bounds: readonly [number, number, number, number];
  /** Contour interval, metres. */
  readonly intervalM: number;
  /** Width of the view in CSS pixels, to choose the resolution. */
  readonly widthPx: number;
}

export interface ContoursResponse {
  /** Lines in longitude and latitude, one elevation each. */
  readonly lines: readonly { readonly elevationM: number; readonly path: readonly LonLat[] }[];
}

interface CrossSectionRequest {
  readonly plan: Plan;
  readonly id: string;
  readonly chainageM: number;
  /** Half width of ground wanted on either side beyond the toes, metres. */
  readonly marginM: number;
}

interface SimulateGroundRequest {
  readonly plan: Plan;
  readonly id: string;
}

interface ProbeRequest {
  readonly at: LonLat;
}

interface ProbeResponse {
  /** Null where there is no data. */
  readonly groundM: number | null;
}

interface ToGridRequest {
  readonly places: readonly LonLat[];
}

/** Places in the raster's own plane, in the order given. */
export interface OnGrid {
  /** Horizontal reference as the file states it. */
  readonly crs: string;
  /** Metres per unit of x and y; null when they are degrees. */
  readonly unitM: number | null;
  /** Easting before northing, in that unit. */
  readonly xy: readonly (readonly [number, number])[];
}

interface LonLatRequest {
  /** x and y of places in the raster's own grid, one after the other. */
  readonly grid: Float64Array<ArrayBuffer>;
  /** Another reference that they are in, as well-known text or a code of EPSG's; left out = the raster's. */
  readonly reference?: { readonly fileName: string } & (
    | { readonly text: string }
    | { readonly epsg: number }
  );
}

interface LonLatResponse {
  /** Longitude and latitude of the same places, degrees. */
  readonly lonLat: Float64Array<ArrayBuffer>;
}

interface ChooseRequest extends ChoiceEffort {
  readonly question: ChoiceQuestion;
}

interface MoreBuysRequest extends ChooseRequest {
  readonly more: readonly More[];
}

interface BagCurveRequest extends ChooseRequest {
  /** Numbers of bags, rising. */
  readonly bags: readonly number[];
}

/** The contract: name -> [request, response]. Everything else about the wire is derived from it. */
interface EngineMessages {
  openTerrain: [OpenTerrainRequest, GroundSummary];
  /** Of files that state no vertical unit; null when all do. Leaves the terrain that is open as it is. */
  heightRange: [HeightRangeRequest, HeightRange | null];
  size: [SizeRequest, SizeResponse];
  heightTile: [HeightTileRequest, TileResponse];
  /** Picture of the cells without data, drawn as a hatch, transparent elsewhere; null when none. */
  holeTile: [TileRequest, TileResponse];
  crossSection: [CrossSectionRequest, CrossSection];
  /** A line sized on many grounds, each the elevation data and an error they may have. */
  simulateGround: [SimulateGroundRequest, GroundSimulation];
  contours: [ContoursRequest, ContoursResponse];
  probe: [ProbeRequest, ProbeResponse];
  /** Longitudes and latitudes as eastings and northings of the raster's own reference. */
  toGrid: [ToGridRequest, OnGrid];
  /** Where places of the raster's own grid, or of another that is given in words, are on Earth. */
  lonLatOf: [LonLatRequest, LonLatResponse];
  /** Connected water and what it reaches, without a levee and with each alternative. */
  traceWater: [TraceWaterRequest, WaterTrace];
  /** The line round structures that needs the fewest bags. */
  findRing: [FindRingRequest, FindRingResponse];
  /** A drawn line moved to the nearest cheaper place. */
  improveLine: [ImproveLineRequest, ImproveLineResponse];
  /** What moving a line sideways would cost, station by station. */
  sidewaysCost: [SidewaysCostRequest, SidewaysCostResponse];
  /** Which lines round buildings to build with what there is. Needs no terrain. */
  chooseLines: [ChooseRequest, FoundChoice];
  /** What each of several things more would let be ringed besides, in the order given. */
  moreBuys: [MoreBuysRequest, readonly MoreBuys[]];
  /** Buildings ringed against bags. */
  bagCurve: [BagCurveRequest, BagCurve];
  /** Connected water at many buildings, traced once. `shared/buildings/check-buildings.ts` asks these three in turn. */
  traceBuildings: [TraceBuildingsRequest, TracedBuildings];
  /** One traced building: its state and its best line. */
  checkBuilding: [CheckBuildingRequest, CheckedBuilding];
  /** One line round some neighbors; null where there is none. */
  checkGroup: [CheckGroupRequest, CheckedGroup | null];
}

export type Verb = keyof EngineMessages;
export type RequestOf<V extends Verb> = EngineMessages[V][0];
export type ResponseOf<V extends Verb> = EngineMessages[V][1];

export interface CallOptions {
  /** Share done, 0..1, and what is being done. Called only for work longer than 300 ms. */
  readonly onProgress?: (share: number, doing: string) => void;
  readonly signal?: AbortSignal;
}

/** What answers one verb. */
export type Answer<V extends Verb> = (
  request: RequestOf<V>,
  options?: CallOptions,
) => Promise<ResponseOf<V>>;

/** One interface; the worker implements it, Node and tests use it directly. Failures are thrown as `Refusal`. */
export type Engine = { [V in Verb]: Answer<V> };

/**
 * An engine of which each verb is made by one function. The one list of the verbs: a verb of `EngineMessages` that
 * is missing here does not compile.
 */
export function engineOf(make: <V extends Verb>(verb: V) => Answer<V>): Engine {
  return {
    openTerrain: make("openTerrain"),
    heightRange: make("heightRange"),
    size: make("size"),
    heightTile: make("heightTile"),
    holeTile: make("holeTile"),
    crossSection: make("crossSection"),
    simulateGround: make("simulateGround"),
    contours: make("contours"),
    probe: make("probe"),
    toGrid: make("toGrid"),
    lonLatOf: make("lonLatOf"),
    traceWater: make("traceWater"),
    findRing: make("findRing"),
    improveLine: make("improveLine"),
    sidewaysCost: make("sidewaysCost"),
    chooseLines: make("chooseLines"),
    moreBuys: make("moreBuys"),
    bagCurve: make("bagCurve"),
    traceBuildings: make("traceBuildings"),
    checkBuilding: make("checkBuilding"),
    checkGroup: make("checkGroup"),
  };
}
