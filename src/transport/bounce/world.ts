import type { Vec3 } from "../../core/vector.js";
import { cross, dot, frameAround, length, normalise, subtract } from "../../math/vector.js";
import type { Body, Scene, ScenePolygon } from "../../scene/types.js";
import { type BoxTree, boxTree } from "./box-tree.js";

/** Kinds of things a ray can meet. */
export const POLYGON = 0;
export const ELLIPSOID = 1;
export const CAPSULE = 2;

/**
 * Numbers of one thing in `World.data`.
 * - polygon: unit normal (0), its offset (3), a corner of the rectangle round it (4), unit vectors along the
 *   rectangle's sides (7, 10), their lengths (13, 14).
 * - ellipsoid: centre (0), each semi-axis over its squared length (3, 6, 9), the semi-axes (12, 15, 18).
 * - capsule: centre of one end (0), unit vector to the other (3), length between the centres (6), radius (7), unit
 *   vectors across (8, 11).
 */
export const STRIDE = 21;

/** A scene as rays meet it: polygons first, then bodies, each at its index in the scene. */
export interface World {
  readonly count: number;
  readonly polygons: number;
  readonly kind: Uint8Array;
  readonly data: Float64Array;
  /** Where the edges of a polygon that is no rectangle begin in `edges`, and how many there are; else 0. */
  readonly edgeStart: Int32Array;
  readonly edgeCount: Int32Array;
  /** Four numbers an edge: unit vector out of it in the polygon's plane, and its offset. */
  readonly edges: Float64Array;
  /** Least and greatest x, y, z of the room, in pairs; null without one. */
  readonly room: Float64Array | null;
  /** The room's surfaces by the wall of the box they lie in (x low, x high, y low ...), and all of them. */
  readonly shell: readonly (readonly number[])[];
  readonly shellAll: readonly number[];
  /** 1 for what has an area; the rest is not there. */
  readonly present: Uint8Array;
  /** 1 for what is part of the room's own surfaces. */
  readonly inShell: Uint8Array;
  /** 1 for a surface of the room that fills its wall. */
  readonly whole: Uint8Array;
  /** 1 for the sides of boxes, whose inside is closed. */
  readonly closed: Uint8Array;
  /** Least and greatest x, y, z of each thing, in pairs. */
  readonly boxes: Float64Array;
  /** Everything but the room's surfaces, for the search along a ray. */
  readonly tree: BoxTree;
}

/** Makes a scene ready for rays. */
export function worldOf(scene: Scene): World {
  const polygons = scene.polygons.length;
  const count = polygons + scene.bodies.length;
  const kind = new Uint8Array(count);
  const data = new Float64Array(count * STRIDE);
  const edgeStart = new Int32Array(count);
  const edgeCount = new Int32Array(count);
  const present = new Uint8Array(count);
  const inShell = new Uint8Array(count);
  const whole = new Uint8Array(count);
  const closed = new Uint8Array(count);
  const edges: number[] = [];
  const boxes = new Float64Array(count * 6);
  const free: number[] = [];
  const room = scene.room === null ? null : roomBox(scene.room);
  const shell: number[][] = [[], [], [], [], [], []];
  const shellAll: number[] = [];
  for (let i = 0; i < polygons; i++) {
    const polygon = scene.polygons[i] as ScenePolygon;
    if (!writePolygon(data, i * STRIDE, polygon)) continue;
    present[i] = 1;
    if (!isRectangle(data, i * STRIDE, polygon.vertices)) {
      edgeStart[i] = edges.length;
      edgeCount[i] = writeEdges(edges, polygon);
    }
    boundPoints(boxes, i * 6, polygon.vertices);
    closed[i] = polygon.kind === "box" ? 1 : 0;
    const wall = room === null ? -1 : wallOf(polygon, room);
    if (wall >= 0) {
      inShell[i] = 1;
      whole[i] = fillsWall(data, i * STRIDE, wall, room) ? 1 : 0;
      shell[wall]?.push(i);
      shellAll.push(i);
    } else free.push(i);
  }
  for (let i = polygons; i < count; i++) {
    const body = scene.bodies[i - polygons] as Body;
    if (!hasSize(body)) continue;
    present[i] = 1;
    kind[i] = writeBody(data, i * STRIDE, body, boxes, i * 6);
    free.push(i);
  }
  return {
    count,
    polygons,
    kind,
    data,
    edgeStart,
    edgeCount,
    edges: Float64Array.from(edges),
    present,
    room,
    shell,
    shellAll,
    inShell,
    whole,
    closed,
    boxes,
    tree: boxTree(boxes, free),
  };
}

