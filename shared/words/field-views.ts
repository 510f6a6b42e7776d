/** A view of the program in the field. */
export type FieldView = "build" | "map" | "section" | "watch" | "leave";

/** The field views and their names, in order. */
export const FIELD_VIEWS: readonly { readonly id: FieldView; readonly name: string }[] = [
  { id: "build", name: "Build" },
  { id: "map", name: "Map" },
  { id: "section", name: "Section" },
  { id: "watch", name: "Watch" },
  { id: "leave", name: "Leave" },
];

export const VIEW_ONLY = "View only";
export const UNLOCK_TITLE = "Planning screen";
export const UNLOCK_WORDS =
  "These views only show the plan and take marks of what is built. On the planning screen line, water and levee type can be changed, by a slip of the finger too. Any change makes another plan number: printed pages and other phones are of an old plan then. Go there only if you lead the plan.";
export const UNLOCK = "Unlock and go to planning";
