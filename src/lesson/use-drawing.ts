import { useSize } from "../ui/use-size.ts";

/** Least height of a drawing, in type sizes: in less there is nothing to see. */
const LEAST_EMS = 5;

/** A reference to put on a drawing's place, and its size; null before it is laid out, and where it is too low. */
export function useDrawing(typePx: number): ReturnType<typeof useSize<HTMLDivElement>> {
  const [ref, size] = useSize<HTMLDivElement>();
  return [ref, size && size.heightPx > LEAST_EMS * typePx ? size : null];
}
