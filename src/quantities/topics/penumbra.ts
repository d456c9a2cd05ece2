import { discShare, type EdgeOutline, edgeShareOfWidth } from "../../physics/edge-profile.js";
import { edgeWidthBetween } from "../../physics/edge-share.js";
import {
  obliquePenumbra,
  planarPenumbra,
  spherePenumbra,
  umbraLength,
} from "../../physics/penumbra-width.js";
import { rectangleExtent } from "../../physics/source-extent.js";
import { rectangleSource, type SourceShape } from "../../physics/source-shape.js";
import { sunPenumbraOfLevelEdge, sunPenumbraOfUprightEdge } from "../../physics/sun-penumbra.js";
import { formula, partialFormula } from "../formula.js";
import {
  impossible,
  none,
  nonNegative,
  number,
  type Outcome,
  positive,
  type Quantity,
  text,
  value,
} from "../quantity.js";

const DEGREES = 180 / Math.PI;
const PROFILE = "far from the source the edge's profile is the growing share of the source's outline";

const extent = positive("source_extent_m", "m");
const radius = positive("radius_m", "m");
const toEdge = positive("source_to_edge_m", "m");
const toReceiver = nonNegative("edge_to_receiver_m", "m");
const sunAltitude = number("sun_altitude_deg", "deg", { above: 0, atMost: 90 });
const sunDiameter = number("sun_diameter_deg", "deg", { above: 0, below: 90 });
const outline = text("source", [
  "disc",
  "sphere",
  "square",
  "square_edge_parallel",
  "square_diagonal_across",
]);
const INSIDE = impossible("source_to_edge_m must be greater than radius_m: the edge is inside the sphere");

/** Width between 10 % and 90 % of the light: a source above a level receiver, the edge below it on the axis. */
function nearWidth(source: SourceShape, edgeToReceiver: number): Outcome {
  if (edgeToReceiver === 0) return value(0);
  const width = edgeWidthBetween({
    source,
    edgePoint: [0, 0, edgeToReceiver],
    edgeDirection: [0, 1, 0],
    surfacePoint: [0, 0, 0],
    surfaceNormal: [0, 0, 1],
  });
  return width === undefined ? none("the edge of this shadow has no end on the receiver") : value(width);
}

