import type { Vec3 } from "../core/vector.js";
import { GROUND } from "../report/intent/natural.js";
import { ownerOf } from "../report/say/surfaces.js";
import type { Scene, ScenePolygon, Source } from "../scene/types.js";
import { emptyHit, firstHit } from "../transport/bounce/first-hit.js";
import { worldOf } from "../transport/bounce/world.js";
import { SKY_HALF } from "./natural-lights.js";
import type { View } from "./view.js";

const isRoom = ({ kind }: ScenePolygon): boolean => kind === "wall" || kind === "floor" || kind === "ceiling";

/** The set-up without its lamps, their stands and the cloths that they shine through. */
function unlit(scene: Scene): Scene {
  const cloths = scene.sources.flatMap(({ cloth }) => (cloth === undefined ? [] : [cloth.scrim]));
  return {
    ...scene,
    polygons: scene.polygons.filter(({ name }) => !cloths.includes(ownerOf(name))),
    bodies: scene.bodies.filter((body) => body.of !== "stand"),
    sources: [],
    key: null,
  };
}

/** Whether a ray from a place meets a surface. */
function meets(scene: Scene, polygon: ScenePolygon, from: Vec3, way: Vec3): boolean {
  const hit = emptyHit();
  const alone = worldOf({ ...scene, room: null, polygons: [polygon], bodies: [] });
  firstHit(alone, ...from, ...way, hit);
  return hit.thing >= 0;
}

const lit = (scene: Scene, sources: readonly Source[]): Scene => ({
  ...scene,
  sources,
  key: sources.length === 0 ? null : 0,
});

/**
 * The set-up in the open: the floor goes on as ground, ceiling and walls are gone but for the walls that the picture
 * shows and that do not stand between the light and the face.
 *
 * @param view - What the lens sees of the scene.
 * @param towards - Unit vector from the face to the light; null for a sky alone.
 */
export function inTheOpen(
  scene: Scene,
  view: View,
  sources: readonly Source[],
  face: Vec3,
  towards: Vec3 | null,
): Scene {
  const shown = new Set(Array.from(view.side, (side) => side >> 1));
  const seen = scene.polygons.filter((_, i) => shown.has(i));
  const bare = unlit(scene);
  const half = SKY_HALF;
  const floor = scene.polygons.find(({ kind }) => kind === "floor");
  const ground: ScenePolygon = {
    name: "floor",
    kind: "floor",
    vertices: [
      [-half, -half, 0],
      [half, -half, 0],
      [half, half, 0],
      [-half, half, 0],
    ],
    normal: [0, 0, 1],
    frontReflectance: floor?.frontReflectance ?? GROUND,
    backReflectance: 0,
  };
  const rest = bare.polygons.filter(
    (polygon) =>
      !isRoom(polygon) ||
      (polygon.kind === "wall" &&
        seen.includes(polygon) &&
        (towards === null || !meets(scene, polygon, face, towards))),
  );
  return lit({ ...bare, room: null, polygons: [ground, ...rest] }, sources);
}

/** The set-up in its room with one light in place of all lamps; a wall that the light would stand behind is gone. */
export function inItsRoom(scene: Scene, light: Source, face: Vec3, towards: Vec3): Scene {
  const bare = unlit(scene);
  const { room } = scene;
  const [x, y, z] = light.centre;
  const inside =
    room === null ||
    (x > room.left && x < room.right && y > room.front && y < room.back && z > 0 && z < room.height);
  if (inside) return lit(bare, [light]);
  const polygons = bare.polygons.filter(
    (polygon) => !isRoom(polygon) || !meets(scene, polygon, face, towards),
  );
  return lit({ ...bare, room: null, polygons }, [light]);
}
