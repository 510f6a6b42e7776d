import { hostFrame } from "../browser/host-frame.ts";

/** Where base map pictures are asked for. */
export const baseMapFrame = hostFrame("Base map");
