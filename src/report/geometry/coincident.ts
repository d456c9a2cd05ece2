import type { Vec3 } from "../../core/vector.js";
import { dot, frameAround, subtract } from "../../math/vector.js";
import type { Scene, ScenePolygon } from "../../scene/types.js";
import { ownerOf } from "../say/surfaces.js";

/** Sheets nearer to each other than this lie in one plane, m: paper lies half a millimetre above the floor. */
const SAME_PLANE = 1e-4;
/** Sheets that share less than this at an edge only touch, m. */
const TOUCHING = 1e-3;

const sheets: readonly ScenePolygon["kind"][] = ["flat", "paper", "card", "scrim", "disc", "panel"];

/** Whether two flat convex sheets lie in one plane and on each other. */
export function coincide(a: ScenePolygon, b: ScenePolygon): boolean {
  const corner = a.vertices[0];
  if (corner === undefined || Math.abs(dot(a.normal, b.normal)) < 1 - 1e-9) return false;
  if (b.vertices.some((at) => Math.abs(dot(subtract(at, corner), a.normal)) > SAME_PLANE)) return false;
  const [u, v] = frameAround(a.normal);
  const flat = ({ vertices }: ScenePolygon): readonly (readonly [number, number])[] =>
    vertices.map((at: Vec3) => [dot(at, u), dot(at, v)] as const);
  const [p, q] = [flat(a), flat(b)];
  // Two convex shapes are apart where a side of one of them has the other wholly on its outer side.
  return ![p, q].some((shape) =>
    shape.some(([x, y], i) => {
      const [nextX, nextY] = shape[(i + 1) % shape.length] ?? [x, y];
      const size = Math.hypot(nextX - x, nextY - y);
      if (!(size > 0)) return false;
      const [nx, ny] = [(nextY - y) / size, (x - nextX) / size];
      const reach = (points: typeof p): readonly [number, number] => {
        const along = points.map(([px, py]) => px * nx + py * ny);
        return [Math.min(...along), Math.max(...along)];
      };
      const [[lowP, highP], [lowQ, highQ]] = [reach(p), reach(q)];
      return highP - lowQ < TOUCHING || highQ - lowP < TOUCHING;
    }),
  );
}

/** Pieces of the set whose sheets lie in the same place, by their names; the later one last. */
export function coincidentPieces(scene: Pick<Scene, "polygons">): readonly (readonly [string, string])[] {
  const rows = scene.polygons.filter(({ kind }) => sheets.includes(kind));
  const found: [string, string][] = [];
  rows.forEach((b, i) => {
    for (const a of rows.slice(0, i)) {
      const [first, second] = [ownerOf(a.name), ownerOf(b.name)];
      if (first === second || found.some(([x, y]) => x === first && y === second)) continue;
      if (coincide(a, b)) found.push([first, second]);
    }
  });
  return found;
}
