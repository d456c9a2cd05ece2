import type { AreaMark, Place } from "./drawing.js";

/** Radius of the point that is the lens, m. */
const RADIUS = 0.035;

/** The lens: a point. */
export function lensMark([x, y]: Place): AreaMark {
  const outline = Array.from({ length: 16 }, (_, i): Place => {
    const turn = (2 * Math.PI * i) / 16;
    return [x + RADIUS * Math.cos(turn), y + RADIUS * Math.sin(turn)];
  });
  return { kind: "area", ink: "lens", outline, name: "lens" };
}
