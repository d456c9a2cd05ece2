import type { Vec3 } from "../../core/vector.js";
import { discReading } from "../../physics/illuminance.js";
import { emptyVector } from "../../physics/light-vector.js";
import { polygonIlluminance } from "../../physics/polygon-illuminance.js";
import {
  levelIlluminance,
  mattLuminance,
  pointIlluminance,
  stripIlluminance,
} from "../../physics/simple-illuminance.js";
import { rectangleSource, type SourceShape } from "../../physics/source-shape.js";
import { formula } from "../formula.js";
import {
  type Inputs,
  impossible,
  json,
  nonNegative,
  number,
  type Outcome,
  positive,
  type Quantity,
  value,
} from "../quantity.js";

const DEGREES = 180 / Math.PI;
const POLYGON = "Lambert, Photometria (1760): E = (L / 2) sum of theta_i (n . gamma_i), cut at the horizon";

const intensity = nonNegative("intensity_cd", "cd");
const luminance = nonNegative("luminance_cd_m2", "cd/m2");
const radius = positive("radius_m", "m");
const distance = positive("distance_m", "m");
const incidence = number("incidence_deg", "deg", { atLeast: -180, atMost: 180 });
const offset = number("offset_m", "m");

/** Light on a receiver at a place, facing up. */
function facingUp(source: SourceShape, x: number): number {
  return discReading(source, x, 0, 0, 0, 0, 1, emptyVector());
}

function point(input: unknown): Vec3 | undefined {
  if (!Array.isArray(input) || input.length !== 3) return undefined;
  const [x, y, z] = input as readonly unknown[];
  const good = [x, y, z].every((c) => typeof c === "number" && Number.isFinite(c));
  return good ? [x as number, y as number, z as number] : undefined;
}

function polygon(inputs: Inputs): Outcome {
  const list = inputs.json("vertices");
  const corners = Array.isArray(list) ? list.map(point) : [];
  const at = point(inputs.json("point"));
  const normal = point(inputs.json("normal"));
  if (corners.length < 3 || corners.some((corner) => corner === undefined)) {
    return impossible("vertices must be a list of at least three points like [[0,0,1],[1,0,1],[0,1,1]]");
  }
  if (at === undefined) return impossible("point must be three numbers like [0,0,0]");
  if (normal === undefined) return impossible("normal must be three numbers like [0,0,1]");
  const e = polygonIlluminance(inputs.number("luminance_cd_m2"), corners as readonly Vec3[], at, normal);
  return e === undefined ? impossible("normal must not be [0,0,0]") : value(e);
}

const POLYGON_INPUTS = [luminance, json("vertices", "m"), json("point", "m"), json("normal")] as const;