/** How wide the edges of shadows are. */
export const PENUMBRA_QUANTITIES: readonly Quantity[] = [
  formula(
    {
      name: "penumbra_width_planar_source",
      inputs: [extent, toEdge, toReceiver],
      unit: "m",
      title: "Full width of a shadow's edge from a flat source, everything square to the axis",
      source: "w = D b / a; similar triangles",
    },
    (get) => planarPenumbra(get("source_extent_m"), get("source_to_edge_m"), get("edge_to_receiver_m")),
  ),
  partialFormula(
    {
      name: "penumbra_width_sphere_source",
      inputs: [radius, toEdge, toReceiver],
      unit: "m",
      title: "Full width of a shadow's edge from a sphere",
      source: "w = 2 b R / sqrt(a^2 - R^2); tangent cone",
    },
    (get) => spherePenumbra(get("radius_m"), get("source_to_edge_m"), get("edge_to_receiver_m")),
    INSIDE,
  ),
  partialFormula(
    {
      name: "penumbra_width_planar_source_oblique",
      inputs: [extent, toEdge, toReceiver, number("receiver_tilt_deg", "deg", { above: -90, below: 90 })],
      unit: "m",
      title: "Full width of a shadow's edge on a surface tilted about an axis parallel to the edge",
      source: "w = b sin(al) (1 / cos(al + t) + 1 / cos(al - t)), tan(al) = D / 2 a; ray geometry",
    },
    (get) =>
      obliquePenumbra(
        get("source_extent_m"),
        get("source_to_edge_m"),
        get("edge_to_receiver_m"),
        get("receiver_tilt_deg") / DEGREES,
      ),
    none("the surface is tilted so far that an outer ray never meets it: the edge has no end"),
  ),
  partialFormula(
    {
      name: "penumbra_sun_horizontal_edge_on_ground",
      inputs: [nonNegative("edge_height_m", "m"), sunAltitude, sunDiameter],
      unit: "m",
      title: "Width on the ground of the sun's shadow of a level edge square to the sun",
      source: "w = h (cot(alt - r) - cot(alt + r)); ray geometry",
    },
    (get) =>
      sunPenumbraOfLevelEdge(
        get("edge_height_m"),
        get("sun_altitude_deg") / DEGREES,
        get("sun_diameter_deg") / DEGREES,
      ),
    none("part of the sun's disc is below the horizon: the edge has no end"),
  ),
  partialFormula(
    {
      name: "penumbra_sun_vertical_edge_on_ground",
      inputs: [nonNegative("distance_from_foot_m", "m"), sunAltitude, sunDiameter],
      unit: "m",
      title: "Width across the sun's shadow of an upright edge, at a distance on the ground from its foot",
      source: "half the azimuth is asin(sin r / cos alt); spherical geometry",
    },
    (get) =>
      sunPenumbraOfUprightEdge(
        get("distance_from_foot_m"),
        get("sun_altitude_deg") / DEGREES,
        get("sun_diameter_deg") / DEGREES,
      ),
    none("the sun's disc reaches the zenith: an upright edge then has no shadow of one direction"),
  ),
  formula(
    {
      name: "edge_visible_fraction_disc",
      inputs: [number("x_over_R", "1")],
      unit: "1",
      title: "Share of a disc that a straight edge leaves uncovered; x from -1 (none) to 1 (all), in radii",
      source: "1/2 + (x sqrt(1 - x^2) + asin x) / pi; area of a segment of a circle",
    },
    (get) => discShare(get("x_over_R")),
  ),
  edgeFraction("edge_10_90_fraction_of_full_width", "10 % and 90 %", 0.1, 0.9),
  edgeFraction("edge_25_75_fraction_of_full_width", "25 % and 75 %", 0.25, 0.75),
  {
    name: "edge_10_90_width_far_field",
    inputs: [outline, extent, toEdge, toReceiver],
    unit: "m",
    title: "Width of a shadow's edge between 10 % and 90 % of the light, source small as seen from the edge",
    source: `share of the full width times D b / a; ${PROFILE}`,
    compute: (inputs) =>
      value(
        edgeShareOfWidth(inputs.text("source") as EdgeOutline, 0.1, 0.9) *
          planarPenumbra(
            inputs.number("source_extent_m"),
            inputs.number("source_to_edge_m"),
            inputs.number("edge_to_receiver_m"),
          ),
      ),
  },
  {
    name: "edge_10_90_width_near_field",
    inputs: [text("source", ["disc", "square"]), extent, toEdge, toReceiver],
    unit: "m",
    title: "Width of a shadow's edge between 10 % and 90 % of the light, exact at any distance",
    source: "illuminance with the edge over illuminance without, Lambert's contour integral for both",
    compute: (inputs) => {
      const size = inputs.number("source_extent_m");
      const gap = inputs.number("edge_to_receiver_m");
      const z = inputs.number("source_to_edge_m") + gap;
      const source: SourceShape =
        inputs.text("source") === "disc"
          ? { kind: "disc", centre: [0, 0, z], normal: [0, 0, -1], radius: size / 2 }
          : rectangleSource([0, 0, z], [-1, 0, 0], [0, 1, 0], size, size);
      return nearWidth(source, gap);
    },
  },
  {
    name: "edge_10_90_width_sphere_near_field",
    inputs: [radius, toEdge, toReceiver],
    unit: "m",
    title: "Width of a shadow's edge from a sphere between 10 % and 90 % of the light, exact at any distance",
    source: "illuminance with the edge over illuminance without, Lambert's contour integral for both",
    compute: (inputs) => {
      const r = inputs.number("radius_m");
      const a = inputs.number("source_to_edge_m");
      const gap = inputs.number("edge_to_receiver_m");
      return a > r ? nearWidth({ kind: "sphere", centre: [0, 0, a + gap], radius: r }, gap) : INSIDE;
    },
  },
  formula(
    {
      name: "source_extent_across_edge_rectangle",
      inputs: [positive("width_m", "m"), positive("height_m", "m"), number("edge_angle_deg", "deg")],
      unit: "m",
      title: "Extent of a rectangle across an edge that runs at an angle from its width",
      source: "D = w |sin a| + h |cos a|; projection",
    },
    (get) => rectangleExtent(get("width_m"), get("height_m"), get("edge_angle_deg") / DEGREES),
  ),
  partialFormula(
    {
      name: "umbra_length",
      inputs: [
        positive("source_diameter_m", "m"),
        positive("occluder_diameter_m", "m"),
        positive("source_to_occluder_m", "m"),
      ],
      unit: "m",
      title: "How far the full shadow reaches behind a round thing smaller than the source",
      source: "a d / (D - d); similar triangles",
    },
    (get) => umbraLength(get("source_diameter_m"), get("occluder_diameter_m"), get("source_to_occluder_m")),
    none("the source is no larger than the occluder: the full shadow has no end"),
  ),
];

function edgeFraction(name: string, words: string, low: number, high: number): Quantity {
  return {
    name,
    inputs: [outline],
    unit: "1",
    title: `Share of an edge's full width between ${words} of the light, source small as seen from the edge`,
    source: PROFILE,
    compute: (inputs) => value(edgeShareOfWidth(inputs.text("source") as EdgeOutline, low, high)),
  };
}
