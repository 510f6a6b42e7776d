/** Why the plan can only be looked at, and what happens to an edit made elsewhere. */
export const VIEW_ONLY_WORDS = {
  elsewhere: {
    lead: "View only: this plan is being edited on another page.",
    rest: "What is changed there shows here. Edit here takes it over; nothing is lost.",
  },
  free: {
    lead: "View only: the page that edited this plan is closed.",
    rest: "Press Edit here to go on.",
  },
} as const;
