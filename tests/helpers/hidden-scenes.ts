import type { Vec3 } from "../../src/core/vector.js";
import { cross } from "../../src/math/vector.js";
import type { Body, ScenePolygon, Source, Station } from "../../src/scene/types.js";
import { randomDirection } from "./random.js";

/** A light, things that may stand before it, and a receptor, all at random. */
export interface HiddenScene {
  readonly source: Source;
  readonly polygons: readonly ScenePolygon[];
  readonly bodies: readonly Body[];
  readonly at: Vec3;
  readonly facing: Vec3;
  readonly receptor: Station["receptor"];
}

const unit = (v: Vec3): Vec3 => {
  const size = Math.sqrt(v[0] * v[0] + v[1] * v[1] + v[2] * v[2]);
  return [v[0] / size, v[1] / size, v[2] / size];
};

const shapes: readonly Source["shape"][] = [
  { kind: "disc", radius: 0.45 },
  { kind: "rectangle", width: 1.2, height: 0.8 },
  { kind: "sphere", radius: 0.3 },
  { kind: "capsule", length: 1, radius: 0.15 },
];

/** A random scene: the light about 3 m above the receptor; 2 sheets, 2 ellipsoids, 2 capsules and a ball between. */
export function hiddenScene(random: () => number, index: number): HiddenScene {
  const spread = (half: number): number => (2 * random() - 1) * half;
  const axis = unit([spread(0.3), spread(0.3), -1]);
  const across = unit(cross(axis, [0.3, 1, 0.1]));
  const shape = shapes[index % shapes.length] ?? { kind: "disc", radius: 0.45 };
  const source: Source = {
    name: "lamp",
    role: null,
    kind: "flash",
    shape,
    centre: [spread(0.5), spread(0.5), 3],
    axis,
    across,
    along: cross(axis, across),
    beam: { kind: "lambertian" },
    area: 1,
    energy: 1,
    fullEnergy: 1,
    uncertainty: 0,
    known: "",
    wattSeconds: null,
    fullWattSeconds: null,
    lowest: null,
    below: 0,
    colour: 5600,
    aim: [0, 0, 0],
    headHeight: 0,
    hotModellingLamp: false,
    stand: null,
  };
  const place = (): Vec3 => [spread(0.5), spread(0.5), 0.6 + 1.6 * random()];
  const polygons = [0, 1].map((i): ScenePolygon => {
    const centre = place();
    const u = randomDirection(random);
    const v = unit(cross(u, randomDirection(random)));
    const [a, b] = [0.1 + 0.5 * random(), 0.1 + 0.5 * random()];
    const corner = (s: number, t: number): Vec3 => [
      centre[0] + s * a * u[0] + t * b * v[0],
      centre[1] + s * a * u[1] + t * b * v[1],
      centre[2] + s * a * u[2] + t * b * v[2],
    ];
    return {
      name: `sheet ${i}`,
      kind: "panel",
      vertices: [corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)],
      normal: cross(u, v),
      frontReflectance: 0,
      backReflectance: 0,
    };
  });
  const bodies = [0, 1].flatMap((i): Body[] => {
    const u = randomDirection(random);
    const v = unit(cross(u, randomDirection(random)));
    const w = cross(u, v);
    const half = (axis: Vec3): Vec3 => {
      const k = 0.05 + 0.2 * random();
      return [k * axis[0], k * axis[1], k * axis[2]];
    };
    const from = place();
    const along = randomDirection(random);
    const reach = 0.5 * random();
    return [
      {
        kind: "ellipsoid",
        name: `egg ${i}`,
        centre: place(),
        axes: [half(u), half(v), half(w)],
        reflectance: 0,
      },
      {
        kind: "capsule",
        name: `rod ${i}`,
        from,
        to: [from[0] + reach * along[0], from[1] + reach * along[1], from[2] + reach * along[2]],
        radius: 0.04 + 0.1 * random(),
        reflectance: 0,
      },
    ];
  });
  bodies.push({
    kind: "sphere",
    name: "ball",
    centre: place(),
    radius: 0.05 + 0.1 * random(),
    reflectance: 0,
  });
  return {
    source,
    polygons,
    bodies,
    at: [spread(0.2), spread(0.2), 0],
    facing: unit([spread(0.5), spread(0.5), 1.2]),
    receptor: index % 3 === 0 ? "dome" : "disc",
  };
}
