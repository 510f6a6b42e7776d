/** Why the plan can only be looked at, and what happens to an edit made elsewhere. */
export const VIEW_ONLY_WORDS = {
  lead: "View only: this plan is being edited on another page.",
  rest: "What is changed there shows here. Edit here takes it over; nothing is lost.",
} as const;
