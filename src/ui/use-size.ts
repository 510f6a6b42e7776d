import type { RefObject } from "preact";
import { useLayoutEffect, useRef, useState } from "preact/hooks";

interface Size {
  readonly widthPx: number;
  readonly heightPx: number;
}

/** A reference to put on an element, and the element's inner size in whole CSS pixels; null before it is laid out. */
export function useSize<T extends HTMLElement>(): [RefObject<T | null>, Size | null] {
  const ref = useRef<T>(null);
  const [size, setSize] = useState<Size | null>(null);
  useLayoutEffect(() => {
    const element = ref.current;
    if (!element) return;
    const measure = () => {
      const next = { widthPx: element.clientWidth, heightPx: element.clientHeight };
      setSize((was) =>
        was && was.widthPx === next.widthPx && was.heightPx === next.heightPx ? was : next,
      );
    };
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    measure();
    return () => observer.disconnect();
  }, []);
  return [ref, size];
}
