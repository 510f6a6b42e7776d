import type { CallOptions } from "../../shared/messages.ts";
import { makeBlockStore } from "./block-store.ts";
import type { RasterLevel } from "./open-raster.ts";
import { makeReducer, piecesOf } from "./reduced-level.ts";
import { emptyWindow, type WindowCells } from "./window.ts";

/** Cells of the finer level kept during the sweep, for blocks that two pieces share: 16 MB. */
const SWEEP_CELLS = 4_000_000;
const BLOCK = 256;
/** Progress is said each time it has grown by this share. */
const LEAST_ADVANCE = 0.005;
/** A sweep over more cells than this shows what it has read before it is done. */
const MOST_WAITED_FOR = 16_000_000;
/** Share that is read before any of it is shown. */
const FIRST_SHARE = 0.04;

/** Stands where a sweep has not been yet: neither ground nor a hole. */
export const UNREAD_M = Number.POSITIVE_INFINITY;

/** What a sweep has read. */
export interface ReadSoFar {
  /** The whole overview, `UNREAD_M` where the sweep has not been. The sweep goes on writing into it. */
  readonly cells: WindowCells;
  readonly share: number;
}

/** An overview that is made by one sweep over the whole raster when it is first needed, and then kept. */
export interface BuiltOverview {
  readonly level: RasterLevel;
  /** True when nothing has to be read any more. */
  readonly isBuilt: () => boolean;
  /**
   * Makes it. Callers at the same time share one sweep and each hear how far it is; it goes on when a caller leaves.
   * @throws Refusal where the file is damaged; the next call tries again
   */
  readonly build: (onShare?: (share: number) => void) => Promise<void>;
  /**
   * Starts it, and returns what is read so far as soon as that is worth showing; null when it is made. A raster
   * that is read quickly is always made first. After a sweep that failed it throws the same until `build` succeeds,
   * so that who asks again and again does not read a damaged file without end.
   */
  readonly soFar: (onShare?: (share: number) => void) => Promise<ReadSoFar | null>;
}

/** Overviews kept between visits, by what tells one raster from another. */
export interface OverviewShelf {
  /** Heights in metres row by row, as `put`; null where there are none of this key and length. */
  readonly get: (key: string, cells: number) => Promise<Float32Array | null>;
  /** Keeps them where there is room; says nothing where there is none. */
  readonly put: (key: string, heightsM: Float32Array) => Promise<void>;
  /**
   * Does the work of a key when nobody else does any of it: who comes second finds on the shelf what the first has
   * made. Left out where nobody else reads the same raster.
   */
  readonly alone?: (key: string, work: () => Promise<void>) => Promise<void>;
}

/** Where an overview is kept, and under which key. */
export interface Kept {
  readonly shelf: OverviewShelf;
  readonly key: string;
}

/**
 * @param factor cells of the finer level along one side of a reduced cell
 * @param kept where to look for one made before; null for nowhere
 */
export function builtOverview(fine: RasterLevel, factor: number, kept: Kept | null): BuiltOverview {
  const columns = Math.ceil(fine.columns / factor);
  const rows = Math.ceil(fine.rows / factor);
  const listeners = new Set<(share: number) => void>();
  let cells: WindowCells | null = null;
  let building: Promise<void> | null = null;
  let sweeping: ReadSoFar | null = null;
  let failed: { readonly thrown: unknown } | null = null;

  const sweep = (): Promise<void> =>
    kept?.shelf.alone ? kept.shelf.alone(kept.key, takeOrMake) : takeOrMake();

  const takeOrMake = async (): Promise<void> => {
    const known = await kept?.shelf.get(kept.key, columns * rows);
    const target = emptyWindow({ column: 0, row: 0, columns, rows });
    if (known) target.heightsM.set(known);
    else await readAll(target);
    cells = target;
    if (!known) await kept?.shelf.put(kept.key, target.heightsM);
  };

  const readAll = async (target: WindowCells): Promise<void> => {
    const store = makeBlockStore(SWEEP_CELLS);
    const reduce = makeReducer(fine, factor, store);
    const pieces = piecesOf(target, fine, factor);
    const showsParts = fine.columns * fine.rows > MOST_WAITED_FOR;
    target.heightsM.fill(UNREAD_M);
    let saidShare = 0;
    for (const [done, piece] of pieces.entries()) {
      await reduce(target, piece);
      const share = (done + 1) / pieces.length;
      if (showsParts && share >= FIRST_SHARE) sweeping = { cells: target, share };
      if (share < saidShare + LEAST_ADVANCE && share < 1) continue;
      saidShare = share;
      for (const hear of listeners) hear(share);
    }
  };

  const build: BuiltOverview["build"] = async (onShare) => {
    if (cells) return;
    if (onShare) listeners.add(onShare);
    building ??= sweep()
      .then(
        () => {
          failed = null;
        },
        (thrown) => {
          failed = { thrown };
          throw thrown;
        },
      )
      .finally(() => {
        building = null;
        sweeping = null;
      });
    try {
      await building;
    } finally {
      if (onShare) listeners.delete(onShare);
    }
  };

  const soFar: BuiltOverview["soFar"] = async (onShare) => {
    if (cells) return null;
    if (failed) throw failed.thrown;
    if (sweeping) return sweeping;
    await new Promise<void>((resolve, reject) => {
      const hear = (share: number) => {
        onShare?.(share);
        if (sweeping) resolve();
      };
      build(hear).then(resolve, reject);
    });
    return sweeping;
  };

  const level: RasterLevel = {
    ...{ columns, rows, blockColumns: BLOCK, blockRows: BLOCK },
    async readBlock(blockColumn, blockRow) {
      await build();
      return cut(cells!, blockColumn * BLOCK, blockRow * BLOCK);
    },
  };
  return { level, isBuilt: () => cells !== null, build, soFar };
}

/** One block; beyond the last column there is no data, beyond the last row nothing. */
function cut({ heightsM, columns, rows }: WindowCells, left: number, top: number): Float32Array {
  const high = Math.min(BLOCK, rows - top);
  const wide = Math.min(BLOCK, columns - left);
  const block = new Float32Array(BLOCK * high).fill(Number.NaN);
  for (let row = 0; row < high; row++) {
    const from = (top + row) * columns + left;
    block.set(heightsM.subarray(from, from + wide), row * BLOCK);
  }
  return block;
}

/** Makes overviews one after the other, telling how far they are together. */
export async function buildAll(
  overviews: readonly BuiltOverview[],
  { onProgress }: CallOptions = {},
): Promise<void> {
  const missing = overviews.filter((each) => !each.isBuilt());
  for (const [i, overview] of missing.entries()) {
    await overview.build((share) =>
      onProgress?.((i + share) / missing.length, "Reading all of the elevation data"),
    );
  }
}
