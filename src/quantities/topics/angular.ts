import { equivalentCone, sphereWidth, widthSquareOn, widthTurned } from "../../physics/angular-size.js";
import { discReading, solidAngle } from "../../physics/illuminance.js";
import { emptyVector } from "../../physics/light-vector.js";
import { type DiscSource, type PolygonSource, rectangleSource } from "../../physics/source-shape.js";
import { formula, partialFormula } from "../formula.js";
import { impossible, number, positive, type Quantity } from "../quantity.js";

const DEGREES = 180 / Math.PI;
const GEOMETRY = "exact geometry";
const INSIDE = impossible("distance_m must be greater than radius_m: the point is inside the sphere");

const radius = positive("radius_m", "m");
const width = positive("width_m", "m");
const height = positive("height_m", "m");
const distance = positive("distance_m", "m");
const tilt = number("tilt_deg", "deg", { atLeast: -90, atMost: 90 });
const yaw = number("yaw_deg", "deg", { atLeast: -90, atMost: 90 });

type Get = (name: string) => number;

/** A disc in the plane z = 0, facing up. */
function disc(get: Get): DiscSource {
  return { kind: "disc", centre: [0, 0, 0], normal: [0, 0, 1], radius: get("radius_m") };
}

/** A rectangle in the plane z = 0, facing up. */
function rectangle(get: Get): PolygonSource {
  return rectangleSource([0, 0, 0], [1, 0, 0], [0, 1, 0], get("width_m"), get("height_m"));
}

/** Solid angle from a point at a distance whose line of sight is turned from the normal, in degrees. */
function solid(source: DiscSource | PolygonSource, distanceM: number, turnDeg: number): number {
  const t = turnDeg / DEGREES;
  return solidAngle(source, distanceM * Math.sin(t), 0, distanceM * Math.cos(t));
}

/** The same as a projected solid angle at a receiver that faces the centre. */
function projected(source: DiscSource | PolygonSource, distanceM: number, turnDeg: number): number {
  const x = Math.sin(turnDeg / DEGREES);
  const z = Math.cos(turnDeg / DEGREES);
  return discReading(source, distanceM * x, 0, distanceM * z, -x, 0, -z, emptyVector());
}

