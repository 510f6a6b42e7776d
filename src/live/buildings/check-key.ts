import type { Building } from "../../../shared/buildings/types.ts";
import type { Plan } from "../../../shared/plan.ts";
import { ground, openFiles } from "../ground.ts";
import { BUILDINGS } from "../parts.ts";

/** Another number once the same question may have other answers: then nothing kept before counts. */
const ANSWERS = 3;

/** Names the elevation data that are open: by their files and what was said of them. */
export function groundKey(): string {
  const { files = [], verticalUnit, marks } = ground.peek() ?? {};
  const open = openFiles.peek().map(({ name, size, lastModified }) => [name, size, lastModified]);
  const named = open.length > 0 ? open : files.map(({ name, bytes }) => [name, bytes]);
  return JSON.stringify([named, verticalUnit, marks]);
}

/** Names a check by all that its answers follow from: plan, buildings, levels, elevation data; null without a digest. */
export async function checkKey(
  plan: Plan,
  buildings: readonly Building[],
  { levels, mostOnOneLine }: { readonly levels: string; readonly mostOnOneLine: number },
): Promise<string | null> {
  if (!globalThis.crypto.subtle) return null;
  const read = Object.entries(BUILDINGS).flatMap(([name, isRead]) =>
    isRead ? [[name, plan[name as keyof Plan]]] : [],
  );
  const outlines = buildings.map(({ id, parts }) => [id, parts]);
  const text = JSON.stringify([ANSWERS, groundKey(), read, outlines, levels, mostOnOneLine]);
  const bytes = await crypto.subtle.digest("SHA-256", new TextEncoder().encode(text));
  return Array.from(new Uint8Array(bytes), (byte) => byte.toString(16).padStart(2, "0")).join("");
}
