import type { RefusalTexts } from "./text.ts";

const AGAIN = "Take it again with the phone's camera. The mark and the note stay.";

/** Why codes and photos of the field are not taken: the field views bring these texts. */
export const FIELD_REFUSALS = {
  "codes/other": () => [
    "Expected a code of what is built, from the field views of another phone; this is another code.",
    "On the other phone open Built so far, then Show codes.",
  ],
  "codes/damaged": () => [
    "The codes do not go together: what they say is not whole.",
    "Read them once more. If it stays so, pass on the plan file instead.",
  ],
  "codes/other-plan": ({ ours, theirs }: { ours: string; theirs: string }) => [
    `Expected what is built by plan ${ours}; this is of plan ${theirs}.`,
    "Open the same plan file on both phones, then pass it on again.",
  ],
  "codes/no-camera": () => [
    "The camera cannot be used: there is none, or this page may not use it.",
    "Allow the camera in the browser's settings, or pass on the plan file.",
  ],
  "photo/too-large": ({
    name,
    bytes,
    mostBytes,
  }: {
    name: string;
    bytes: number;
    mostBytes: number;
  }) => [
    `Expected a photo of at most ${mostBytes / 1e6} MB; ${name} has ${Math.ceil(bytes / 1e6)} MB.`,
    AGAIN,
  ],
  "photo/unreadable": ({ name, type }: { name: string; type: string }) => [
    `Expected a photo such as a JPEG; ${name} (${type || "kind not stated"}) cannot be opened here.`,
    AGAIN,
  ],
  "photo/no-room": ({ cause }: { cause: string }) => [
    `There is no room for the photo on this device: ${cause}`,
    "Free some space, then take it again. The mark and the note stay.",
  ],
} satisfies RefusalTexts;
