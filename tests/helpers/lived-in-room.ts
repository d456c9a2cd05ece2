import type { Vec3 } from "../../src/core/vector.js";
import type { Body, Scene, ScenePolygon, Source, Station } from "../../src/scene/types.js";
import { sceneOf } from "./worked.js";

/** The set of a small studio: a room, two hinged flats, a card, a person on a mark off the middle. */
export const livedIn = (walls: number, ceiling: number, floor: number): string => `
room {
  size: 5 x 7 x 3 m
  walls { reflectance: ${walls} % }
  ceiling { reflectance: ${ceiling} % }
  floor { reflectance: ${floor} % }
}
set {
  flat back { size: 1.2 x 2.4 m, at: offset(behind: 1 m), front: 85 %, back: 30 % }
  flat side { size: 1.2 x 2.4 m, hinge: left_edge(back), opening: 110 deg, front: 85 %, back: 30 % }
  card glow { size: 60 x 90 cm, at: (0.9 m, -0.4 m, 1.2 m), faces: face, front: 80 % }
}
subject { height: 1.7 m }`;

/** A studio with a key and a fill. */
export function livedInRoom(walls = 50, ceiling = 80, floor = 25): Scene {
  return sceneOf(`${livedIn(walls, ceiling, floor)}
light key { role: key, shape: disc(20 cm), output: 900 lm s, distance: 2.2 m, bearing: left(40 deg), height: 2.2 m }
light fill { shape: disc(60 cm), output: 300 lm s, distance: 2 m, bearing: right(50 deg), height: 1.7 m }`);
}

const flip = ([x, y, z]: Vec3): Vec3 => [-x + 0, y, z];

const flipPolygon = (polygon: ScenePolygon): ScenePolygon => ({
  ...polygon,
  vertices: polygon.vertices.map(flip).reverse(),
  normal: flip(polygon.normal),
});

function flipBody(body: Body): Body {
  if (body.kind === "capsule") return { ...body, from: flip(body.from), to: flip(body.to) };
  if (body.kind === "sphere") return { ...body, centre: flip(body.centre) };
  const [a, b, c] = body.axes;
  return { ...body, centre: flip(body.centre), axes: [flip(a), flip(b), flip(c)] };
}

const flipSource = (source: Source): Source => {
  const across = flip(source.across);
  return {
    ...source,
    centre: flip(source.centre),
    axis: flip(source.axis),
    across: [-across[0] + 0, -across[1] + 0, -across[2] + 0],
    along: flip(source.along),
    aim: flip(source.aim),
  };
};

/** A scene as a mirror in the plane x = 0 shows it. */
export function mirrored(scene: Scene): Scene {
  const { room } = scene;
  return {
    ...scene,
    room: room === null ? null : { ...room, left: -room.right, right: -room.left },
    polygons: scene.polygons.map(flipPolygon),
    bodies: scene.bodies.map(flipBody),
    sources: scene.sources.map(flipSource),
    stations: scene.stations.map((row): Station => ({ ...row, at: flip(row.at), facing: flip(row.facing) })),
  };
}
