/** What the keys do while the keyboard draws: a shape of several corners, or one place. */
export function drawKeysWords(
  shape: "ring" | "line" | "area" | "place",
  cornersSet: number,
): string {
  const move = "Arrow keys move the map, Shift for small steps.";
  if (shape === "place") return `${move} Enter sets it at the cross, Escape cancels.`;
  const ends = shape === "line" ? "ends the line" : `closes the ${shape}`;
  const corners = cornersSet === 1 ? "1 corner set" : `${cornersSet} corners set`;
  return `${move} Enter sets a corner at the cross, Backspace removes the last, Shift+Enter ${ends}, Escape cancels. ${corners}.`;
}