/** Least and greatest x, y, z of a room, in pairs. */
export function roomBox(room: NonNullable<Scene["room"]>): Float64Array {
  return Float64Array.of(room.left, room.right, room.front, room.back, 0, room.height);
}

/** The wall of the room's box that one of its surfaces lies in; -1 for anything else. */
function wallOf(polygon: ScenePolygon, room: Float64Array): number {
  if (polygon.kind !== "floor" && polygon.kind !== "ceiling" && polygon.kind !== "wall") return -1;
  for (let wall = 0; wall < 6; wall++) {
    const axis = (wall >> 1) as 0 | 1 | 2;
    const sign = wall % 2 === 0 ? 1 : -1;
    if (polygon.normal[axis] * sign < 1 - 1e-9) continue;
    if (polygon.vertices.every((p) => Math.abs(p[axis] - (room[wall] as number)) < 1e-9)) return wall;
  }
  return -1;
}

function fillsWall(data: Float64Array, at: number, wall: number, room: Float64Array | null): boolean {
  if (room === null) return false;
  let area = 1;
  for (let axis = 0; axis < 3; axis++) {
    if (axis !== wall >> 1) area *= (room[2 * axis + 1] as number) - (room[2 * axis] as number);
  }
  return Math.abs((data[at + 13] as number) * (data[at + 14] as number) - area) < 1e-9 * area;
}

function put(data: Float64Array, at: number, v: Vec3): void {
  data[at] = v[0];
  data[at + 1] = v[1];
  data[at + 2] = v[2];
}

/** Writes a polygon's plane and the rectangle round it; false for one without an area. */
function writePolygon(data: Float64Array, at: number, polygon: ScenePolygon): boolean {
  const { vertices, normal } = polygon;
  const first = vertices[0];
  const second = vertices[1];
  if (first === undefined || second === undefined || vertices.length < 3) return false;
  const u = normalise(subtract(second, first));
  if (u === undefined) return false;
  const v = cross(normal, u);
  let u0 = Number.POSITIVE_INFINITY;
  let u1 = Number.NEGATIVE_INFINITY;
  let v0 = Number.POSITIVE_INFINITY;
  let v1 = Number.NEGATIVE_INFINITY;
  for (const p of vertices) {
    const a = dot(subtract(p, first), u);
    const b = dot(subtract(p, first), v);
    u0 = Math.min(u0, a);
    u1 = Math.max(u1, a);
    v0 = Math.min(v0, b);
    v1 = Math.max(v1, b);
  }
  if (!(u1 > u0 && v1 > v0)) return false;
  put(data, at, normal);
  data[at + 3] = dot(normal, first);
  put(data, at + 4, [
    first[0] + u0 * u[0] + v0 * v[0],
    first[1] + u0 * u[1] + v0 * v[1],
    first[2] + u0 * u[2] + v0 * v[2],
  ]);
  put(data, at + 7, u);
  put(data, at + 10, v);
  data[at + 13] = u1 - u0;
  data[at + 14] = v1 - v0;
  return true;
}

