import * as three from "three";
import type { Vec3 } from "../../src/core/vector.js";
import type { Body, Scene } from "../../src/scene/types.js";
import { livedIn } from "../helpers/lived-in-room.js";
import { sceneOf } from "../helpers/worked.js";

const key =
  "light key { role: key, shape: disc(20 cm), output: 900 lm s, distance: 2.2 m, bearing: left(40 deg), height: 2.2 m }";

/** A room of 5 x 7 x 3 m, two hinged flats, a card and a person, one lamp: 14 stations, 23 sheets and bodies at most. */
export const corner = (): Scene => sceneOf(`${livedIn(50, 80, 25)}\n${key}`);

/** The same with more lamps round the person. */
export function withLamps(count: number): Scene {
  const more = Array.from(
    { length: count - 1 },
    (_, i) =>
      `light more${i} { shape: disc(40 cm), output: 300 lm s, distance: 2 m, bearing: ${i % 2 === 0 ? "right" : "left"}(${20 + 20 * i} deg), height: 1.9 m }`,
  );
  return sceneOf([livedIn(50, 80, 25), key, ...more].join("\n"));
}

/** The same with balls on the floor of the room, which hide and bounce. */
export function withBalls(count: number): Scene {
  const scene = corner();
  const balls = Array.from(
    { length: count },
    (_, i): Body => ({
      kind: "sphere",
      name: `ball ${i}`,
      centre: [-2 + (4 * (i % 8)) / 7, 1.6 + 0.4 * Math.floor(i / 8), 0.15],
      radius: 0.12,
      reflectance: 0.3,
    }),
  );
  return { ...scene, bodies: [...scene.bodies, ...balls] };
}

const vector = ([x, y, z]: Vec3): three.Vector3 => new three.Vector3(x, y, z);

function mesh(body: Body): three.Mesh {
  const material = new three.MeshBasicMaterial({ side: three.DoubleSide });
  if (body.kind === "capsule") {
    const [from, to] = [vector(body.from), vector(body.to)];
    const found = new three.Mesh(
      new three.CapsuleGeometry(body.radius, from.distanceTo(to), 8, 24),
      material,
    );
    found.position.copy(from).add(to).multiplyScalar(0.5);
    found.quaternion.setFromUnitVectors(new three.Vector3(0, 1, 0), to.sub(from).normalize());
    return found;
  }
  const found = new three.Mesh(new three.SphereGeometry(1, 24, 16), material);
  if (body.kind === "sphere") found.scale.setScalar(body.radius);
  else {
    const [a, b, c] = body.axes.map(vector) as [three.Vector3, three.Vector3, three.Vector3];
    found.applyMatrix4(new three.Matrix4().makeBasis(a, b, c));
  }
  found.position.copy(vector(body.centre));
  return found;
}

/** The sheets and bodies of a scene as triangles. */
export function meshes(scene: Scene): {
  readonly objects: readonly three.Mesh[];
  readonly triangles: number;
} {
  const sheets = scene.polygons.map(({ vertices }) => {
    const geometry = new three.BufferGeometry();
    const points = vertices.slice(2).flatMap((_, i) => [vertices[0], vertices[i + 1], vertices[i + 2]]);
    geometry.setAttribute(
      "position",
      new three.Float32BufferAttribute(
        points.flatMap((p) => [...(p ?? [0, 0, 0])]),
        3,
      ),
    );
    return new three.Mesh(geometry, new three.MeshBasicMaterial({ side: three.DoubleSide }));
  });
  const objects = [...sheets, ...scene.bodies.map(mesh)];
  let triangles = 0;
  for (const one of objects) {
    one.updateMatrixWorld(true);
    const { index, attributes } = one.geometry;
    triangles += (index?.count ?? attributes.position?.count ?? 0) / 3;
  }
  return { objects, triangles };
}
