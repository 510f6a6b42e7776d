/** What a patrol looks for and does about it, with the sources of each. */
export const SIGNS: readonly {
  readonly sign: string;
  readonly act: string;
  readonly source: string;
}[] = [
  {
    sign: "Boil: water wells up behind the levee",
    act: "Clear water: report it and keep watching. Carrying soil: ring it with bags, 3 to 4 ft (0.9 to 1.2 m) across, one large ring round a nest. Raise the ring until the water runs clear. Never stop it.",
    source: "EFT-94, DWR-03, LOM",
  },
  {
    sign: "Wet toe, seepage",
    act: "Lead it to the sump. Mark where it begins and look again whether it grows or runs cloudy.",
    source: "DWR-03 (look for it); what to do: common practice, no source",
  },
  {
    sign: "Cracks, slides, slumps, a leaning face",
    act: "Keep people off and away from it on the land side, and report it at once.",
    source: "DWR-03 (look for it); what to do: common practice, no source",
  },
  {
    sign: "Wave wash, a torn or lifted sheet",
    act: "Weigh the sheet down with bags. Do not walk on it, do not puncture it.",
    source: "DWR-03, NDSU-11",
  },
  {
    sign: "Water near the crest",
    act: "Read the gauge and report what is left below the crest. Ask before raising: the base must carry it.",
    source: "NDSU-NR, DWR-03",
  },
];

/** How a patrol goes. */
export const PATROL: readonly { readonly text: string; readonly source: string }[] = [
  {
    text: "Two people, always. Begin at the level written below, before water stands against the levee.",
    source: "DWR-03",
  },
  {
    text: "At night: waterproof torches, light sticks, life jackets, in sight of each other.",
    source: "FFO-96",
  },
  {
    text: "Flood water is contaminated: gloves, and wash. Electric pumps out of the wet, on protected circuits.",
    source: "NDSU-11, LSU",
  },
  {
    text: "Do not pump a basement out early: its floor and walls can give way.",
    source: "BASE-N, BASE-F",
  },
];
