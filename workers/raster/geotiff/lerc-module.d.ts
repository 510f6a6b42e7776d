declare module "lerc" {
  interface Decoded {
    readonly width: number;
    readonly height: number;
    readonly pixels: readonly {
      readonly buffer: ArrayBuffer;
      readonly length: number;
      readonly BYTES_PER_ELEMENT: number;
    }[];
    /** 0 where a cell has no data; null when all have. */
    readonly mask: Uint8Array | null;
  }
  const Lerc: { decode(encoded: ArrayBuffer): Decoded };
  export default Lerc;
}
