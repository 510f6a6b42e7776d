import type { ComponentChildren } from "preact";

interface ReadProps {
  /** What there is to read. */
  readonly label: string;
  readonly class?: string;
  readonly children: ComponentChildren;
}

/** What is read, scrolled by finger or by key where it is longer than the screen. */
export function Read({ label, class: look = "", children }: ReadProps) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls, so the keyboard must reach it.
    <section class={`crew-read ${look}`} aria-label={label} tabIndex={0}>
      {children}
    </section>
  );
}
