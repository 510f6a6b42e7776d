import { signal } from "@preact/signals";

/** Whether the field views are open over the planning screen: there line, water and levee type are only read. */
export const fieldOpen = signal(false);

export function openField(): void {
  fieldOpen.value = true;
}

export function leaveField(): void {
  fieldOpen.value = false;
}