function isRectangle(data: Float64Array, at: number, vertices: readonly Vec3[]): boolean {
  if (vertices.length !== 4) return false;
  const width = data[at + 13] as number;
  const height = data[at + 14] as number;
  const slack = 1e-9 * (width + height);
  const origin: Vec3 = [data[at + 4] as number, data[at + 5] as number, data[at + 6] as number];
  const u: Vec3 = [data[at + 7] as number, data[at + 8] as number, data[at + 9] as number];
  const v: Vec3 = [data[at + 10] as number, data[at + 11] as number, data[at + 12] as number];
  for (const p of vertices) {
    const a = dot(subtract(p, origin), u);
    const b = dot(subtract(p, origin), v);
    if (!(Math.abs(a) < slack || Math.abs(a - width) < slack)) return false;
    if (!(Math.abs(b) < slack || Math.abs(b - height) < slack)) return false;
  }
  return true;
}

function writeEdges(edges: number[], polygon: ScenePolygon): number {
  const { vertices, normal } = polygon;
  for (let i = 0; i < vertices.length; i++) {
    const corner = vertices[i] as Vec3;
    const next = vertices[(i + 1) % vertices.length] as Vec3;
    const out = normalise(cross(subtract(next, corner), normal));
    if (out === undefined) edges.push(0, 0, 0, 0);
    else edges.push(out[0], out[1], out[2], dot(out, corner));
  }
  return vertices.length;
}

function boundPoints(boxes: Float64Array, at: number, points: readonly Vec3[]): void {
  for (let axis = 0; axis < 3; axis++) {
    let low = Number.POSITIVE_INFINITY;
    let high = Number.NEGATIVE_INFINITY;
    for (const p of points) {
      low = Math.min(low, p[axis] as number);
      high = Math.max(high, p[axis] as number);
    }
    boxes[at + 2 * axis] = low;
    boxes[at + 2 * axis + 1] = high;
  }
}

function hasSize(body: Body): boolean {
  return body.kind === "ellipsoid" ? body.axes.every((axis) => length(axis) > 0) : body.radius > 0;
}

/** Writes a body and the box round it; gives its kind. A sphere is an ellipsoid. */
function writeBody(data: Float64Array, at: number, body: Body, boxes: Float64Array, box: number): number {
  if (body.kind === "capsule") {
    const { from, to, radius } = body;
    const span = subtract(to, from);
    const axis = normalise(span) ?? ([0, 0, 1] as const);
    const [e1, e2] = frameAround(axis);
    put(data, at, from);
    put(data, at + 3, axis);
    data[at + 6] = length(span);
    data[at + 7] = radius;
    put(data, at + 8, e1);
    put(data, at + 11, e2);
    for (let k = 0; k < 3; k++) {
      boxes[box + 2 * k] = Math.min(from[k] as number, to[k] as number) - radius;
      boxes[box + 2 * k + 1] = Math.max(from[k] as number, to[k] as number) + radius;
    }
    return CAPSULE;
  }
  const r = body.kind === "sphere" ? body.radius : 0;
  const axes =
    body.kind === "sphere"
      ? ([
          [r, 0, 0],
          [0, r, 0],
          [0, 0, r],
        ] as const)
      : body.axes;
  put(data, at, body.centre);
  for (let k = 0; k < 3; k++) {
    const axis = axes[k] as Vec3;
    const size = dot(axis, axis);
    put(data, at + 3 + 3 * k, [axis[0] / size, axis[1] / size, axis[2] / size]);
    put(data, at + 12 + 3 * k, axis);
  }
  for (let k = 0; k < 3; k++) {
    const a = axes[0][k] as number;
    const b = axes[1][k] as number;
    const c = axes[2][k] as number;
    const half = Math.sqrt(a * a + b * b + c * c);
    boxes[box + 2 * k] = (body.centre[k] as number) - half;
    boxes[box + 2 * k + 1] = (body.centre[k] as number) + half;
  }
  return ELLIPSOID;
}
