import type { RasterAddress } from "../../shared/raster-address.ts";

/**
 * A raster at a web address among the files of the ground. It holds no bytes: a worker has the page ask for the parts
 * it needs.
 */
export class FileAt extends File {
  readonly at: RasterAddress;
  /** Bytes, as a plan or the server says; 0 before either does. */
  length: number;

  constructor(at: RasterAddress, length: number) {
    super([], at.name);
    this.at = at;
    this.length = length;
  }

  override get size(): number {
    return this.length;
  }
}

/** The rasters at web addresses among files. */
export function addressedIn(files: readonly File[]): FileAt[] {
  return files.filter((file) => file instanceof FileAt);
}
