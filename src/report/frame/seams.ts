import type { Vec3 } from "../../core/vector.js";
import { between, distance } from "../../math/vector.js";
import type { Scene, ScenePolygon } from "../../scene/types.js";
import { type Peek, peekOf } from "../geometry/sight.js";
import { ownerOf, sayOwner } from "../say/surfaces.js";
import { inFrameShare } from "./cut-line.js";
import { isClear } from "./look.js";
import { type Lens, lensOf, pointInPicture } from "./project.js";
import type { Place } from "./region.js";

/** A straight line of the set or the room that the picture shows. */
export interface Seam {
  /** The fold between two flats, the free edge of a piece, or a corner of the room. */
  readonly kind: "fold" | "edge" | "corner";
  /** `back and wing`, `roll`, `the back wall and the floor`. */
  readonly name: string;
  /** Of an edge: the side of its piece, in the picture. */
  readonly side: "left" | "right" | "top" | "bottom" | null;
  /** Its visible ends in the picture, the higher one first. */
  readonly from: Place;
  readonly to: Place;
}

type Line = Omit<Seam, "from" | "to"> & { readonly a: Vec3; readonly b: Vec3 };

/** Places along a line that are looked at, and steps by which the ends of what is seen are found. */
const LOOKS = 32;
const HALVINGS = 12;
/** Shorter lines than this are not worth a word, in halves of the frame. */
const SHORT = 0.01;
/** Two corners nearer than this are one, m. */
const SAME = 1e-6;

const edged: ReadonlySet<ScenePolygon["kind"]> = new Set(["flat", "paper", "panel", "card", "scrim"]);

/**
 * The folds and edges of the set and the corners of the room that the picture shows.
 *
 * @param only - The piece whose edges are looked for; all lines where it is left out.
 */
export function seamsOf(scene: Scene, only?: string): readonly Seam[] {
  const { camera } = scene;
  const lens = camera === null ? null : lensOf(camera);
  if (camera === null || lens === null) return [];
  const look = peekOf(scene);
  const seams = new Map<string, Seam>();
  for (const line of [...setLines(scene, lens), ...roomLines(scene)]) {
    if (only !== undefined && line.name !== only) continue;
    const ends = seenPart(lens, look, line);
    if (ends === null) continue;
    const key = `${line.kind} ${line.name} ${line.side}`;
    const before = seams.get(key);
    const all = before === undefined ? ends : [before.from, before.to, ...ends];
    const { kind, name, side } = line;
    seams.set(key, { kind, name, side, ...farthest(all) });
  }
  return [...seams.values()];
}

function farthest(places: readonly Place[]): Pick<Seam, "from" | "to"> {
  let best: readonly [Place, Place] = [places[0] as Place, places[0] as Place];
  let most = -1;
  for (const a of places) {
    for (const b of places) {
      const size = (a[0] - b[0]) * (a[0] - b[0]) + (a[1] - b[1]) * (a[1] - b[1]);
      const higher = a[1] > b[1] || (a[1] === b[1] && a[0] <= b[0]);
      if (size > most && higher) {
        most = size;
        best = [a, b];
      }
    }
  }
  return { from: best[0], to: best[1] };
}

/** The ends in the picture of what is seen of a line; null where that is nothing. */
function seenPart(lens: Lens, look: Peek, { a, b }: Line): readonly [Place, Place] | null {
  const part = inFrameShare(lens, a, b);
  if (part === null) return null;
  const eye = lens.camera.at;
  const [start, end] = part;
  const step = (end - start) / LOOKS;
  let first: number | null = null;
  let last = start;
  for (let i = 0; i < LOOKS; i++) {
    const t = start + (i + 0.5) * step;
    if (!isClear(look, eye, between(a, b, t))) continue;
    first ??= t;
    last = t;
  }
  if (first === null) return null;
  const low = edgeOf(look, eye, a, b, first, Math.max(start, first - step));
  const high = edgeOf(look, eye, a, b, last, Math.min(end, last + step));
  const from = pointInPicture(lens, between(a, b, low));
  const to = pointInPicture(lens, between(a, b, high));
  if (from === null || to === null) return null;
  const long = Math.max(Math.abs(from[0] - to[0]), Math.abs(from[1] - to[1]));
  return long > SHORT ? [from, to] : null;
}

