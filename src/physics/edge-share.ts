import type { Vec3 } from "../core/vector.js";
import { lambertVector } from "../math/lambert-polygon.js";
import { clipByPlane } from "../math/polygon.js";
import { findRoot } from "../math/roots.js";
import { addScaled, cross, dot, normalise, scale, subtract } from "../math/vector.js";
import type { Beam } from "./beam.js";
import { edgePlanes } from "./edge-angles.js";
import { type PartedLight, partedLight } from "./edge-beam.js";
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
  /** How a flat source's luminance falls off its axis; the same in every direction if not given. */
  readonly beam?: Beam;
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

/**
 * Full width (m) of a shadow's edge on a surface, from no light to full light. Behind a grid only the part of the source
 * that shines on the place counts. Undefined where the edge has no end on the surface, or no light.
 */
export function edgeFullWidth(edge: ShadowEdge): number | undefined {
  const section = edgeSection(edge);
  if (section === undefined) return undefined;
  if (edge.beam?.kind !== "grid") return section.light - section.dark;
  const at = (s: number): PartedLight | undefined =>
    partsAt(edge, addScaled(section.middle, section.across, s));
  const border = (side: "part" | "hidden", from: number, to: number): number | undefined => {
    const place = borderOf((s) => (at(s)?.[side]() ?? 0) > 0, from, to);
    // Where the beam itself ends first, the card is not what makes the edge.
    return place !== undefined && (at(place)?.whole() ?? 0) > 0 ? place : undefined;
  };
  const dark = border("part", section.dark, section.light);
  const light = border("hidden", section.light, section.dark);
  return dark === undefined || light === undefined ? undefined : Math.abs(light - dark);
}

/** The last place on the way from one place to another, by halving, up to which something does not hold. */
function borderOf(holds: (s: number) => boolean, from: number, to: number): number | undefined {
  const steps = 16;
  let no = from;
  for (let i = 1; i <= steps; i++) {
    let yes = from + ((to - from) * i) / steps;
    if (!holds(yes)) {
      no = yes;
      continue;
    }
    for (let turn = 0; turn < 32; turn++) {
      const middle = (no + yes) / 2;
      if (holds(middle)) yes = middle;
      else no = middle;
    }
    return no;
  }
  return undefined;
}

/** Corners for the outlines of round sources that both the card and the surface's horizon cut. */
const OUTLINE = 720;

/**
 * Share (0 to 1) of a source's light that reaches a point of the surface past the edge: illuminance with the card over
 * illuminance without. Exact for sources of one luminance, except for round ones that the surface's horizon cuts as
 * well, whose outline is then a 720-gon (within 0.002 %); a beam is summed as `openingReading` says. Undefined where the
 * source gives the point nothing.
 */
export function edgeLightShare(edge: ShadowEdge, point: Vec3): number | undefined {
  const parts = partsAt(edge, point);
  const whole = parts?.whole() ?? 0;
  return parts !== undefined && whole > 0 ? Math.min(1, Math.max(0, parts.part() / whole)) : undefined;
}

function partsAt(edge: ShadowEdge, point: Vec3): PartedLight | undefined {
  const { source, beam } = edge;
  const planes = edgePlanes(source, edge.edgePoint, edge.edgeDirection);
  const n = normalise(edge.surfaceNormal);
  if (planes === undefined || n === undefined) return undefined;
  // Sight lines from the point pass the card on the side to which the light comes: opposite to `across`.
  const side = normalise(cross(planes.along, subtract(point, edge.edgePoint)));
  if (side === undefined) return undefined;
  const m = dot(side, planes.across) >= 0 ? side : scale(side, -1);
  return beam !== undefined &&
    beam.kind !== "lambert" &&
    (source.kind === "disc" || source.kind === "polygon")
    ? partedLight(source, beam, point, n, m)
    : partsOfLambert(source, point, n, m);
}

function partsOfLambert(source: SourceShape, point: Vec3, n: Vec3, m: Vec3): PartedLight {
  const out = emptyVector();
  const [x, y, z] = point;
  const whole = (): number => discReading(source, x, y, z, n[0], n[1], n[2], out);
  const part = (): number => {
    if (lowestPoint(source, n) >= dot(n, point)) {
      clippedLightVector(source, x, y, z, m[0], m[1], m[2], out);
      return out.x * n[0] + out.y * n[1] + out.z * n[2];
    }
    const lit = clipByPlane(sourceOutline(source, point, OUTLINE), n, dot(n, point));
    return -dot(lambertVector(clipByPlane(lit, m, dot(m, point)), point), n);
  };
  return { whole, part, hidden: () => whole() - part() };
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
