import type { Vec3 } from "../../core/vector.js";
import { areaTrue } from "../../math/area-true.js";
import { segmentsApart2 } from "../../math/segments.js";
import { emptyVector, type LightVector } from "../../physics/light-vector.js";
import { sourceOutline } from "../../physics/source-outline.js";
import { type SourceShape, sourceCentre } from "../../physics/source-shape.js";
import type { Station } from "../../scene/types.js";
import { type PreparedSource, preparedReading } from "../direct.js";
import { beamReceived } from "./beamed.js";
import { beforeSource } from "./before-source.js";
import { emptyScratch } from "./edge-lines.js";
import { clipToHalf, type HalfSpace } from "./half-space.js";
import { type HiddenWork, hideBy } from "./hidden.js";
import { received } from "./lambert.js";
import type { Occluder } from "./occluder.js";
import { addOutline } from "./outline.js";
import { emptyRegion, type Region } from "./region.js";
import { tangentAt } from "./touching.js";
import { addProjected, viewAlong } from "./view.js";

/** A source with the sphere round it, for asking what may stand before it. */
export interface ShadedSource {
  readonly prepared: PreparedSource;
  readonly centre: Vec3;
  /** Radius of a sphere round the source, m. */
  readonly bound: number;
  /** The corners of its outline for an eye before it, round ones widened so that the polygon has the round's area. */
  readonly outline: (eye: Vec3) => readonly Vec3[];
  /** What can hide it. */
  readonly occluders: readonly Occluder[];
  /** Buffers for cutting, written over by every reading. */
  readonly work: HiddenWork & { readonly holes: Region; readonly light: Region };
}

/** Makes a source ready to be hidden in part by the occluders. */
export function shadedSource(prepared: PreparedSource, occluders: readonly Occluder[]): ShadedSource {
  const { shape } = prepared;
  const centre = sourceCentre(shape);
  return {
    prepared,
    centre,
    bound: boundOf(shape, centre),
    outline: outlineOf(shape),
    occluders,
    work: {
      holes: emptyRegion(),
      light: emptyRegion(),
      hidden: emptyRegion(),
      part: emptyRegion(),
      next: emptyRegion(),
      boxes: new Float64Array(64),
      scratch: emptyScratch(),
    },
  };
}

function boundOf(shape: SourceShape, centre: Vec3): number {
  switch (shape.kind) {
    case "disc":
    case "sphere":
      return shape.radius;
    case "capsule":
      return shape.radius + distance(shape.from, centre);
    case "polygon":
      return shape.corners.reduce((most, corner) => Math.max(most, distance(corner, centre)), 0);
    default:
      return shape satisfies never;
  }
}

const distance = (a: Vec3, b: Vec3): number => {
  const x = a[0] - b[0];
  const y = a[1] - b[1];
  const z = a[2] - b[2];
  return Math.sqrt(x * x + y * y + z * z);
};

/** Corners of the outline of a round source. */
const OUTLINE_CORNERS = 24;
/** How much farther out they lie than the round. */
const WIDE = areaTrue(OUTLINE_CORNERS);

function outlineOf(shape: SourceShape): (eye: Vec3) => readonly Vec3[] {
  const wide =
    shape.kind === "disc" || shape.kind === "sphere" ? { ...shape, radius: shape.radius * WIDE } : shape;
  if (wide.kind !== "disc" && wide.kind !== "polygon")
    return (eye) => sourceOutline(wide, eye, OUTLINE_CORNERS);
  // Of a flat source it is the same for every eye before it.
  const { normal } = wide;
  const centre = sourceCentre(wide);
  const before: Vec3 = [centre[0] + normal[0], centre[1] + normal[1], centre[2] + normal[2]];
  const corners = sourceOutline(wide, before, OUTLINE_CORNERS);
  const offset = product(normal, centre);
  return (eye) => (product(normal, eye) > offset ? corners : []);
}

/** True for a sheet that has eye and source on one side of its plane, so that it stands between no two points of them. */
function isAside(o: Occluder, eye: Vec3, { centre, bound }: ShadedSource): boolean {
  if (o.kind !== "polygon") return false;
  const here = product(o.normal, eye) - o.offset;
  const there = product(o.normal, centre) - o.offset;
  return (here > 0 && there > bound) || (here < 0 && there < -bound);
}

/**
 * True for a limb or a post that all ways from an eye to a source pass by: they lie in spheres along the line between
 * the middles, whose radii grow from nothing to that of the source.
 */
function isPassedBy(o: Occluder, eye: Vec3, ahead: Vec3, far: number, { bound }: ShadedSource): boolean {
  if (o.kind !== "capsule") return false;
  const along =
    (o.centre[0] - eye[0]) * ahead[0] + (o.centre[1] - eye[1]) * ahead[1] + (o.centre[2] - eye[2]) * ahead[2];
  const end = Math.min(1, Math.max(0, (along + o.bound) / (far - bound)));
  const way = end * far;
  const last: Vec3 = [eye[0] + way * ahead[0], eye[1] + way * ahead[1], eye[2] + way * ahead[2]];
  const reach = o.radius + bound * end;
  return segmentsApart2(eye, last, o.from, o.to) > reach * reach;
}

/** True when an occluder may stand between the eye and the source: its sphere meets the cone to the source's. */
function mayHide(o: Occluder, eye: Vec3, ahead: Vec3, far: number, slope: number, widening: number): boolean {
  const x = o.centre[0] - eye[0];
  const y = o.centre[1] - eye[1];
  const z = o.centre[2] - eye[2];
  const along = x * ahead[0] + y * ahead[1] + z * ahead[2];
  if (along < -o.bound || along - o.bound > far) return false;
  const off = x * x + y * y + z * z - along * along;
  const wide = Math.max(0, along) * slope + o.bound * widening;
  return off <= wide * wide;
}