/** Illuminance from points and large sources. */
export const ILLUMINANCE_QUANTITIES: readonly Quantity[] = [
  formula(
    {
      name: "illuminance_point_source",
      inputs: [intensity, distance, incidence],
      unit: "lx",
      title: "Illuminance from a small lamp",
      source: "E = I cos / d^2; inverse square and cosine law, ISO 80000-7",
    },
    (get) => pointIlluminance(get("intensity_cd"), get("distance_m"), get("incidence_deg") / DEGREES),
  ),
  formula(
    {
      name: "illuminance_cos3_height",
      inputs: [intensity, positive("height_m", "m"), offset],
      unit: "lx",
      title: "Illuminance on a level surface from a small lamp above it, off to the side",
      source: "E = I cos^3 / h^2; inverse square and cosine law",
    },
    (get) => levelIlluminance(get("intensity_cd"), get("height_m"), get("offset_m")),
  ),
  formula(
    {
      name: "illuminance_disc_on_axis",
      inputs: [luminance, radius, distance],
      unit: "lx",
      title: "Illuminance on the axis of a uniform disc, receiver facing it",
      source: "E = pi L R^2 / (R^2 + d^2); Walsh, Photometry; handbook form",
    },
    (get) => get("luminance_cd_m2") * facingUp(discAbove(get("radius_m"), get("distance_m")), 0),
  ),
  formula(
    {
      name: "illuminance_disc_off_axis_parallel",
      inputs: [luminance, radius, positive("height_m", "m"), offset],
      unit: "lx",
      title: "Illuminance on a surface parallel to a uniform disc, off its axis",
      source: "Foote 1915: E = (pi L / 2)(1 - (h^2 + a^2 - R^2) / sqrt((h^2 + a^2 + R^2)^2 - 4 R^2 a^2))",
    },
    (get) => get("luminance_cd_m2") * facingUp(discAbove(get("radius_m"), get("height_m")), get("offset_m")),
  ),
  formula(
    {
      name: "illuminance_rectangle_on_axis_parallel",
      inputs: [luminance, positive("width_m", "m"), positive("height_m", "m"), distance],
      unit: "lx",
      title: "Illuminance on the axis of a uniform rectangle, receiver facing it",
      source: "Lambert, Photometria (1760), polygon formula",
    },
    (get) =>
      get("luminance_cd_m2") *
      facingUp(
        rectangleSource([0, 0, get("distance_m")], [-1, 0, 0], [0, 1, 0], get("width_m"), get("height_m")),
        0,
      ),
  ),
  {
    name: "illuminance_polygon_general",
    inputs: POLYGON_INPUTS,
    unit: "lx",
    title: "Illuminance from a flat polygon of one luminance that shines to both sides",
    source: POLYGON,
    compute: polygon,
  },
  {
    name: "illuminance_polygon_horizon_clipped",
    inputs: POLYGON_INPUTS,
    unit: "lx",
    title: "The same where the receiver's horizon cuts the polygon",
    source: POLYGON,
    compute: polygon,
  },
  {
    name: "illuminance_sphere_source",
    inputs: [luminance, radius, distance, incidence],
    unit: "lx",
    title: "Illuminance from a uniform sphere, cut at the receiver's horizon",
    source: "E = pi L (R / d)^2 cos(incidence); Lambert's contour integral where the horizon cuts",
    compute: (inputs) => {
      const r = inputs.number("radius_m");
      const d = inputs.number("distance_m");
      if (!(d > r)) {
        return impossible("distance_m must be greater than radius_m: the point is inside the sphere");
      }
      const t = inputs.number("incidence_deg") / DEGREES;
      const sphere = { kind: "sphere", centre: [0, 0, d], radius: r } as const;
      const angle = discReading(sphere, 0, 0, 0, Math.sin(t), 0, Math.cos(t), emptyVector());
      return value(inputs.number("luminance_cd_m2") * angle);
    },
  },
  formula(
    {
      name: "illuminance_narrow_strip",
      inputs: [luminance, positive("strip_width_m", "m"), positive("strip_length_m", "m"), distance],
      unit: "lx",
      title: "Illuminance from a narrow strip or tube, on its perpendicular bisector",
      source: "E = (L w / d)(al + sin(al) cos(al)), tan(al) = half length / d; handbook form",
    },
    (get) =>
      stripIlluminance(
        get("luminance_cd_m2"),
        get("strip_width_m"),
        get("strip_length_m"),
        get("distance_m"),
      ),
  ),
  formula(
    {
      name: "luminance_of_matt_surface",
      inputs: [nonNegative("illuminance_lx", "lx"), number("reflectance", "1", { atLeast: 0, atMost: 1 })],
      unit: "cd/m2",
      title: "Luminance of a matt surface under light",
      source: "L = rho E / pi; Lambertian surface",
    },
    (get) => mattLuminance(get("illuminance_lx"), get("reflectance")),
  ),
];

/** A disc above the receiver, facing down. */
function discAbove(r: number, h: number): SourceShape {
  return { kind: "disc", centre: [0, 0, h], normal: [0, 0, -1], radius: r };
}
