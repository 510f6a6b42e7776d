/** A file in a VRT: its pixels, and where they lie in the VRT's. */
export interface VrtTile {
  readonly file: string;
  readonly columns: number;
  readonly rows: number;
  readonly to: {
    readonly column: number;
    readonly row: number;
    readonly columns: number;
    readonly rows: number;
  };
}

interface VrtGrid {
  readonly x0: number;
  readonly y0: number;
  readonly cell: number;
  readonly columns: number;
  readonly rows: number;
}

/** A VRT of files side by side, as GDAL writes one. */
export function vrtText(
  { x0, y0, cell, columns, rows }: VrtGrid,
  tiles: readonly VrtTile[],
  reference = "",
  noData = -9999,
): string {
  const source = ({ file, columns: width, rows: height, to }: VrtTile) => `
    <ComplexSource resampling="bilinear">
      <SourceFilename relativeToVRT="1">${file}</SourceFilename>
      <SourceBand>1</SourceBand>
      <SrcRect xOff="0" yOff="0" xSize="${width}" ySize="${height}" />
      <DstRect xOff="${to.column}" yOff="${to.row}" xSize="${to.columns}" ySize="${to.rows}" />
      <NODATA>${noData}</NODATA>
    </ComplexSource>`;
  return `<VRTDataset rasterXSize="${columns}" rasterYSize="${rows}">
  ${reference && `<SRS dataAxisToSRSAxisMapping="1,2">${reference}</SRS>`}
  <GeoTransform> ${x0}, ${cell}, 0.0, ${y0}, 0.0, ${-cell}</GeoTransform>
  <VRTRasterBand dataType="Float32" band="1">
    <NoDataValue>${noData}</NoDataValue>
    <ColorInterp>Gray</ColorInterp>${tiles.map(source).join("")}
  </VRTRasterBand>
</VRTDataset>
`;
}
