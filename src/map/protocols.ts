import { type AddProtocolAction, addProtocol } from "maplibre-gl";
import type { CallOptions, TileResponse } from "../../shared/messages.ts";
import { pictures } from "../live/pictures.ts";
import { baseMapFrame } from "./base-map-frame.ts";
import { withReadingShown } from "./ground-reading.ts";
import { noteHoles } from "./hole-boxes.ts";
import { BASE_MAP_SCHEME, readAddress, SCHEMES } from "./tile-address.ts";

const TILE_PX = 256;

type Ask = (address: string, options: CallOptions) => Promise<TileResponse>;

/** Lets the map fetch pictures of ground, water and holes from the engine, and of a base map. Call once, before the first map. */
export function installProtocols(): void {
  const heights: Ask = (address, options) =>
    pictures.heightTile({ fall: null, ...readAddress(address) }, options);
  addProtocol(SCHEMES.relief, answer(heights));
  addProtocol(SCHEMES.water, answer(heights));
  addProtocol(
    SCHEMES.holes,
    answer(async (address, options) => {
      const tile = readAddress(address);
      const picture = await pictures.holeTile(tile, options);
      if (picture.rgba) noteHoles(tile, picture.rgba);
      return picture;
    }),
  );
  addProtocol(BASE_MAP_SCHEME, baseMapTile);
}

const baseMapTile: AddProtocolAction = async ({ url }, abort) => {
  const address = url.slice(`${BASE_MAP_SCHEME}://`.length);
  const response = await baseMapFrame.fetch(address, { signal: abort.signal });
  if (!response.ok) throw new Error(`The base map answered ${response.status} for ${address}.`);
  return { data: await response.arrayBuffer() };
};

/** An empty tile outside the raster; an aborted request rejects and the map drops it. */
function answer(ask: Ask): AddProtocolAction {
  return async ({ url }, abort) => {
    const { rgba } = await withReadingShown((options) => ask(url, options), abort.signal);
    if (!rgba) return { data: new ArrayBuffer(0) };
    const picture = new ImageData(rgba, TILE_PX, TILE_PX);
    return { data: await createImageBitmap(picture, { colorSpaceConversion: "none" }) };
  };
}
