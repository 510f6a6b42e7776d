import { signal } from "@preact/signals";
import type { LonLat } from "../../shared/plan.ts";

/** The middle of the map where it came to rest last; null before there is one. */
export const lookedAt = signal<LonLat | null>(null);
