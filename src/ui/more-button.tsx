import type { ComponentChildren } from "preact";
import { useId } from "preact/hooks";
import { partOpen, setPart } from "./disclosure.tsx";
import { Icon } from "./icons.tsx";

interface More {
  readonly bodyId: string;
  readonly open: boolean;
  readonly onToggle: () => void;
}

/** The state of something that a {@link MoreButton} opens, remembered on this machine under that name. */
export function useMore(id: string): More {
  const open = partOpen(id, false);
  return { bodyId: useId(), open, onToggle: () => setPart(id, !open) };
}

/** A word that opens what follows below, apart from it. */
export function MoreButton({
  bodyId,
  open,
  onToggle,
  children,
}: More & { readonly children: ComponentChildren }) {
  return (
    <button
      type="button"
      class="more-button"
      aria-expanded={open}
      aria-controls={bodyId}
      onClick={onToggle}
    >
      {children} <Icon name="chevron" />
    </button>
  );
}