/** Where a line from a to b stops being seen between a share of it where it is and one farther on. */
function edgeOf(look: Peek, eye: Vec3, a: Vec3, b: Vec3, seen: number, beyond: number): number {
  if (isClear(look, eye, between(a, b, beyond))) return beyond;
  let good = seen;
  let bad = beyond;
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (good + bad) / 2;
    if (isClear(look, eye, between(a, b, middle))) good = middle;
    else bad = middle;
  }
  return good;
}

/** The lines on which two flats are joined, with their ends in space, seen or not. */
export function foldsOf(
  scene: Scene,
): readonly { readonly name: string; readonly a: Vec3; readonly b: Vec3 }[] {
  const lens = scene.camera === null ? null : lensOf(scene.camera);
  return lens === null ? [] : setLines(scene, lens).filter(({ kind }) => kind === "fold");
}

/** The folds and the free edges of the pieces of the set. */
function setLines(scene: Scene, lens: Lens): readonly Line[] {
  const pieces = scene.polygons.filter(({ kind }) => edged.has(kind));
  const lines: Line[] = [];
  for (let index = 0; index < pieces.length; index++) {
    const piece = pieces[index] as ScenePolygon;
    const { vertices } = piece;
    for (let i = 0; i < vertices.length; i++) {
      const a = vertices[i] as Vec3;
      const b = vertices[i + 1 < vertices.length ? i + 1 : 0] as Vec3;
      const other = partnerOf(pieces, index, a, b);
      const partner = pieces[other];
      const name = ownerOf(piece.name);
      if (partner === undefined) lines.push({ kind: "edge", name, side: sideOf(lens, piece, a, b), a, b });
      else if (ownerOf(partner.name) !== name && other < index)
        lines.push({ kind: "fold", name: `${ownerOf(partner.name)} and ${name}`, side: null, a, b });
    }
  }
  return lines;
}

/** The first other piece that has an edge; -1 where there is none. */
function partnerOf(pieces: readonly ScenePolygon[], index: number, a: Vec3, b: Vec3): number {
  for (let j = 0; j < pieces.length; j++) {
    const { vertices } = pieces[j] as ScenePolygon;
    if (j !== index && hasCorner(vertices, a) && hasCorner(vertices, b)) return j;
  }
  return -1;
}

function hasCorner(vertices: readonly Vec3[], point: Vec3): boolean {
  for (const vertex of vertices) if (distance(vertex, point) < SAME) return true;
  return false;
}

/** The side of a piece on which an edge lies in the picture. */
function sideOf(lens: Lens, piece: ScenePolygon, a: Vec3, b: Vec3): Seam["side"] {
  const count = piece.vertices.length;
  const middle = piece.vertices.reduce<Vec3>(
    (sum, [x, y, z]) => [sum[0] + x / count, sum[1] + y / count, sum[2] + z / count],
    [0, 0, 0],
  );
  const here = pointInPicture(lens, between(a, b, 0.5));
  const centre = pointInPicture(lens, middle);
  const [from, to] = [pointInPicture(lens, a), pointInPicture(lens, b)];
  if (here === null || centre === null || from === null || to === null) return null;
  const { frameWidth, frameHeight } = lens.camera;
  const [x, y] = [here[0] - centre[0], here[1] - centre[1]];
  const upright = Math.abs(to[1] - from[1]) * frameHeight > Math.abs(to[0] - from[0]) * frameWidth;
  if (upright) return x < 0 ? "left" : "right";
  return y > 0 ? "top" : "bottom";
}

/** The twelve corners of the room. */
function roomLines({ room }: Scene): readonly Line[] {
  if (room === null) return [];
  const { left, right, front, back, height } = room;
  const lines: Line[] = [];
  const put = (one: string, other: string, a: Vec3, b: Vec3): void => {
    lines.push({ kind: "corner", name: `${sayOwner(one)} and ${sayOwner(other)}`, side: null, a, b });
  };
  for (const [flat, z] of [
    ["floor", 0],
    ["ceiling", height],
  ] as const) {
    put("wall left", flat, [left, front, z], [left, back, z]);
    put("wall right", flat, [right, front, z], [right, back, z]);
    put("wall back", flat, [left, back, z], [right, back, z]);
    put("wall front", flat, [left, front, z], [right, front, z]);
  }
  for (const [depth, y] of [
    ["wall back", back],
    ["wall front", front],
  ] as const) {
    put("wall left", depth, [left, y, 0], [left, y, height]);
    put("wall right", depth, [right, y, 0], [right, y, height]);
  }
  return lines;
}
