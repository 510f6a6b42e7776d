import type { ComponentChildren } from "preact";
import { useId, useRef } from "preact/hooks";
import { Icon, type IconName } from "./icons.tsx";
import { placeBeside } from "./place-beside.ts";

interface MenuProps {
  readonly label: string;
  readonly icon: IconName;
  /** Written on the button; an icon alone when left out. */
  readonly text?: string;
  readonly children: ComponentChildren;
}

/** A button that opens a short list of commands; choosing one, Escape or a click elsewhere closes it. */
export function Menu({ label, icon, text, children }: MenuProps) {
  const id = useId();
  const list = useRef<HTMLDivElement>(null);
  const button = useRef<HTMLButtonElement>(null);
  return (
    <>
      <button
        ref={button}
        type="button"
        class={text ? "tool-button" : "icon-button"}
        aria-label={text ? undefined : label}
        data-tip={text ? undefined : label}
        popovertarget={id}
      >
        <Icon name={icon} /> {text}
      </button>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: the click bubbles from the buttons inside. */}
      {/* biome-ignore lint/a11y/useKeyWithClickEvents: Enter and Space click those buttons. */}
      <div
        id={id}
        ref={list}
        class="menu"
        popover="auto"
        onToggle={(event) => {
          if (event.newState === "open" && button.current) {
            placeBeside(event.currentTarget, button.current);
          }
        }}
        onClick={() => list.current?.hidePopover()}
      >
        {children}
      </div>
    </>
  );
}

interface MenuItemProps {
  readonly icon: IconName;
  readonly disabled?: boolean;
  readonly onChoose: () => void;
  readonly children: ComponentChildren;
}

/** One command of a {@link Menu}. */
export function MenuItem({ icon, disabled, onChoose, children }: MenuItemProps) {
  return (
    <button type="button" disabled={disabled} onClick={onChoose}>
      <Icon name={icon} />
      {children}
    </button>
  );
}
