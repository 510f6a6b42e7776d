import type { Engine } from "../../shared/messages.ts";
import { engine } from "../engine.ts";

/** Pictures of the ground, tile by tile; the map cancels those that it needs no more. */
export const pictures: Pick<Engine, "heightTile" | "holeTile"> = engine;
