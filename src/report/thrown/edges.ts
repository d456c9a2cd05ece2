import type { Vec3 } from "../../core/vector.js";
import { addScaled, cross, distance, dot, length, normalise, scale, subtract } from "../../math/vector.js";
import { edgeFullWidth, edgeSection, edgeWidthBetween, type ShadowEdge } from "../../physics/edge-share.js";
import { sourceBeam, sourceShape } from "../../scene/lamp/optics.js";
import type { CapsuleOccluder, EllipsoidOccluder, PolygonOccluder } from "../../transport/hiding/occluder.js";
import { fromUnit, toUnit } from "./cone.js";
import type { Ground } from "./plane.js";
import type { PointLight, Thing } from "./shade.js";

/** Where a ray from the light through a place of an outline touches a thing, and the edge that makes the outline there. */
export interface Touch {
  readonly at: Vec3;
  /** Along the edge. */
  readonly along: Vec3;
  /** How far the ray passes the thing, as a share of its size: 0 where it touches. */
  readonly off: number;
}

function touchRound(body: EllipsoidOccluder, eye: Vec3, place: Vec3): Touch | null {
  const from = toUnit(body, eye);
  const way = normalise(subtract(toUnit(body, place), from));
  if (way === undefined) return null;
  const foot = addScaled(from, way, -dot(from, way));
  const size = length(foot);
  if (!(size > 0.5)) return null;
  // Out of the body where it is touched: the gradient of the ellipsoid at that place.
  const [a, b, c] = scale(foot, 1 / size);
  const out = addScaled(addScaled(scale(body.inverse[0], a), body.inverse[1], b), body.inverse[2], c);
  const along = cross(subtract(place, eye), out);
  return { at: fromUnit(body, foot), along, off: Math.abs(size - 1) };
}

function touchTube({ from, to, radius }: CapsuleOccluder, eye: Vec3, place: Vec3): Touch | null {
  const axis = subtract(to, from);
  const way = normalise(subtract(place, eye));
  if (way === undefined) return null;
  // The place of the axis that is nearest to the ray.
  const m = subtract(from, eye);
  const aa = dot(axis, axis);
  const aw = dot(axis, way);
  const square = aa - aw * aw;
  const t = square > 1e-15 ? Math.min(1, Math.max(0, (aw * dot(m, way) - dot(m, axis)) / square)) : 0;
  const near = addScaled(from, axis, t);
  const foot = addScaled(eye, way, dot(subtract(near, eye), way));
  const out = subtract(foot, near);
  const size = length(out);
  if (!(size > 0)) return null;
  return { at: foot, along: cross(way, out), off: Math.abs(size / radius - 1) };
}

function touchFlat(thing: PolygonOccluder, eye: Vec3, place: Vec3): Touch | null {
  const way = subtract(place, eye);
  const t = (thing.offset - dot(thing.normal, eye)) / dot(thing.normal, way);
  if (!(t > 0 && t < 1)) return null;
  const at = addScaled(eye, way, t);
  let best: Touch | null = null;
  thing.edges.forEach(({ out, offset }, i) => {
    const off = Math.abs(dot(out, at) - offset) / thing.bound;
    const a = thing.corners[i] as Vec3;
    const b = thing.corners[(i + 1) % thing.corners.length] as Vec3;
    if (best === null || off < best.off) best = { at, along: subtract(b, a), off };
  });
  return best;
}

function touch({ solid }: Thing, eye: Vec3, place: Vec3): Touch | null {
  if (solid.kind === "ellipsoid") return touchRound(solid, eye, place);
  return solid.kind === "capsule" ? touchTube(solid, eye, place) : touchFlat(solid, eye, place);
}

/** Further from the thing than this share of its size a place of the outline was made by something else. */
const CLOSE = 2e-4;

/** The edge of a thing that makes an outline at a place; null where none of them does, as where a piece of set ends. */
export function edgeBehind(things: readonly Thing[], eye: Vec3, place: Vec3): Touch | null {
  let best: Touch | null = null;
  for (const thing of things) {
    const found = touch(thing, eye, place);
    if (found === null || distance(eye, found.at) >= distance(eye, place) - 1e-6) continue;
    if (best === null || found.off < best.off) best = found;
  }
  return best !== null && best.off < CLOSE ? best : null;
}

/** The edge of a shadow at one place of its outline. */
export interface EdgeAt {
  readonly at: Vec3;
  /** Unit vector in the surface, square to the outline. */
  readonly across: Vec3;
  /** From the light's centre to the edge that makes it, and from there to the surface, m. */
  readonly away: number;
  readonly gap: number;
  /** Full width on the surface, m. */
  readonly full: number;
  readonly edge: ShadowEdge;
}

/** Every place of an outline with the width of its edge there, where something of `things` makes it. */
export function edgesAlong(
  light: PointLight,
  ground: Ground,
  things: readonly Thing[],
  places: readonly Vec3[],
): readonly EdgeAt[] {
  const source = sourceShape(light.source);
  const beam = sourceBeam(light.source);
  return places.flatMap((at): EdgeAt[] => {
    const found = edgeBehind(things, light.at, at);
    if (found === null) return [];
    const edge: ShadowEdge = {
      source,
      edgePoint: found.at,
      edgeDirection: found.along,
      surfacePoint: at,
      surfaceNormal: ground.normal,
      beam,
    };
    const section = edgeSection(edge);
    const full = section === undefined ? undefined : edgeFullWidth(edge);
    if (section === undefined || full === undefined) return [];
    const away = distance(light.at, found.at);
    return [{ at, across: section.across, away, gap: distance(found.at, at), full, edge }];
  });
}

/** The width from 10 to 90 % of the light at a place of an outline, m; null where the edge has no end there. */
export function narrowWidth({ edge }: EdgeAt): number | null {
  return edgeWidthBetween(edge) ?? null;
}
