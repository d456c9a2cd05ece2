import type { Vec3 } from "../../core/vector.js";
import { add, addScaled, dot, scale, subtract } from "../../math/vector.js";
import { lampName } from "../../scene/lit/seen.js";
import type { Body, Scene, ScenePolygon, Source } from "../../scene/types.js";
import { ownerOf } from "../say/surfaces.js";
import { crosses } from "./crossing.js";

/** What a lamp stands in, and how. */
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

/** Whether a point lies inside a rounded solid. */
function inBody(body: Body, point: Vec3): boolean {
  switch (body.kind) {
    case "ellipsoid": {
      const to = subtract(point, body.centre);
      const shares = body.axes.map((axis) => dot(to, axis) / dot(axis, axis));
      return shares.reduce((sum, share) => sum + share * share, 0) < 1;
    }
    case "capsule": {
      const [way, to] = [subtract(body.to, body.from), subtract(point, body.from)];
      const share = Math.min(1, Math.max(0, dot(to, way) / Math.max(dot(way, way), 1e-12)));
      const off = addScaled(to, way, -share);
      return dot(off, off) < body.radius * body.radius;
    }
    case "sphere": {
      const off = subtract(point, body.centre);
      return dot(off, off) < body.radius * body.radius;
    }
    default:
      return body satisfies never;
  }
}

/** Whether a point lies behind all sides of a box. */
function inBox(sides: readonly ScenePolygon[], point: Vec3): boolean {
  return sides.every(({ vertices, normal }) => dot(subtract(point, vertices[0] ?? point), normal) < -1e-6);
}

/**
 * The first thing of a scene that a lamp's lit opening stands in: a person, a round or square piece, or a sheet that cuts
 * through it. Room, stands, and the cloth that is the light itself do not count. Null where it stands free.
 */
export function intrusionOf(scene: Scene, source: Source): Intrusion | null {
  const lines = chords(source);
  const points = [source.centre, ...lines.flat()];
  const own = scene.sources.find((row) => lampName(row) === lampName(source) && row.cloth !== undefined);
  const body = scene.bodies.find(
    (candidate) => candidate.of !== "stand" && points.some((point) => inBody(candidate, point)),
  );
  if (body !== undefined)
    return { name: body.name, of: body.of === "subject" ? "subject" : "piece", how: "inside" };
  const pieces = new Map<string, ScenePolygon[]>();
  for (const polygon of scene.polygons) {
    const { kind, name } = polygon;
    const owner = ownerOf(name);
    if (kind === "floor" || kind === "ceiling" || kind === "wall" || owner === own?.cloth?.scrim) continue;
    pieces.set(owner, [...(pieces.get(owner) ?? []), polygon]);
  }
  for (const [name, sides] of pieces) {
    if (sides[0]?.kind === "box" && points.some((point) => inBox(sides, point)))
      return { name, of: "piece", how: "inside" };
    if (sides.some((side) => lines.some(([a, b]) => crosses(side, a, b))))
      return { name, of: "piece", how: "through" };
  }
  return null;
}
