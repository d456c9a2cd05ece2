import { viewFactorAtAngle } from "../../physics/view-factor-angle.js";
import { viewFactorCoaxialDiscs, viewFactorSphereToDisc } from "../../physics/view-factor-discs.js";
import {
  elementToCoaxialDisc,
  elementToParallelCorner,
  elementToPerpendicularCorner,
} from "../../physics/view-factor-element.js";
import { viewFactorOffsetParallel, viewFactorParallel } from "../../physics/view-factor-parallel.js";
import { viewFactorPerpendicular } from "../../physics/view-factor-perpendicular.js";
import { viewFactorStrips, viewFactorWedge } from "../../physics/view-factor-strips.js";
import { type Inputs, impossible, number, positive, type Quantity, value } from "../quantity.js";

const HOWELL = "Howell, Catalog of Radiation Heat Transfer Configuration Factors, 3rd ed.";

const RADIANS = Math.PI / 180;

/** A quantity of plain lengths, all in one unit, above 0. */
function ofLengths(
  name: string,
  inputs: readonly string[],
  title: string,
  source: string,
  formula: (...lengths: number[]) => number,
): Quantity {
  return {
    name,
    inputs: inputs.map((input) => positive(input, "1")),
    unit: "1",
    title,
    source: `${HOWELL}, ${source}`,
    compute: (given) => value(formula(...inputs.map((input) => given.number(input)))),
  };
}

const ANGLE = number("angle_deg", "deg", { above: 0, below: 180 });

const OFFSET_NAMES = ["x1", "x2", "y1", "y2", "a1", "a2", "b1", "b2"] as const;

function offsetParallel(inputs: Inputs) {
  const [x1, x2, y1, y2, a1, a2, b1, b2] = OFFSET_NAMES.map((name) => inputs.number(name)) as [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  if (!(x1 < x2 && y1 < y2 && a1 < a2 && b1 < b2)) {
    return impossible("x1 must be below x2, y1 below y2, a1 below a2 and b1 below b2");
  }
  return value(
    viewFactorOffsetParallel({ x1, x2, y1, y2 }, { x1: a1, x2: a2, y1: b1, y2: b2 }, inputs.number("z")),
  );
}

/** Shares of the light leaving one surface that reach another. */
export const VIEW_FACTOR_QUANTITIES: readonly Quantity[] = [
  ofLengths(
    "view_factor_parallel_equal_rectangles",
    ["a", "b", "c"],
    "From a rectangle to an equal one that it faces, at a distance c",
    "C-11",
    (a = 1, b = 1, c = 1) => viewFactorParallel(a, b, c),
  ),
  ofLengths(
    "view_factor_perpendicular_rectangles_common_edge",
    ["common", "w1", "w2"],
    "From a rectangle to another that shares an edge at a right angle",
    "C-14",
    (common = 1, w1 = 1, w2 = 1) => viewFactorPerpendicular(common, w1, w2),
  ),
  {
    name: "view_factor_rectangles_common_edge_at_angle",
    inputs: [positive("common", "1"), positive("w1", "1"), positive("w2", "1"), ANGLE],
    unit: "1",
    title: "From a rectangle to another that shares an edge at an angle between the faces",
    source: `${HOWELL}, C-16 (Feingold 1966; Hamilton and Morgan, NACA TN 2836 (1952)); contour integral`,
    compute: (inputs) =>
      value(
        viewFactorAtAngle(
          inputs.number("common"),
          inputs.number("w1"),
          inputs.number("w2"),
          inputs.number("angle_deg") * RADIANS,
        ),
      ),
  },
  {
    name: "view_factor_infinite_wedge",
    inputs: [
      positive("w1", "1"),
      positive("w2", "1"),
      number("angle_deg", "deg", { atLeast: 0, atMost: 180 }),
    ],
    unit: "1",
    title: "From an endless strip to another that shares an edge",
    source: `Hottel's crossed strings; ${HOWELL}, C-5a`,
    compute: (inputs) =>
      value(viewFactorWedge(inputs.number("w1"), inputs.number("w2"), inputs.number("angle_deg") * RADIANS)),
  },
  ofLengths(
    "view_factor_infinite_parallel_strips",
    ["w", "h"],
    "From an endless strip to an equal one that it faces, at a distance h",
    "C-1",
    (w = 1, h = 1) => viewFactorStrips(w, h),
  ),
  ofLengths(
    "view_factor_element_to_coaxial_disc",
    ["R", "h"],
    "From a small element to a disc that it faces on the axis",
    "B-12",
    (r = 1, h = 1) => elementToCoaxialDisc(r, h),
  ),
  ofLengths(
    "view_factor_element_to_rectangle_corner_parallel",
    ["a", "b", "c"],
    "From a small element to a parallel rectangle, opposite a corner",
    "B-4",
    (a = 1, b = 1, c = 1) => elementToParallelCorner(a, b, c),
  ),
  ofLengths(
    "view_factor_element_to_rectangle_perpendicular",
    ["a", "b", "c"],
    "From a small element to a rectangle square to its plane, opposite a lower corner",
    "B-5",
    (a = 1, b = 1, c = 1) => elementToPerpendicularCorner(a, b, c),
  ),
  ofLengths(
    "view_factor_coaxial_discs",
    ["R1", "R2", "h"],
    "From a disc to another on the same axis",
    "C-41",
    (r1 = 1, r2 = 1, h = 1) => viewFactorCoaxialDiscs(r1, r2, h),
  ),
  ofLengths(
    "view_factor_sphere_to_coaxial_disc",
    ["r", "h"],
    "From a sphere to a disc on whose axis it stands, h from the sphere's centre",
    "sphere to coaxial disc (Feingold and Gupta 1970)",
    (r = 1, h = 1) => viewFactorSphereToDisc(r, h),
  ),
  {
    name: "view_factor_offset_parallel_rectangles",
    inputs: [...OFFSET_NAMES.map((name) => number(name, "1")), positive("z", "1")],
    unit: "1",
    title: "From a rectangle (x, y) to another (a, b) in a parallel plane at a distance z",
    source: `${HOWELL}, C-13`,
    compute: offsetParallel,
  },
];
