// Labels at the ends of lines, moved apart so that none lies on another.

export interface Placed {
  y: number;
}

/** The same labels, at least `gap` apart, each as near to its line as that allows, between `top` and `bottom`. */
export function spreadOut<L extends Placed>(labels: readonly L[], gap: number, top: number, bottom: number): L[] {
  const placed = labels.map((label) => ({ ...label })).sort((a, b) => a.y - b.y);
  let least = top;
  for (const label of placed) {
    label.y = Math.max(label.y, least);
    least = label.y + gap;
  }
  let most = bottom;
  for (const label of placed.toReversed()) {
    label.y = Math.min(label.y, most);
    most = label.y - gap;
  }
  return placed;
}
