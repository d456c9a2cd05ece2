import type { Vec3 } from "../core/vector.js";
import { areaTrue } from "../math/area-true.js";
import { addScaled } from "../math/vector.js";
import { beamToward } from "../physics/beam.js";
import { luminancePerEnergy } from "../physics/luminous-energy.js";
import { wayTo } from "../report/frame/look.js";
import { lensOf } from "../report/frame/project.js";
import { sourceBeam, sourceShape } from "../scene/lamp/optics.js";
import type { Body, Scene, ScenePolygon, Source } from "../scene/types.js";
import { emptyHit, firstHit } from "../transport/bounce/first-hit.js";
import { type World, worldOf } from "../transport/bounce/world.js";
import type { View } from "./view.js";

/** Corners that stand for a round opening, with its area. */
const CORNERS = 64;
/** How far behind what is seen a lit cloth may lie that is that thing itself, m. */
const CLOTH = 0.01;

/**
 * Puts the lit openings that the lens sees into a picture, each in its own luminance: flat ones from their front only.
 * What stands before an opening hides it. 1 is white, as in `Look`.
 *
 * @param right - The exposure for which white is 1, lx s.
 */
export function showLamps(
  scene: Scene,
  sources: readonly Source[],
  view: View,
  right: number,
  luminance: Float64Array,
): void {
  const { camera } = scene;
  const lens = camera === null ? null : lensOf(camera);
  const lit = sources.filter(({ energy }) => energy > 0);
  if (camera === null || lens === null || lit.length === 0) return;
  const openings = lit.map((source) => ({
    world: openingWorld(scene, source),
    slack: source.cloth === undefined ? 0 : CLOTH,
    luminanceTo: luminanceOf(source),
  }));
  const hit = emptyHit();
  const [x, y, z] = camera.at;
  const { width, height } = view;
  for (let row = 0; row < height; row++) {
    for (let column = 0; column < width; column++) {
      const pixel = row * width + column;
      const way = wayTo(lens, [(2 * column + 1) / width - 1, 1 - (2 * row + 1) / height]);
      let nearest = view.way[pixel] as number;
      for (const { world, slack, luminanceTo } of openings) {
        firstHit(world, x, y, z, way[0], way[1], way[2], hit);
        if (hit.thing < 0 || !hit.front || hit.way > nearest + slack) continue;
        nearest = hit.way;
        luminance[pixel] = (Math.PI * luminanceTo(way)) / right;
      }
    }
  }
}

/** Luminance of a source along a line of sight, cd s/m2. */
function luminanceOf(source: Source): (way: Vec3) => number {
  const beam = sourceBeam(source);
  const axial = source.energy * (luminancePerEnergy(sourceShape(source), beam) ?? 0);
  const { kind } = source.shape;
  if (kind === "sphere" || kind === "capsule") return () => axial;
  const [ax, ay, az] = source.axis;
  return ([dx, dy, dz]) => axial * beamToward(beam, -(dx * ax + dy * ay + dz * az), -dx, -dy, -dz);
}

/** An opening alone, as rays meet it. */
function openingWorld(scene: Scene, source: Source): World {
  const bodies: Body[] = [];
  const polygons: ScenePolygon[] = [];
  const { shape, centre, axis, across, along, name } = source;
  const flat = (corners: readonly (readonly [number, number])[]): void => {
    polygons.push({
      name,
      kind: "panel",
      vertices: corners.map(([a, b]) => addScaled(addScaled(centre, across, a), along, b)),
      normal: axis,
      frontReflectance: 0,
      backReflectance: 0,
    });
  };
  switch (shape.kind) {
    case "sphere":
      bodies.push({ kind: "sphere", name, centre, radius: shape.radius, reflectance: 0 });
      break;
    case "capsule": {
      const half = shape.length / 2 - shape.radius;
      const [from, to] = [addScaled(centre, along, -half), addScaled(centre, along, half)];
      bodies.push({ kind: "capsule", name, from, to, radius: shape.radius, reflectance: 0 });
      break;
    }
    case "rectangle": {
      const [a, b] = [shape.width / 2, shape.height / 2];
      flat([
        [-a, -b],
        [a, -b],
        [a, b],
        [-a, b],
      ]);
      break;
    }
    case "disc": {
      const step = (2 * Math.PI) / CORNERS;
      const radius = shape.radius * areaTrue(CORNERS);
      flat(
        Array.from({ length: CORNERS }, (_, i) => [radius * Math.cos(i * step), radius * Math.sin(i * step)]),
      );
      break;
    }
    default:
      return shape satisfies never;
  }
  return worldOf({ ...scene, room: null, polygons, bodies });
}