/** How large sources look from a point: angles, solid angles, projected solid angles. */
export const ANGULAR_QUANTITIES: readonly Quantity[] = [
  partialFormula(
    {
      name: "angular_diameter_sphere",
      inputs: [radius, distance],
      unit: "deg",
      title: "Angle under which a sphere is seen",
      source: `theta = 2 asin(R / d); ${GEOMETRY}`,
    },
    (get) => scaled(sphereWidth(get("radius_m"), get("distance_m"))),
    INSIDE,
  ),
  partialFormula(
    {
      name: "solid_angle_sphere",
      inputs: [radius, distance],
      unit: "sr",
      title: "Solid angle of a sphere",
      source: `omega = 2 pi (1 - sqrt(1 - (R / d)^2)); ${GEOMETRY}`,
    },
    (get) =>
      get("distance_m") > get("radius_m")
        ? solidAngle({ kind: "sphere", centre: [0, 0, get("distance_m")], radius: get("radius_m") }, 0, 0, 0)
        : undefined,
    INSIDE,
  ),
  formula(
    {
      name: "angular_diameter_disc_axis",
      inputs: [radius, distance],
      unit: "deg",
      title: "Angle under which a disc is seen from its axis",
      source: `theta = 2 atan(R / d); ${GEOMETRY}`,
    },
    (get) => widthSquareOn(2 * get("radius_m"), get("distance_m")) * DEGREES,
  ),
  formula(
    {
      name: "solid_angle_disc_axis",
      inputs: [radius, distance],
      unit: "sr",
      title: "Solid angle of a disc from its axis",
      source: `omega = 2 pi (1 - d / sqrt(d^2 + R^2)); ${GEOMETRY}`,
    },
    (get) => solid(disc(get), get("distance_m"), 0),
  ),
  formula(
    {
      name: "projected_solid_angle_disc_axis",
      inputs: [radius, distance],
      unit: "sr",
      title: "Projected solid angle of a disc on its axis, receiver facing it",
      source: "pi R^2 / (R^2 + d^2); Foote 1915, handbook form",
    },
    (get) => projected(disc(get), get("distance_m"), 0),
  ),
  formula(
    {
      name: "angular_width_disc_oblique_foreshortened",
      inputs: [radius, distance, tilt],
      unit: "deg",
      title: "Angle of the diameter of a disc that is tilted away from the line of sight to its centre",
      source: GEOMETRY,
    },
    (get) => widthTurned(2 * get("radius_m"), get("distance_m"), get("tilt_deg") / DEGREES) * DEGREES,
  ),
  formula(
    {
      name: "solid_angle_disc_oblique",
      inputs: [radius, distance, tilt],
      unit: "sr",
      title: "Solid angle of a disc tilted away from the line of sight to its centre",
      source: "Paxton, Rev. Sci. Instrum. 30 (1959) 254",
    },
    (get) => solid(disc(get), get("distance_m"), get("tilt_deg")),
  ),
  formula(
    {
      name: "projected_solid_angle_disc_oblique",
      inputs: [radius, distance, tilt],
      unit: "sr",
      title: "Projected solid angle of a tilted disc at a receiver that faces its centre",
      source: "Foote 1915 (axial and radial part); Lambert's contour integral at the receiver's horizon",
    },
    (get) => projected(disc(get), get("distance_m"), get("tilt_deg")),
  ),
  formula(
    {
      name: "angular_width_rectangle_axis",
      inputs: [width, distance],
      unit: "deg",
      title: "Angle of a rectangle's width from the axis through its centre",
      source: `2 atan(w / 2 d); ${GEOMETRY}`,
    },
    (get) => widthSquareOn(get("width_m"), get("distance_m")) * DEGREES,
  ),
  formula(
    {
      name: "angular_diagonal_rectangle_axis",
      inputs: [width, height, distance],
      unit: "deg",
      title: "Angle of a rectangle's diagonal from the axis through its centre",
      source: `2 atan(sqrt(w^2 + h^2) / 2 d); ${GEOMETRY}`,
    },
    (get) => widthSquareOn(Math.hypot(get("width_m"), get("height_m")), get("distance_m")) * DEGREES,
  ),
  formula(
    {
      name: "solid_angle_rectangle_axis",
      inputs: [width, height, distance],
      unit: "sr",
      title: "Solid angle of a rectangle from the axis through its centre",
      source: "van Oosterom and Strackee, IEEE Trans. Biomed. Eng. BME-30 (1983) 125",
    },
    (get) => solid(rectangle(get), get("distance_m"), 0),
  ),
  formula(
    {
      name: "angular_width_rectangle_yawed",
      inputs: [width, distance, yaw],
      unit: "deg",
      title: "Angle of the level mid-line of a rectangle turned about its upright axis",
      source: GEOMETRY,
    },
    (get) => widthTurned(get("width_m"), get("distance_m"), get("yaw_deg") / DEGREES) * DEGREES,
  ),
  formula(
    {
      name: "solid_angle_rectangle_yawed",
      inputs: [width, height, distance, yaw],
      unit: "sr",
      title: "Solid angle of a rectangle turned about its upright axis",
      source: "van Oosterom and Strackee, IEEE Trans. Biomed. Eng. BME-30 (1983) 125",
    },
    (get) => solid(rectangle(get), get("distance_m"), get("yaw_deg")),
  ),
  formula(
    {
      name: "projected_solid_angle_rectangle_yawed",
      inputs: [width, height, distance, yaw],
      unit: "sr",
      title: "Projected solid angle of a turned rectangle at a receiver that faces its centre",
      source: "Lambert, Photometria (1760), polygon formula",
    },
    (get) => projected(rectangle(get), get("distance_m"), get("yaw_deg")),
  ),
  formula(
    {
      name: "equivalent_cone_diameter_from_solid_angle",
      inputs: [number("solid_angle_sr", "sr", { atLeast: 0, atMost: 4 * Math.PI })],
      unit: "deg",
      title: "Full angle of the cone with the same solid angle",
      source: `theta = 2 acos(1 - omega / 2 pi); ${GEOMETRY}`,
    },
    (get) => equivalentCone(get("solid_angle_sr")) * DEGREES,
  ),
  partialFormula(
    {
      name: "projected_solid_angle_sphere",
      inputs: [radius, distance, number("incidence_deg", "deg", { atLeast: 0, atMost: 180 })],
      unit: "sr",
      title: "Projected solid angle of a sphere at a receiver, cut at the receiver's horizon",
      source: "pi (R / d)^2 cos(incidence) above the horizon; Lambert's contour integral where it cuts",
    },
    (get) => sphereReading(get("radius_m"), get("distance_m"), get("incidence_deg")),
    INSIDE,
  ),
];

function scaled(angle: number | undefined): number | undefined {
  return angle === undefined ? undefined : angle * DEGREES;
}

function sphereReading(r: number, d: number, incidenceDeg: number): number | undefined {
  if (!(d > r)) return undefined;
  const t = incidenceDeg / DEGREES;
  const sphere = { kind: "sphere", centre: [0, 0, d], radius: r } as const;
  return discReading(sphere, 0, 0, 0, Math.sin(t), 0, Math.cos(t), emptyVector());
}
