import type { ComponentChildren, RefObject } from "preact";
import { useId, useRef } from "preact/hooks";
import { Icon, type IconName } from "./icons.tsx";
import { placeBeside } from "./place-beside.ts";

interface MenuProps {
  readonly label: string;
  /** Beside the text, or alone; a menu of words alone has none. */
  readonly icon?: IconName;
  /** Written on the button; an icon alone when left out. */
  readonly text?: string;
  /** Class of the button instead of the one for a tool. */
  readonly class?: string;
  readonly disabled?: boolean;
  readonly children: ComponentChildren;
}

/** A button that opens a short list of commands; choosing one, Escape or a click elsewhere closes it. */
export function Menu({ label, icon, text, disabled, children, ...props }: MenuProps) {
  const id = useId();
  const button = useRef<HTMLButtonElement>(null);
  return (
    <>
      <button
        ref={button}
        type="button"
        class={props.class ?? (text ? "tool-button" : "icon-button")}
        aria-label={text ? undefined : label}
        data-tip={text ? undefined : label}
        disabled={disabled}
        popovertarget={id}
      >
        {icon && <Icon name={icon} />} {text}
      </button>
      <MenuList id={id} beside={button}>
        {children}
      </MenuList>
    </>
  );
}

interface MenuListProps {
  readonly id: string;
  /** What it opens beside. */
  readonly beside: RefObject<HTMLElement | null>;
  readonly children: ComponentChildren;
}

/** The list alone, for a button of another kind that opens it as its `popovertarget`. */
export function MenuList({ id, beside, children }: MenuListProps) {
  const list = useRef<HTMLDivElement>(null);
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: the click bubbles from the buttons inside.
    // biome-ignore lint/a11y/useKeyWithClickEvents: Enter and Space click those buttons.
    <div
      id={id}
      ref={list}
      class="menu"
      popover="auto"
      onToggle={(event) => {
        if (event.newState === "open" && beside.current) {
          placeBeside(event.currentTarget, beside.current);
        }
      }}
      onClick={() => list.current?.hidePopover()}
    >
      {children}
    </div>
  );
}

interface MenuItemProps {
  /** Of the button, for who presses it from elsewhere. */
  readonly id?: string;
  readonly icon?: IconName;
  /** At the end of the line: its key, or how it stands now. */
  readonly hint?: string;
  /** Its name where the words alone do not say it. */
  readonly label?: string;
  readonly disabled?: boolean;
  readonly onChoose: () => void;
  readonly children: ComponentChildren;
}

/** One command of a {@link Menu}. */
export function MenuItem({ id, icon, hint, label, disabled, onChoose, children }: MenuItemProps) {
  return (
    <button id={id} type="button" aria-label={label} disabled={disabled} onClick={onChoose}>
      {icon && <Icon name={icon} />}
      <span>{children}</span>
      {hint && <span class="menu-hint">{hint}</span>}
    </button>
  );
}
