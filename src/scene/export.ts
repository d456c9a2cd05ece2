import type { Vec3 } from "../core/vector.js";
import type {
  Body,
  LitPatch,
  Scene,
  SceneCamera,
  ScenePolygon,
  SceneRoom,
  Source,
  Station,
} from "./types.js";

type Triple = [number, number, number];

/**
 * The evaluated geometry as plain JSON, format 1, so that any outside program can compute the same light: lengths in
 * m, angles in deg, luminous energy in lm s. `docs/guide/scene.md` explains every field. Names are values, never keys;
 * arrays are in the scene's order.
 */
export interface SceneJson {
  readonly format: 1;
  readonly room: SceneRoom | null;
  readonly meter: Scene["meter"];
  readonly key: string | null;
  readonly polygons: readonly {
    readonly name: string;
    readonly kind: string;
    readonly vertices: readonly Triple[];
    readonly normal: Triple;
    readonly front_reflectance: number;
    readonly back_reflectance: number;
    readonly thickness: number;
  }[];
  readonly spheres: readonly { name: string; centre: Triple; radius: number; reflectance: number }[];
  readonly capsules: readonly {
    readonly name: string;
    readonly from: Triple;
    readonly to: Triple;
    readonly radius: number;
    readonly reflectance: number;
  }[];
  readonly ellipsoids: readonly {
    readonly name: string;
    readonly centre: Triple;
    readonly axes: readonly [Triple, Triple, Triple];
    readonly reflectance: number;
  }[];
  readonly sources: readonly {
    readonly name: string;
    readonly role: string | null;
    readonly kind: string;
    readonly shape: Readonly<
      Record<"kind", string> & Partial<Record<"radius" | "width" | "height" | "length", number>>
    >;
    readonly centre: Triple;
    readonly axis: Triple;
    readonly across: Triple;
    readonly along: Triple;
    readonly beam: {
      readonly kind: string;
      readonly exponent?: number;
      readonly cutoff?: number;
      readonly table?: {
        readonly file: string;
        readonly type: "B" | "C";
        readonly vertical: readonly number[];
        readonly horizontal: readonly number[];
        readonly intensity: readonly (readonly number[])[];
        readonly axial: number;
        readonly front: number;
      };
    };
    readonly emits: "front" | "all_round";
    readonly area: number;
    readonly energy: number;
    readonly full_energy: number;
    readonly colour: number;
    /** The scrim that this source is, and the source that is the bare head behind it. */
    readonly cloth: { readonly scrim: string; readonly spill: string; readonly loses: number } | null;
    /** The light whose bare head this source is. */
    readonly spill_of: string | null;
    /** The lit patch of a head that shines into a surface; for looks only, it adds no light. */
    readonly patch: {
      readonly surface: string;
      readonly centre: Triple;
      readonly normal: Triple;
      readonly across: Triple;
      readonly along: Triple;
      readonly width: number;
      readonly height: number;
      readonly share: number;
    } | null;
  }[];
  readonly stations: readonly {
    readonly name: string;
    readonly subject: string | null;
    readonly at: Triple;
    readonly facing: Triple;
    readonly receptor: string;
    readonly looks: string;
  }[];
  readonly camera: {
    readonly at: Triple;
    readonly forward: Triple;
    readonly right: Triple;
    readonly up: Triple;
    readonly frame_width: number;
    readonly frame_height: number;
    readonly focal_length: number | null;
    readonly focus: Triple | null;
    readonly aperture: number | null;
    readonly shutter: number | null;
    readonly iso: number | null;
  } | null;
}

/** A vector as JSON; minus zero is zero. */
function triple(v: Vec3): Triple {
  return [v[0] + 0, v[1] + 0, v[2] + 0];
}

function polygonJson(polygon: ScenePolygon): SceneJson["polygons"][number] {
  return {
    name: polygon.name,
    kind: polygon.kind,
    vertices: polygon.vertices.map(triple),
    normal: triple(polygon.normal),
    front_reflectance: polygon.frontReflectance,
    back_reflectance: polygon.backReflectance,
    thickness: polygon.thickness ?? 0,
  };
}

