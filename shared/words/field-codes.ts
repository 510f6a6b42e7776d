/** `Code 1 of 3`. */
export function codeCountWords(index: number, count: number): string {
  return `Code ${index + 1} of ${count}`;
}

/** `2 of 3 codes read`. */
export function codesReadWords(read: number, count: number): string {
  return `${read} of ${count} codes read`;
}

export const NOTHING_MARKED = "Nothing is marked by this plan yet: there is nothing to pass on.";
export const HOW_TO_READ =
  "On the other phone open Built so far, then Read codes, and point its camera here until all are read. Photos stay on this phone.";
export const POINT_CAMERA = "Point the camera at the codes on the other phone.";
