import type { ResponseOf, Verb } from "../shared/messages.ts";

/** What may be moved instead of copied, per verb. The engine keeps none of these arrays. */
const OWNED: { [V in Verb]?: (response: ResponseOf<V>) => ArrayBufferView[] } = {
  size: ({ lines }) => lines.flatMap(({ walk }) => Object.values(walk) as ArrayBufferView[]),
  crossSection: ({ offsetM, groundM }) => [offsetM, groundM],
  heightTile: ({ rgba }) => (rgba ? [rgba] : []),
  holeTile: ({ rgba }) => (rgba ? [rgba] : []),
  traceWater: ({ mask }) => [mask.codes],
  sidewaysCost: ({ moveM: _, ...arrays }) => Object.values(arrays),
};

/** The buffers of a response, each once. */
export function transferablesOf<V extends Verb>(verb: V, response: ResponseOf<V>): ArrayBuffer[] {
  const views = OWNED[verb]?.(response) ?? [];
  return [...new Set(views.map((view) => view.buffer as ArrayBuffer))];
}
