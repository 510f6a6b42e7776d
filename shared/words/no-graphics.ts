/** Where the browser cannot draw the map at all: what still works, and what to do. An empty map would look dry. */
export const NO_GRAPHICS = {
  title: "The map is not shown: this browser has no WebGL 2 graphics.",
  goesOn:
    "Bags, checks, profile, cross-section, the table of corners and printing work without it. The map is not empty ground: water may lie there.",
  whatToDo:
    "Switch on graphics acceleration in the browser's settings and reload, or open the plan in another browser. A remote desktop often has no graphics.",
} as const;