function shapeJson(shape: Source["shape"]): SceneJson["sources"][number]["shape"] {
  switch (shape.kind) {
    case "disc":
    case "sphere":
      return { kind: shape.kind, radius: shape.radius };
    case "rectangle":
      return { kind: shape.kind, width: shape.width, height: shape.height };
    case "capsule":
      return { kind: shape.kind, length: shape.length, radius: shape.radius };
    default:
      return shape satisfies never;
  }
}

function beamJson(beam: Source["beam"]): SceneJson["sources"][number]["beam"] {
  switch (beam.kind) {
    case "lambertian":
      return { kind: "lambertian" };
    case "cosine-power":
      return { kind: "cosine_power", exponent: beam.exponent };
    case "grid":
      return { kind: "grid", cutoff: (beam.cutoff * 180) / Math.PI };
    case "table": {
      const { photometry, axial, front } = beam.table;
      const { system, vertical, horizontal, candela } = photometry;
      return {
        kind: "table",
        table: { file: beam.file, type: system, vertical, horizontal, intensity: candela, axial, front },
      };
    }
    default:
      return beam satisfies never;
  }
}

function sourceJson(source: Source): SceneJson["sources"][number] {
  const flat = source.shape.kind === "disc" || source.shape.kind === "rectangle";
  return {
    name: source.name,
    role: source.role,
    kind: source.kind,
    shape: shapeJson(source.shape),
    centre: triple(source.centre),
    axis: triple(source.axis),
    across: triple(source.across),
    along: triple(source.along),
    beam: beamJson(source.beam),
    emits: flat ? "front" : "all_round",
    area: source.area,
    energy: source.energy,
    full_energy: source.fullEnergy,
    colour: source.colour,
    cloth:
      source.cloth === undefined
        ? null
        : { scrim: source.cloth.scrim, spill: source.cloth.spill, loses: source.cloth.loses },
    spill_of: source.spillOf ?? null,
    patch: source.patch === undefined ? null : patchJson(source.patch),
  };
}

function patchJson(patch: LitPatch): NonNullable<SceneJson["sources"][number]["patch"]> {
  return {
    surface: patch.surface,
    centre: triple(patch.centre),
    normal: triple(patch.normal),
    across: triple(patch.across),
    along: triple(patch.along),
    width: patch.width,
    height: patch.height,
    share: patch.share,
  };
}

function stationJson(station: Station): SceneJson["stations"][number] {
  return {
    name: station.name,
    subject: station.subject,
    at: triple(station.at),
    facing: triple(station.facing),
    receptor: station.receptor,
    looks: station.looks,
  };
}

function cameraJson(camera: SceneCamera): NonNullable<SceneJson["camera"]> {
  return {
    at: triple(camera.at),
    forward: triple(camera.forward),
    right: triple(camera.right),
    up: triple(camera.up),
    frame_width: camera.frameWidth,
    frame_height: camera.frameHeight,
    focal_length: camera.focalLength,
    focus: camera.focus === null ? null : triple(camera.focus),
    aperture: camera.aperture,
    shutter: camera.shutter,
    iso: camera.iso,
  };
}

function bodiesOf<K extends Body["kind"]>(scene: Scene, kind: K): Extract<Body, { kind: K }>[] {
  return scene.bodies.filter((body): body is Extract<Body, { kind: K }> => body.kind === kind);
}

/** The scene as plain JSON, with a stable order of keys. */
export function sceneToJson(scene: Scene): SceneJson {
  return {
    format: 1,
    room: scene.room,
    meter: scene.meter,
    key: scene.key === null ? null : (scene.sources[scene.key]?.name ?? null),
    polygons: scene.polygons.map(polygonJson),
    spheres: bodiesOf(scene, "sphere").map(({ name, centre, radius, reflectance }) => ({
      name,
      centre: triple(centre),
      radius,
      reflectance,
    })),
    capsules: bodiesOf(scene, "capsule").map(({ name, from, to, radius, reflectance }) => ({
      name,
      from: triple(from),
      to: triple(to),
      radius,
      reflectance,
    })),
    ellipsoids: bodiesOf(scene, "ellipsoid").map(({ name, centre, axes, reflectance }) => ({
      name,
      centre: triple(centre),
      axes: [triple(axes[0]), triple(axes[1]), triple(axes[2])] as const,
      reflectance,
    })),
    sources: scene.sources.map(sourceJson),
    stations: scene.stations.map(stationJson),
    camera: scene.camera === null ? null : cameraJson(scene.camera),
  };
}
