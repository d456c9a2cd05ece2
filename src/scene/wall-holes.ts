/** A rectangle in the plane of a wall: from `left` to `right`, and from `low` to `high`. */
export interface WallArea {
  readonly left: number;
  readonly right: number;
  readonly low: number;
  readonly high: number;
}

/** What is left of an area when a hole is cut into it, as up to four areas: below, above, and at the two sides. */
export function cutHole(area: WallArea, hole: WallArea): readonly WallArea[] {
  const left = Math.max(area.left, hole.left);
  const right = Math.min(area.right, hole.right);
  const low = Math.max(area.low, hole.low);
  const high = Math.min(area.high, hole.high);
  if (left >= right || low >= high) return [area];
  const around: readonly WallArea[] = [
    { ...area, high: low },
    { ...area, low: high },
    { left: area.left, right: left, low, high },
    { left: right, right: area.right, low, high },
  ];
  return around.filter((part) => part.right > part.left && part.high > part.low);
}

/** What is left of a wall when all its holes are cut. */
export function cutHoles(wall: WallArea, holes: readonly WallArea[]): readonly WallArea[] {
  let parts: readonly WallArea[] = [wall];
  for (const hole of holes) parts = parts.flatMap((part) => cutHole(part, hole));
  return parts;
}
