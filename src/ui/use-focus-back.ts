import { useEffect, useRef } from "preact/hooks";

/**
 * Gives the focus back to what opened something over the page, once that is gone; else the keyboard starts again at
 * the top. What opened it is seen before the page under it is made inert, which takes the focus away.
 */
export function useFocusBack(isCovered: boolean): void {
  const opener = useRef<HTMLElement | null>(null);
  if (isCovered) opener.current ??= openerNow();
  useEffect(() => {
    if (isCovered) return;
    if (document.activeElement === document.body) opener.current?.focus();
    opener.current = null;
  }, [isCovered]);
}

/** What has the focus; for a command of a menu, which closes, the menu's button. */
function openerNow(): HTMLElement | null {
  const focused = document.activeElement;
  const menu = focused?.closest("[popover]");
  return menu
    ? document.querySelector<HTMLElement>(`[popovertarget="${menu.id}"]`)
    : (focused as HTMLElement | null);
}
