import { effect, signal } from "@preact/signals";
import { theme } from "../live/screen.ts";
import { type MapColours, readColours } from "./colours.ts";

/** The map's colours for the theme now set. */
export const colours = signal<MapColours>(readColours());

effect(() => {
  theme.value;
  queueMicrotask(() => {
    colours.value = readColours();
  });
});
