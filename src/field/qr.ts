import { loadPart } from "../../shared/load-part.ts";

/** Modules left white round a code. Source: ISO/IEC 18004, quiet zone. */
const QUIET = 4;

/** A QR code as the path of its dark modules in a square, the quiet zone in it. */
export interface QrPicture {
  readonly path: string;
  readonly sizeModules: number;
}

/** The pictures of texts as QR codes. @throws Refusal when the part of the program cannot be fetched */
export async function qrPictures(texts: readonly string[]): Promise<readonly QrPicture[]> {
  const { encodeQR } = await loadPart("the writer of codes", () => import("qr"));
  return texts.map((text) => pictureOf(encodeQR(text, "raw", { ecc: "medium", border: QUIET })));
}

function pictureOf(modules: readonly (readonly boolean[])[]): QrPicture {
  const path = modules
    .flatMap((row, y) => row.map((isDark, x) => (isDark ? `M${x} ${y}h1v1h-1z` : "")))
    .join("");
  return { path, sizeModules: modules.length };
}

/** Finds the text of a QR code in a picture; null where there is none to be read. */
export type ReadQr = (picture: ImageData) => string | null;

/** The reader of codes. @throws Refusal when the part of the program cannot be fetched */
export async function qrReader(): Promise<ReadQr> {
  const { decodeQR } = await loadPart("the reader of codes", () => import("qr/decode.js"));
  return ({ data, width, height }) => {
    try {
      return decodeQR({ data, width, height });
    } catch {
      return null;
    }
  };
}
