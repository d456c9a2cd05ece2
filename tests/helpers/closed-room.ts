import type { Vec3 } from "../../src/core/vector.js";
import { cross, subtract } from "../../src/math/vector.js";
import type { Scene, ScenePolygon, Source, Station } from "../../src/scene/types.js";

/** Reflectances of a room's surfaces in the order of `faces`. */
export type Six = readonly [
  floor: number,
  ceiling: number,
  left: number,
  right: number,
  back: number,
  front: number,
];

/** One surface of a room: a corner and its two edges, which go round the inside of the room. */
interface Face {
  readonly name: string;
  readonly kind: ScenePolygon["kind"];
  readonly corner: Vec3;
  readonly u: Vec3;
  readonly v: Vec3;
}

/** The six surfaces of a room with the mark in its middle. */
export function faces(width: number, depth: number, height: number): readonly Face[] {
  const [x, y] = [width / 2, depth / 2];
  const face = (name: string, kind: ScenePolygon["kind"], corner: Vec3, u: Vec3, v: Vec3): Face => {
    return { name, kind, corner, u, v };
  };
  return [
    face("floor", "floor", [-x, -y, 0], [width, 0, 0], [0, depth, 0]),
    face("ceiling", "ceiling", [-x, -y, height], [0, depth, 0], [width, 0, 0]),
    face("wall left", "wall", [-x, -y, 0], [0, depth, 0], [0, 0, height]),
    face("wall right", "wall", [x, -y, 0], [0, 0, height], [0, depth, 0]),
    face("wall back", "wall", [-x, y, 0], [width, 0, 0], [0, 0, height]),
    face("wall front", "wall", [-x, -y, 0], [0, 0, height], [width, 0, 0]),
  ];
}

const plus = (a: Vec3, u: Vec3, s: number, v: Vec3, t: number): Vec3 => [
  a[0] + s * u[0] + t * v[0],
  a[1] + s * u[1] + t * v[1],
  a[2] + s * u[2] + t * v[2],
];
const unit = (v: Vec3): Vec3 => {
  const size = Math.sqrt(v[0] * v[0] + v[1] * v[1] + v[2] * v[2]);
  return [v[0] / size, v[1] / size, v[2] / size];
};

/** A rectangle from a corner along two edges; its front is where the edges go round by the right hand. */
export function sheet(
  name: string,
  kind: ScenePolygon["kind"],
  corner: Vec3,
  u: Vec3,
  v: Vec3,
  front: number,
  back: number,
): ScenePolygon {
  const vertices = [
    corner,
    plus(corner, u, 1, v, 0),
    plus(corner, u, 1, v, 1),
    plus(corner, u, 0, v, 1),
  ] as const;
  return {
    name,
    kind,
    vertices,
    normal: unit(cross(subtract(vertices[1], corner), subtract(vertices[2], vertices[1]))),
    frontReflectance: front,
    backReflectance: back,
  };
}

/** A flat receptor. */
export function discAt(name: string, at: Vec3, facing: Vec3): Station {
  return { name, subject: null, at, facing, receptor: "disc", looks: "", natural: true };
}

/** Receptors on the middles of n by n parts of a rectangle, a hair before it. */
export function grid(
  { name, corner, u, v }: Pick<Face, "name" | "corner" | "u" | "v">,
  n: number,
): readonly Station[] {
  const out = unit(cross(u, v));
  return Array.from({ length: n * n }, (_, k) => {
    const at = plus(corner, u, ((k % n) + 0.5) / n, v, (Math.floor(k / n) + 0.5) / n);
    return discAt(`${name}.${k}`, plus(at, out, 1e-9, out, 0), out);
  });
}

/** A scene of surfaces, lights and receptors, with nothing else in it. */
export function bareScene(
  polygons: readonly ScenePolygon[],
  sources: readonly Source[],
  stations: readonly Station[],
  room: Scene["room"] = null,
): Scene {
  return {
    room,
    polygons,
    bodies: [],
    subjects: [],
    sources,
    stations,
    camera: null,
    meter: { flat: 250, dome: 340, reflected: 12.5 },
    key: null,
    landmarks: new Map(),
    assumed: [],
  };
}

/** An empty closed room with lights and receptors in it. */
export function closedRoom(
  [width, depth, height]: Vec3,
  reflectances: Six,
  sources: readonly Source[],
  stations: readonly Station[],
): Scene {
  const polygons = faces(width, depth, height).map(({ name, kind, corner, u, v }, i) =>
    sheet(name, kind, corner, u, v, reflectances[i] as number, 0),
  );
  const room = {
    width,
    depth,
    height,
    left: -width / 2,
    right: width / 2,
    front: -depth / 2,
    back: depth / 2,
    ambient: 0,
  };
  return bareScene(polygons, sources, stations, room);
}
