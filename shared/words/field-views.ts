/** A view of the program in the field. */
export type FieldView = "build" | "watch" | "leave";

/** The field views and their names, in order. */
export const FIELD_VIEWS: readonly { readonly id: FieldView; readonly name: string }[] = [
  { id: "build", name: "Build" },
  { id: "watch", name: "Watch" },
  { id: "leave", name: "Leave" },
];
