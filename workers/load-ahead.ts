/**
 * Fetches the parts that are needed later: the network may be gone by then. What cannot be fetched now is tried again
 * on its first use.
 */
export function loadAhead(): void {
  void Promise.allSettled([
    import("./lines/search.ts"),
    import("./sweep/sweep.ts"),
    import("./raster/geotiff/reference-keys.ts"),
    import("./raster/reference-text.ts"),
    import("./raster/ascii/open-ascii.ts"),
    import("./raster/ranged-file.ts"),
    import("./raster/geotiff/unpack-lerc.ts"),
    import("./raster/geotiff/unpack-zstd.ts"),
  ]);
}
