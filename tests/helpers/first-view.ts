import type { Page } from "playwright-core";

/** What is in sight without scrolling or pressing anything. */
export interface FirstView {
  /** Words and figures: what is written between blanks and has a letter or a digit. */
  readonly words: readonly string[];
  /** What can be pressed, typed into or moved, by its name. */
  readonly controls: readonly string[];
}

/**
 * Everything a person reads in the window: text on the page and in drawings, values of fields, and the labels that
 * the map writes itself. What is hidden, out of the window or cut off by what scrolls is not counted, nor is what
 * only screen readers are told.
 */
export function firstView(page: Page): Promise<FirstView> {
  return page.evaluate(() => {
    const isSeen = (element: Element) =>
      element.checkVisibility({ opacityProperty: true, visibilityProperty: true }) &&
      !element.closest(".unseen");
    const inSight = (element: Element, rect: DOMRect): boolean => {
      if (rect.width < 2 || rect.height < 2) return false;
      let [left, top, right, bottom] = [0, 0, window.innerWidth, window.innerHeight];
      for (let each: Element | null = element; each; each = each.parentElement) {
        const { overflowX, overflowY } = getComputedStyle(each);
        if (overflowX === "visible" && overflowY === "visible") continue;
        const box = each.getBoundingClientRect();
        [left, top] = [Math.max(left, box.left), Math.max(top, box.top)];
        [right, bottom] = [Math.min(right, box.right), Math.min(bottom, box.bottom)];
      }
      const middle = { x: rect.left + rect.width / 2, y: rect.top + rect.height / 2 };
      return middle.x > left && middle.x < right && middle.y > top && middle.y < bottom;
    };
    const texts: string[] = [];
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
      const parent = node.parentElement;
      if (!parent || parent.closest("script, style, title, desc") || !isSeen(parent)) continue;
      const range = document.createRange();
      range.selectNodeContents(node);
      if (inSight(parent, range.getBoundingClientRect())) texts.push(node.textContent ?? "");
    }
    for (const field of document.querySelectorAll("input, select, textarea")) {
      if (!(field instanceof HTMLInputElement) || field.type !== "text") continue;
      if (!isSeen(field) || !inSight(field, field.getBoundingClientRect())) continue;
      texts.push(field.value || field.placeholder);
    }
    texts.push(document.querySelector<HTMLElement>(".map-canvas")?.dataset.names ?? "");
    const pressed = 'button, input, select, textarea, a[href], summary, [tabindex="0"]';
    const controls = [...document.querySelectorAll<HTMLElement>(pressed)]
      .filter((each) => isSeen(each) && inSight(each, each.getBoundingClientRect()))
      .map(
        (each) =>
          each.getAttribute("aria-label") ??
          (each.textContent?.trim() || each.tagName.toLowerCase()),
      );
    const words = texts.flatMap((text) => text.match(/\S*[\p{L}\p{N}]\S*/gu) ?? []);
    return { words, controls };
  });
}

/** Texts of a part of the page that are cut off or run out of their place, in words. */
export function cutTexts(page: Page, parts: string): Promise<string[]> {
  return page.evaluate((selector) => {
    const found: string[] = [];
    for (const part of document.querySelectorAll(selector)) {
      for (const each of part.querySelectorAll<HTMLElement>("*")) {
        if (!each.checkVisibility({ visibilityProperty: true }) || each.closest(".unseen"))
          continue;
        if (each.clientWidth === 0 || each.scrollWidth <= each.clientWidth + 1) continue;
        if (/auto|scroll/.test(getComputedStyle(each).overflowX)) continue;
        const text = each instanceof HTMLInputElement ? each.value : each.textContent;
        found.push(`${each.className}: ${text?.slice(0, 60)}`);
      }
    }
    return found;
  }, parts);
}
