import type { Vec3 } from "../core/vector.js";
import { lambertVector } from "../math/lambert-polygon.js";
import { clipByPlane } from "../math/polygon.js";
import { findRoot } from "../math/roots.js";
import { addScaled, cross, dot, normalise, scale, subtract } from "../math/vector.js";
import { edgePlanes } from "./edge-angles.js";
import { clippedLightVector, discReading } from "./illuminance.js";
import { emptyVector } from "./light-vector.js";
import { sourceOutline } from "./source-outline.js";
import { lowestPoint, type SourceShape } from "./source-shape.js";

/** A straight edge between a source and a surface. The card that makes it covers the side away from `across`. */
export interface ShadowEdge {
  readonly source: SourceShape;
  /** A point on the edge. */
  readonly edgePoint: Vec3;
  /** Along the edge, any length. */
  readonly edgeDirection: Vec3;
  /** A point of the surface. */
  readonly surfacePoint: Vec3;
  /** Out of the surface, towards the source, any length. */
  readonly surfaceNormal: Vec3;
}

/** Where the edge of a shadow lies on a surface: the section square to the edge line through the axis. */
export interface EdgeSection {
  /** The place from which the edge stands before the middle of the source's angles. */
  readonly middle: Vec3;
  /** Unit vector in the surface, square to the shadow's edge, from dark to light. */
  readonly across: Vec3;
  /** Unit vector out of the surface. */
  readonly normal: Vec3;
  /** Signed distances from `middle` along `across` at which light begins and is full, in metres. */
  readonly dark: number;
  readonly light: number;
}

/**
 * The section of a shadow's edge on a flat surface, exact for every shape, distance and tilt. Undefined where the
 * penumbra has no end on the surface, or there is none.
 */
export function edgeSection(edge: ShadowEdge): EdgeSection | undefined {
  const planes = edgePlanes(edge.source, edge.edgePoint, edge.edgeDirection);
  const normal = normalise(edge.surfaceNormal);
  if (planes === undefined || normal === undefined) return undefined;
  const { along, axis, across, low, high } = planes;
  const ray = (angle: number): Vec3 => addScaled(scale(axis, Math.cos(angle)), across, Math.sin(angle));
  const height = dot(subtract(edge.surfacePoint, edge.edgePoint), normal);
  const sightLine = ray((low + high) / 2);
  const slope = dot(sightLine, normal);
  if (!(height < 0) || !(slope < -1e-9)) return undefined;
  const middle = addScaled(edge.edgePoint, sightLine, height / slope);
  // The shadow's edge on the surface is where the middle plane cuts it; the width is square to that line.
  const line = normalise(cross(cross(along, sightLine), normal));
  if (line === undefined) return undefined;
  const side = cross(normal, line);
  const direction = dot(side, across) >= 0 ? side : scale(side, -1);
  const reach = (angle: number): number | undefined => {
    // Only a surface that both rays meet on the far side of the edge has an end of the penumbra there.
    if (!(dot(ray(angle), normal) < -1e-9)) return undefined;
    const n = cross(along, ray(angle));
    const speed = dot(direction, n);
    const distance = dot(subtract(edge.edgePoint, middle), n);
    return Math.abs(speed) > 1e-12 ? distance / speed : undefined;
  };
  const a = reach(low);
  const b = reach(high);
  if (a === undefined || b === undefined) return undefined;
  return { middle, across: direction, normal, dark: Math.min(a, b), light: Math.max(a, b) };
}

/** Full width (m) of a shadow's edge on a surface, from no light to full light. */
export function edgeFullWidth(edge: ShadowEdge): number | undefined {
  const section = edgeSection(edge);
  return section === undefined ? undefined : section.light - section.dark;
}

/** Corners for the outlines of round sources that both the card and the surface's horizon cut. */
const OUTLINE = 720;

/**
 * Share (0 to 1) of a source's light that reaches a point of the surface past the edge: illuminance with the card over
 * illuminance without. Exact, except for round sources that the surface's horizon cuts as well, whose outline is then
 * a 720-gon (within 0.002 %). Undefined where the source gives the point nothing.
 */
export function edgeLightShare(edge: ShadowEdge, point: Vec3): number | undefined {
  const planes = edgePlanes(edge.source, edge.edgePoint, edge.edgeDirection);
  const n = normalise(edge.surfaceNormal);
  if (planes === undefined || n === undefined) return undefined;
  // Sight lines from the point pass the card on the side to which the light comes: opposite to `across`.
  const m = normalise(cross(planes.along, subtract(point, edge.edgePoint)));
  if (m === undefined) return undefined;
  return shareInPlane(edge.source, point, n, dot(m, planes.across) >= 0 ? m : scale(m, -1));
}

function shareInPlane(source: SourceShape, point: Vec3, n: Vec3, m: Vec3): number | undefined {
  const out = emptyVector();
  const [x, y, z] = point;
  const whole = discReading(source, x, y, z, n[0], n[1], n[2], out);
  if (!(whole > 0)) return undefined;
  let part: number;
  if (lowestPoint(source, n) >= dot(n, point)) {
    clippedLightVector(source, x, y, z, m[0], m[1], m[2], out);
    part = out.x * n[0] + out.y * n[1] + out.z * n[2];
  } else {
    const lit = clipByPlane(sourceOutline(source, point, OUTLINE), n, dot(n, point));
    const seen = clipByPlane(lit, m, dot(m, point));
    part = -dot(lambertVector(seen, point), n);
  }
  return Math.min(1, Math.max(0, part / whole));
}

/**
 * Width (m) on the surface between two shares of the light, 0.1 and 0.9 unless given: the exact profile at any
 * distance. Undefined where the edge has no end on the surface.
 */
export function edgeWidthBetween(edge: ShadowEdge, low = 0.1, high = 0.9): number | undefined {
  const section = edgeSection(edge);
  if (section === undefined) return undefined;
  const place = (share: number): number | undefined =>
    findRoot(
      (s) => (edgeLightShare(edge, addScaled(section.middle, section.across, s)) ?? 0) - share,
      section.dark,
      section.light,
      1e-12 * (section.light - section.dark),
    );
  const a = place(low);
  const b = place(high);
  return a === undefined || b === undefined ? undefined : Math.abs(b - a);
}
