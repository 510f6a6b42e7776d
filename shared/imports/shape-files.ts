/** For a file dialog: files whose shapes are read. */
export const SHAPE_FILES = ".geojson,.json,.kml,.kmz,.gpx,.zip,.fgb,.parquet,.geoparquet";
/** Files that can hold nothing but shapes, by their names. */
export const SHAPE_NAME = /\.(kml|kmz|gpx|zip|shp|fgb|parquet|geoparquet)$/i;
/** Most bytes a file of shapes may have. */
export const MAX_SHAPE_BYTES = 40_000_000;
