/** A choice of layout kept on this machine; `fallback` when there is none or storage is closed to the page. */
export function recall(key: string, fallback: string): string {
  try {
    return localStorage.getItem(key) ?? fallback;
  } catch {
    return fallback;
  }
}

/** Keeps a choice of layout on this machine; silently lasts as long as the tab when storage is closed. */
export function remember(key: string, value: string): void {
  try {
    localStorage.setItem(key, value);
  } catch {
    return;
  }
}
