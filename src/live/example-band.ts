import { signal } from "@preact/signals";

/** Whether the person has put the band away that says that the plan is an example; until one is opened again. */
export const bandIsAway = signal(false);
