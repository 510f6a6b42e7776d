import { signal } from "@preact/signals";
import { plan } from "../document/store.ts";

/** Whether the field views are open over the planning screen: there line, water and levee type are only read. */
export const fieldOpen = signal(false);

export function openField(): void {
  fieldOpen.value = true;
}

export function leaveField(): void {
  fieldOpen.value = false;
}

/** A phone, upright or on its side. */
const PHONE = "(max-width: 520px), (max-width: 960px) and (max-height: 480px)";

/** Opens the field views first on a phone whose plan is being built by: something is marked in it. */
export function startInField(): void {
  const isBuilding = (plan.peek().progress?.length ?? 0) > 0;
  if (isBuilding && matchMedia(PHONE).matches) openField();
}
