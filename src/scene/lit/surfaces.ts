import type { ScenePolygon } from "../types.js";

/** The words by which a head may shine into the room's own surfaces, and the names of their polygons. */
const roomSurfaces: ReadonlyMap<string, string> = new Map([
  ["ceiling", "ceiling"],
  ["floor", "floor"],
  ["wall_left", "wall left"],
  ["wall_right", "wall right"],
  ["wall_back", "wall back"],
  ["wall_front", "wall front"],
]);

/** The name under which a report speaks of a surface: `wall left` for `wall_left`. */
export function surfaceOf(name: string): string {
  return roomSurfaces.get(name) ?? name;
}

/** The polygons of a surface that lie in one plane with its first; a wall with a window comes in several. */
export function polygonsOf(polygons: readonly ScenePolygon[], name: string): readonly ScenePolygon[] {
  const surface = surfaceOf(name);
  const own = polygons.filter(
    (polygon) => polygon.name === surface || polygon.name.startsWith(`${surface}.`),
  );
  const first = own[0];
  if (first === undefined) return [];
  return own.filter(
    ({ normal }) =>
      normal[0] * first.normal[0] + normal[1] * first.normal[1] + normal[2] * first.normal[2] > 1 - 1e-9,
  );
}
