import type { Vec3 } from "../../core/vector.js";
import { add, addScaled, scale, subtract } from "../../math/vector.js";
import { crosses } from "../../scene/crosses.js";
import { standBodies } from "../../scene/lamp/stand-bodies.js";
import { lampName } from "../../scene/lit/seen.js";
import type { Body, Scene, SceneCamera, ScenePolygon, Source } from "../../scene/types.js";
import { ownerOf } from "../say/surfaces.js";
import { inBody, inBox, tubeMeets, tubeMeetsSheet } from "./solids.js";

/** What a lamp or a camera stands in, and how. */
export interface Intrusion {
  /** A body's name, or that of a piece of the set. */
  readonly name: string;
  readonly of: "subject" | "piece";
  /** Inside a solid, or cut through by a sheet. */
  readonly how: "inside" | "through";
}

/** Lines through the middle of a lit opening, from rim to rim. */
function chords({ shape, centre, across, along, axis }: Source): readonly (readonly [Vec3, Vec3])[] {
  const line = (half: Vec3): readonly [Vec3, Vec3] => [subtract(centre, half), add(centre, half)];
  switch (shape.kind) {
    case "disc": {
      const [a, b] = [scale(across, shape.radius), scale(along, shape.radius)];
      const d = Math.SQRT1_2;
      return [a, b, scale(add(a, b), d), scale(subtract(a, b), d)].map(line);
    }
    case "rectangle": {
      const [a, b] = [scale(across, shape.width / 2), scale(along, shape.height / 2)];
      return [a, b, add(a, b), subtract(a, b)].map(line);
    }
    case "sphere":
      return [across, along, axis].map((way) => line(scale(way, shape.radius)));
    case "capsule":
      return [
        line(scale(along, shape.length / 2)),
        line(scale(across, shape.radius)),
        line(scale(axis, shape.radius)),
      ];
    default:
      return shape satisfies never;
  }
}

/**
 * The first thing of a scene that a lamp's lit opening stands in: a person, a round or square piece, or a sheet that cuts
 * through it. Room, stands, and the cloth that is the light itself do not count. Null where it stands free.
 */
export function intrusionOf(scene: Scene, source: Source): Intrusion | null {
  const own = scene.sources.find((row) => lampName(row) === lampName(source) && row.cloth !== undefined);
  return metBy(scene, source.centre, chords(source), own?.cloth?.scrim);
}

/**
 * The first thing of a scene that a camera stands in, taken as a ball round the lens; null where it stands free.
 *
 * @param radius - m
 */
export function cameraIntrusion(scene: Scene, camera: SceneCamera, radius: number): Intrusion | null {
  const { at, right, up, forward } = camera;
  const lines = [right, up, forward].map((way): readonly [Vec3, Vec3] => [
    addScaled(at, way, -radius),
    addScaled(at, way, radius),
  ]);
  return metBy(scene, at, lines);
}

/** Sheets that lie lower than this are stood upon, m. */
const UNDERFOOT = 0.03;

/**
 * The first person, or else the first piece of the set, through which the column or the arm of a light's stand goes; null
 * where it stands free. Room, other stands, what lies on the floor, and the cloth that is the light itself do not count.
 */
export function standIntrusion(scene: Scene, source: Source): Intrusion | null {
  const tubes = standBodies(source, scene.room).filter((tube) => tube.kind === "capsule");
  const meets = (body: Body): boolean => body.of !== "stand" && tubes.some((tube) => tubeMeets(tube, body));
  const met = scene.bodies.filter(meets);
  const body = met.find(({ of }) => of === "subject") ?? met[0];
  if (body !== undefined)
    return { name: body.name, of: body.of === "subject" ? "subject" : "piece", how: "through" };
  const own = scene.sources.find((row) => lampName(row) === lampName(source) && row.cloth !== undefined);
  for (const [name, sides] of piecesOf(scene, own?.cloth?.scrim)) {
    const high = sides.filter(({ vertices }) => vertices.some(([, , z]) => z > UNDERFOOT));
    const isInside = sides[0]?.kind === "box" && tubes.some(({ from }) => inBox(sides, from));
    if (isInside || high.some((side) => tubes.some((tube) => tubeMeetsSheet(tube, side))))
      return { name, of: "piece", how: "through" };
  }
  return null;
}

/** The flat pieces of the set by what they belong to. */
function piecesOf(scene: Scene, spared?: string): ReadonlyMap<string, readonly ScenePolygon[]> {
  const pieces = new Map<string, ScenePolygon[]>();
  for (const polygon of scene.polygons) {
    const { kind, name } = polygon;
    const owner = ownerOf(name);
    if (kind === "floor" || kind === "ceiling" || kind === "wall" || owner === spared) continue;
    pieces.set(owner, [...(pieces.get(owner) ?? []), polygon]);
  }
  return pieces;
}

/** The first body, stands left out, in which one of the points lies. */
function bodyRound(bodies: readonly Body[], points: readonly Vec3[]): Body | undefined {
  for (const body of bodies) {
    if (body.of === "stand") continue;
    for (const point of points) if (inBody(body, point)) return body;
  }
  return undefined;
}

/** What the middle or an end of a line lies in, or what a line crosses. */
function metBy(
  scene: Scene,
  middle: Vec3,
  lines: readonly (readonly [Vec3, Vec3])[],
  spared?: string,
): Intrusion | null {
  const points = [middle, ...lines.flat()];
  const body = bodyRound(scene.bodies, points);
  if (body !== undefined)
    return { name: body.name, of: body.of === "subject" ? "subject" : "piece", how: "inside" };
  for (const [name, sides] of piecesOf(scene, spared)) {
    if (sides[0]?.kind === "box" && points.some((point) => inBox(sides, point)))
      return { name, of: "piece", how: "inside" };
    if (sides.some((side) => lines.some(([a, b]) => crosses(side, a, b))))
      return { name, of: "piece", how: "through" };
  }
  return null;
}
