import type { Scene } from "../../scene/types.js";
import { line, type Mark } from "./drawing.js";

/** Height at which a plan cuts the walls, m: what stands in a hole there shows as a gap (common practice of builders' drawings). */
const CUT = 1.2;

/** The walls cut at the usual height of a plan, holes as gaps closed by thin lines; nothing without a room. */
export function wallMarks({ room, polygons }: Scene): readonly Mark[] {
  if (room === null) return [];
  const { left, right, front, back } = room;
  const whole = [
    [left, front],
    [right, front],
    [right, back],
    [left, back],
    [left, front],
  ] as const;
  const cut = polygons
    .filter(({ kind, vertices }) => {
      const heights = vertices.map(([, , z]) => z);
      return kind === "wall" && Math.min(...heights) < CUT && Math.max(...heights) > CUT;
    })
    .map(({ name, vertices }) => {
      const xs = vertices.map(([x]) => x);
      const ys = vertices.map(([, y]) => y);
      return line("wall", name, [Math.min(...xs), Math.min(...ys)], [Math.max(...xs), Math.max(...ys)]);
    });
  return [line("opening", "room", ...whole), ...cut];
}

/** Floor, ceiling and the two walls that are seen on edge from the side; without a room a floor under all there is. */
export function roomSide({ room, sources, camera }: Scene): readonly Mark[] {
  if (room === null) {
    const ys = [-1, 1, ...sources.map(({ centre }) => centre[1]), ...(camera === null ? [] : [camera.at[1]])];
    return [line("wall", "floor", [Math.min(...ys), 0], [Math.max(...ys), 0])];
  }
  const { front, back, height } = room;
  return [line("wall", "room", [front, 0], [back, 0], [back, height], [front, height], [front, 0])];
}
