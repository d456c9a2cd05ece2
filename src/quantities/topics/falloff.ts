import { depthFalloff, discFalloff, distanceForStops, pointFalloff } from "../../physics/falloff.js";
import {
  pointErrorOfDisc,
  pointErrorOfSquare,
  pointErrorOfSquareByDiagonal,
} from "../../physics/point-error.js";
import { formula, partialFormula } from "../formula.js";
import { none, nonNegative, number, positive, type Quantity } from "../quantity.js";

const radius = positive("radius_m", "m");
const distance = positive("distance_m", "m");

/** How light falls off with distance, and how far the inverse square is right. */
export const FALLOFF_QUANTITIES: readonly Quantity[] = [
  formula(
    {
      name: "point_source_error_disc",
      inputs: [positive("distance_over_diameter", "1")],
      unit: "1",
      title: "By how much the inverse square overrates a disc on its axis",
      source: "1 / (4 k^2); five times rule: ANSI/IES LS-1, 9.1.1",
    },
    (get) => pointErrorOfDisc(get("distance_over_diameter")),
  ),
  formula(
    {
      name: "point_source_error_square_by_side",
      inputs: [positive("distance_over_side", "1")],
      unit: "1",
      title: "By how much the inverse square overrates a square on its axis, distance in sides",
      source: "corner form of an element parallel to a rectangle, four times",
    },
    (get) => pointErrorOfSquare(get("distance_over_side")),
  ),
  formula(
    {
      name: "point_source_error_square_by_diagonal",
      inputs: [positive("distance_over_diagonal", "1")],
      unit: "1",
      title: "By how much the inverse square overrates a square on its axis, distance in diagonals",
      source: "corner form of an element parallel to a rectangle, four times",
    },
    (get) => pointErrorOfSquareByDiagonal(get("distance_over_diagonal")),
  ),
  formula(
    {
      name: "falloff_stops_between_distances",
      inputs: [positive("near_m", "m"), positive("far_m", "m")],
      unit: "stop",
      title: "Stops lost from the near to the far distance from a small lamp; + is darker",
      source: "2 log2(d2 / d1); inverse square",
    },
    (get) => pointFalloff(get("near_m"), get("far_m")),
  ),
  partialFormula(
    {
      name: "distance_for_stop_change",
      inputs: [distance, number("stops_brighter", "stop")],
      unit: "m",
      title: "Distance at which a small lamp is so many stops brighter (+) or darker (-)",
      source: "d2 = d1 2^(-stops / 2); inverse square",
    },
    (get) => distanceForStops(get("distance_m"), get("stops_brighter")),
    none("the distance is beyond the range of numbers"),
  ),
  formula(
    {
      name: "falloff_stops_disc_on_axis",
      inputs: [radius, nonNegative("near_m", "m"), nonNegative("far_m", "m")],
      unit: "stop",
      title: "Stops lost from the near to the far distance on the axis of a uniform disc; + is darker",
      source: "log2((R^2 + d2^2) / (R^2 + d1^2)), from E = pi L R^2 / (R^2 + d^2)",
    },
    (get) => discFalloff(get("radius_m"), get("near_m"), get("far_m")),
  ),
  formula(
    {
      name: "depth_falloff_across_subject",
      inputs: [distance, nonNegative("depth_m", "m")],
      unit: "stop",
      title: "Stops lost across the depth of a subject whose near side is at the distance",
      source: "2 log2((d + depth) / d); inverse square",
    },
    (get) => depthFalloff(get("distance_m"), get("depth_m")),
  ),
];
