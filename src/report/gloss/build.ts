import type { Vec3 } from "../../core/vector.js";
import { addScaled, distance, dot, subtract } from "../../math/vector.js";
import type { Recipe } from "../../model/types.js";
import { crosses } from "../../scene/crosses.js";
import type { SceneCamera, ScenePolygon, Source } from "../../scene/types.js";
import { directionTo } from "../geometry/directions.js";
import { framed } from "../geometry/frame.js";
import { type Sight, sightOf } from "../geometry/sight.js";
import { sizeFrom } from "../light/size.js";
import { lightsOn, type Plan } from "../plan.js";
import { ownerOf } from "../say/surfaces.js";
import type { ReportGloss } from "../schema/gloss.js";
import { openingPoints } from "./opening-points.js";

/** How far a line of sight starts before the surface, m. */
const LIFT = 1e-4;

/** The names of the pieces of the set that are said to be glossy. */
export function glossyPieces({ set }: Recipe): readonly string[] {
  return (set?.parts ?? []).flatMap((piece) =>
    "finish" in piece && piece.finish === "glossy" ? [piece.name ?? piece.block] : [],
  );
}

/** A place that is looked at in a mirror, or why it is not seen there; the nearer to being seen, the greater `stage`. */
type Mirrored =
  | { readonly at: Vec3; readonly frame: readonly [number, number]; readonly reason?: never }
  | { readonly at?: never; readonly stage: number; readonly reason: string };

/** What the lens sees of every light in every glossy piece. Only lights are looked for; straight lines and flat mirrors. */
export function reportGloss(plan: Plan): ReportGloss {
  const { scene, recipe } = plan;
  const { camera } = scene;
  const names = new Set(glossyPieces(recipe));
  if (camera === null || names.size === 0) return [];
  const sight = sightOf(scene);
  return scene.polygons
    .filter(({ name }) => names.has(ownerOf(name)))
    .flatMap((polygon) => lightsOn(scene).map((source) => mirroredLight(polygon, source, camera, sight)));
}

function mirroredLight(
  polygon: ScenePolygon,
  source: Source,
  camera: SceneCamera,
  sight: Sight,
): ReportGloss[number] {
  const points = openingPoints(source);
  const looks = points.map((point) => look(polygon, source, point, camera, sight));
  const seen = looks.flatMap((row) => (row.at === undefined ? [] : [row]));
  const [first] = seen;
  const base = { surface: ownerOf(polygon.name), light: source.name };
  if (first === undefined) {
    const missed = looks.flatMap((row) => (row.at === undefined ? [row] : []));
    const best = [...missed].sort((a, b) => b.stage - a.stage)[0];
    return {
      ...base,
      seen: false,
      share: 0,
      at: null,
      frame: null,
      width: null,
      reason: best?.reason ?? null,
    };
  }
  const mirror = mirrored(polygon, camera.at);
  return {
    ...base,
    seen: true,
    share: seen.length / points.length,
    at: [...first.at],
    frame: [...first.frame],
    // The image of the light from the lens is the light from the image of the lens.
    width: sizeFrom(source, mirror)?.equivalent ?? null,
    reason: null,
  };
}

/** The mirror image of a place in the plane of a polygon. */
function mirrored({ vertices, normal }: ScenePolygon, place: Vec3): Vec3 {
  const corner = vertices[0] ?? place;
  return addScaled(place, normal, -2 * dot(subtract(place, corner), normal));
}

/** Whether the lens sees one point of a light in the mirror. */
function look(
  polygon: ScenePolygon,
  source: Source,
  point: Vec3,
  camera: SceneCamera,
  sight: Sight,
): Mirrored {
  const { normal, vertices } = polygon;
  const corner = vertices[0] ?? point;
  const before = dot(subtract(camera.at, corner), normal);
  const light = dot(subtract(point, corner), normal);
  if (before * light <= 0) return { stage: 0, reason: "lens and light are on different sides of it" };
  const image = addScaled(point, normal, -2 * light);
  const at = addScaled(camera.at, subtract(image, camera.at), before / (before + light));
  const flat = source.shape.kind === "disc" || source.shape.kind === "rectangle";
  if (flat && dot(subtract(at, point), source.axis) <= 0)
    return { stage: 1, reason: "the light does not show it its lit side" };
  if (!crosses(polygon, camera.at, image)) return { stage: 2, reason: "the mirror image lies beside it" };
  const place = framed(camera, at);
  if (place === null || Math.abs(place.x) > 1 || Math.abs(place.y) > 1)
    return { stage: 3, reason: "the mirror image lies outside the picture" };
  if (!isFree(sight, camera.at, at, normal, before) || !isFree(sight, point, at, normal, before))
    return { stage: 4, reason: "something stands in the way" };
  return { at, frame: [(1 + place.x) / 2, (1 + place.y) / 2] };
}

/** Whether nothing stands between a place and a point of a surface; looked at from the surface. */
function isFree(sight: Sight, place: Vec3, at: Vec3, normal: Vec3, side: number): boolean {
  const start = addScaled(at, normal, side > 0 ? LIFT : -LIFT);
  const way = directionTo(start, place);
  const met = way === null ? null : sight(start, way);
  return met === null || met.way > distance(start, place) - 1e-3;
}
