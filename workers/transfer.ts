import type { ResponseOf, Verb } from "../shared/messages.ts";
import type { Done } from "../shared/wire.ts";

/** What may be moved instead of copied, per verb. The engine keeps none of these arrays. */
const OWNED: { [V in Verb]?: (response: ResponseOf<V>) => ArrayBufferView[] } = {
  size: ({ lines }) => lines.flatMap(({ walk }) => Object.values(walk)),
  crossSection: ({ offsetM, groundM }) => [offsetM, groundM],
  heightTile: ({ rgba }) => (rgba ? [rgba] : []),
  holeTile: ({ rgba }) => (rgba ? [rgba] : []),
  traceWater: ({ mask, nearMask }) => [mask.codes, ...(nearMask ? [nearMask.codes] : [])],
  sidewaysCost: ({ moveM: _, ...arrays }) => Object.values(arrays),
};

/** The buffers of an answer, each once. */
export function transferablesOf<V extends Verb>({ verb, response }: Done<V>): ArrayBuffer[] {
  const views = OWNED[verb]?.(response) ?? [];
  const buffers = views.map((view) => view.buffer);
  return [...new Set(buffers.filter((buffer) => buffer instanceof ArrayBuffer))];
}