/**
 * Luminous exposure at a point per lumen-second of a source, with everything that hides part of it. The source's
 * outline less the outlines of what stands before it is summed by Lambert's formula; the share that is left multiplies
 * the exact unhidden value. Exact for flat hindrances before polygons; round outlines are polygons with enough corners
 * that the share is right to about half a per cent of the light; of a body through which the light's own plane goes the
 * part before it hides. A beam is summed over small parts of what is left and of the whole.
 */
export function shadedReading(
  source: ShadedSource,
  at: Vec3,
  facing: Vec3,
  receptor: Station["receptor"],
  scratch: LightVector = emptyVector(),
): number {
  const whole = preparedReading(
    source.prepared,
    at[0],
    at[1],
    at[2],
    facing[0],
    facing[1],
    facing[2],
    receptor,
    scratch,
  );
  return whole === 0 ? 0 : whole * seenShare(source, at, facing, receptor === "dome");
}

/** The share of what a source would give a receptor that reaches it past the occluders, 0 to 1. */
export function seenShare(source: ShadedSource, at: Vec3, facing: Vec3, dome: boolean): number {
  const far = distance(source.centre, at);
  // So near that the sphere round the source tells nothing of what may hide it: everything is looked at.
  if (!(far > 1.01 * source.bound)) {
    const ahead = nearDirection(source.prepared.shape, at);
    return ahead === null ? 1 : hiddenShare(source, at, facing, dome, ahead, source.occluders);
  }
  const ahead: Vec3 = [
    (source.centre[0] - at[0]) / far,
    (source.centre[1] - at[1]) / far,
    (source.centre[2] - at[2]) / far,
  ];
  const sine = source.bound / far;
  const cosine = Math.sqrt((1 - sine) * (1 + sine));
  const near: Occluder[] = [];
  for (const o of source.occluders) {
    if (isAside(o, at, source)) continue;
    if (!mayHide(o, at, ahead, far + source.bound, sine / cosine, 1 / cosine)) continue;
    if (!isPassedBy(o, at, ahead, far, source)) near.push(o);
  }
  if (near.length === 0) return 1;
  return hiddenShare(source, at, facing, dome, ahead, near);
}

/**
 * The direction that has all of a source in front of an eye close to it: straight at the plane of a flat one, at the
 * nearest point of a tube's axis. Null behind a flat source and inside a body, where there is no light to hide.
 */
function nearDirection(shape: SourceShape, at: Vec3): Vec3 | null {
  switch (shape.kind) {
    case "disc":
    case "polygon": {
      const n = shape.normal;
      return product(n, at) > product(n, sourceCentre(shape)) ? [-n[0], -n[1], -n[2]] : null;
    }
    case "sphere":
      return null;
    case "capsule": {
      const u: Vec3 = [shape.to[0] - shape.from[0], shape.to[1] - shape.from[1], shape.to[2] - shape.from[2]];
      const m: Vec3 = [at[0] - shape.from[0], at[1] - shape.from[1], at[2] - shape.from[2]];
      const uu = product(u, u);
      const t = uu > 0 ? Math.min(1, Math.max(0, product(m, u) / uu)) : 0;
      const d: Vec3 = [t * u[0] - m[0], t * u[1] - m[1], t * u[2] - m[2]];
      const size = Math.sqrt(product(d, d));
      return size > shape.radius ? [d[0] / size, d[1] / size, d[2] / size] : null;
    }
    default:
      return shape satisfies never;
  }
}

/** A share this small is what rounding leaves of a light that several things hide wholly between them. */
const ROUNDING = 1e-7;

function hiddenShare(
  source: ShadedSource,
  at: Vec3,
  facing: Vec3,
  dome: boolean,
  ahead: Vec3,
  near: readonly Occluder[],
): number {
  const view = viewAlong(at, ahead);
  const before = beforeSource(source.prepared.shape, source.centre, at, ahead);
  const bodies: HalfSpace[] = [];
  const { work } = source;
  const { holes } = work;
  const spread = source.bound / Math.max(source.bound, distance(source.centre, at));
  holes.count = 0;
  for (const o of near) {
    const touching = tangentAt(o, at);
    if (touching !== null) {
      bodies.push(touching);
      continue;
    }
    addOutline(view, o, before, spread, holes);
  }
  if (holes.count === 0 && bodies.length === 0) return 1;
  let corners = source.outline(at);
  if (!dome && product(facing, source.centre) - product(facing, at) < source.bound * WIDE)
    corners = clipToHalf(corners, { normal: facing, offset: product(facing, at) });
  work.light.count = 0;
  if (!addProjected(view, corners, work.light)) return 1;
  const { beam, shape } = source.prepared;
  const axis = shape.kind === "disc" || shape.kind === "polygon" ? shape.normal : null;
  const sum = (light: Region): number =>
    axis === null || beam.kind === "lambert"
      ? received(light, view, facing, dome)
      : beamReceived(light, view, facing, dome, axis, beam);
  const full = sum(work.light);
  if (!(full > 0)) return 1;
  let left = full;
  if (bodies.length > 0) {
    for (const half of bodies) corners = clipToHalf(corners, half);
    work.light.count = 0;
    if (!addProjected(view, corners, work.light)) return 0;
    left = sum(work.light);
  }
  if (hideBy(work.light, holes, work)) return 0;
  if (work.hidden.count > 0) left -= sum(work.hidden);
  const share = left / full;
  return share > ROUNDING ? Math.min(1, share) : 0;
}

const product = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
