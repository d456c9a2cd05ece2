import type { Vec3 } from "../../core/vector.js";
import { addScaled, distance, dot, scale, subtract } from "../../math/vector.js";
import { crosses } from "../../scene/crosses.js";
import type { Scene, ScenePolygon } from "../../scene/types.js";
import { isSet } from "../frame/coverage.js";
import { type Lens, wayThrough } from "../frame/project.js";
import type { Place } from "../frame/region.js";
import type { FrameSide } from "../frame/sides.js";
import { errorOf, readingAt, stopsOver } from "../light/reading.js";
import type { Plan } from "../plan.js";
import { ownerOf } from "../say/surfaces.js";

/** The light of a piece of the set where it ends in the picture. */
export interface EdgeRamp {
  readonly at: Place;
  readonly surface: string;
  /** Stops by which the light grows for each metre outwards along the piece, and how far that may be off. */
  readonly perMetre: number;
  readonly error: number;
  /** From there to the edge of the picture along the plane of the piece, m; null where that plane does not reach it. */
  readonly strip: number | null;
}

/** Rows or columns of the picture on which the set's edge is looked for, and looks along each. */
const ROWS = 9;
const LOOKS = 64;
const HALVINGS = 16;
/** The outer reading lies so far inside of the edge, the inner one so much farther in, in halves of the frame. */
const INSET = 0.01;
const BASES = [0.3, 0.15, 0.07] as const;
/** A strip that is narrower than this is none, in halves of the frame. */
const NARROW = 0.004;
/** Farther than any set reaches, m. */
const FAR = 1000;

type Side = Exclude<FrameSide, "within">;

/** A line of the picture from one of its sides to the other: 0 at the side, 2 at the far one. */
function lineFrom(side: Side, along: number): (depth: number) => Place {
  switch (side) {
    case "left":
      return (depth) => [depth - 1, along];
    case "right":
      return (depth) => [1 - depth, along];
    case "top":
      return (depth) => [along, 1 - depth];
    case "bottom":
      return (depth) => [along, depth - 1];
    default:
      return side satisfies never;
  }
}

/** Where a line of sight meets the plane of a piece; null where it does not, ahead of the lens. */
function onPlane({ camera }: Lens, way: Vec3, { vertices, normal }: ScenePolygon): Vec3 | null {
  const corner = vertices[0];
  if (corner === undefined) return null;
  const t = dot(subtract(corner, camera.at), normal) / dot(way, normal);
  return t > 0 && t < FAR ? addScaled(camera.at, way, t) : null;
}

/** The piece of the set that is seen at a place of the picture, people looked through; null for none. */
function pieceAt(lens: Lens, pieces: readonly ScenePolygon[], place: Place): ScenePolygon | null {
  const { at } = lens.camera;
  const way = wayThrough(lens, place);
  const end = addScaled(at, way, FAR);
  let found: ScenePolygon | null = null;
  let nearest = Number.POSITIVE_INFINITY;
  for (const piece of pieces) {
    const point = crosses(piece, at, end) ? onPlane(lens, way, piece) : null;
    const far = point === null ? nearest : distance(at, point);
    if (far < nearest) {
      nearest = far;
      found = piece;
    }
  }
  return found;
}

/** How deep from a side the set begins on a line of the picture; null where it is there at once, or nowhere. */
function edgeOn(lens: Lens, pieces: readonly ScenePolygon[], line: (depth: number) => Place): number | null {
  const isSeen = (depth: number): boolean => pieceAt(lens, pieces, line(depth)) !== null;
  let bare = 0;
  for (let i = 0; i < LOOKS; i++) {
    let good = (2 * (i + 0.5)) / LOOKS;
    if (!isSeen(good)) {
      bare = good;
      continue;
    }
    for (let step = 0; step < HALVINGS; step++) {
      const middle = (bare + good) / 2;
      if (isSeen(middle)) good = middle;
      else bare = middle;
    }
    return good > NARROW ? good : null;
  }
  return null;
}

/** The light of the piece at one place of its edge, from two readings on it; null where it gets none or is too narrow. */
function rampAt(
  plan: Plan,
  lens: Lens,
  pieces: readonly ScenePolygon[],
  line: (depth: number) => Place,
  depth: number,
): EdgeRamp | null {
  const edge = line(depth);
  const outerPlace = line(depth + INSET);
  const piece = pieceAt(lens, pieces, outerPlace);
  const base = BASES.find((step) => pieceAt(lens, pieces, line(depth + INSET + step)) === piece);
  if (piece === null || base === undefined) return null;
  const [start, outer, inner, end] = [edge, outerPlace, line(depth + INSET + base), line(0)].map((place) =>
    onPlane(lens, wayThrough(lens, place), piece),
  );
  if (start == null || outer == null || inner == null) return null;
  const towards = dot(subtract(lens.camera.at, outer), piece.normal);
  const facing = towards > 0 ? piece.normal : scale(piece.normal, -1);
  const readings = [outer, inner].map((at) => readingAt(plan, { at, facing, receptor: "disc" }));
  const [out, within] = readings;
  const grows = out === undefined || within === undefined ? null : stopsOver(out, within);
  const apart = distance(outer, inner);
  if (grows === null || !(apart > 0)) return null;
  return {
    at: edge,
    surface: ownerOf(piece.name),
    perMetre: grows / apart,
    error: readings.reduce((sum, reading) => sum + errorOf(reading), 0) / apart,
    strip: end == null ? null : distance(start, end),
  };
}

/** The surfaces that count as set, bodies left out. */
export function setPieces(scene: Scene): readonly ScenePolygon[] {
  return scene.polygons.filter(isSet);
}

/**
 * The light of the set beside a bare side of the picture, at up to two places: a quarter and three quarters along that
 * edge of the set. None where no flat piece ends there in the picture.
 */
export function edgeRamps(plan: Plan, lens: Lens, side: Side): readonly EdgeRamp[] {
  const pieces = setPieces(plan.scene);
  const rows = Array.from({ length: ROWS }, (_, i) => {
    const line = lineFrom(side, (2 * (i + 0.5)) / ROWS - 1);
    return { line, depth: edgeOn(lens, pieces, line) };
  }).flatMap(({ line, depth }) => (depth === null ? [] : [{ line, depth }]));
  // From the top down, as the places are told.
  const ordered = side === "left" || side === "right" ? rows.reverse() : rows;
  const chosen = new Set([Math.floor(ordered.length / 4), Math.floor((3 * ordered.length) / 4)]);
  return ordered
    .filter((_, i) => chosen.has(i))
    .flatMap(({ line, depth }) => rampAt(plan, lens, pieces, line, depth) ?? []);
}
