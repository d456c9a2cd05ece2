import { isWithin, type Place, type Region } from "../frame/region.js";
import type { Seam } from "../frame/seams.js";

/** How far beside a line it is asked what is there, in halves of the frame. */
const BESIDE = 0.01;

/** The middle of a line and the places to both of its sides. */
function sidesOf({ from, to }: Seam): readonly Place[] {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const long = Math.sqrt(dx * dx + dy * dy);
  const [x, y] = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  const [across, up] = [(-dy / long) * BESIDE, (dx / long) * BESIDE];
  return [
    [x + across, y + up],
    [x - across, y - up],
  ];
}

/**
 * The lines within the set: folds, and edges and corners with no bare picture beside them. The others vanish under what
 * is added there.
 */
export function linesWithin(seams: readonly Seam[], bare: Region): readonly Seam[] {
  return seams.filter(
    (seam) => seam.kind === "fold" || !sidesOf(seam).some((place) => isWithin(bare, place)),
  );
}
