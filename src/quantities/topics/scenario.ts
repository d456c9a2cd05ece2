import { widthSquareOn } from "../../physics/angular-size.js";
import { flashFNumber } from "../../physics/exposure.js";
import { isotropicExposure, rectangularDiffuserExposure } from "../../physics/flash-exposure.js";
import { planarPenumbra } from "../../physics/penumbra-width.js";
import { stopsBetween } from "../../physics/stops.js";
import {
  type Inputs,
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

/** What one scene answers, by the name of the output. */
type Answers = ReadonlyMap<string, (inputs: Inputs) => number | undefined>;

function answer(answers: Answers, inputs: Inputs): Outcome {
  const found = answers.get(inputs.text("output"))?.(inputs);
  return found === undefined ? none("no light arrives, so that there is nothing to compare") : value(found);
}

function output(answers: Answers) {
  return text("output", [...answers.keys()]);
}

function diffuserExposure(inputs: Inputs, distance: number): number {
  return rectangularDiffuserExposure(
    inputs.number("energy_J"),
    inputs.number("efficacy_lms_per_J"),
    inputs.number("transmission"),
    inputs.number("width_m"),
    inputs.number("height_m"),
    distance,
  );
}

function diffuserEdge(inputs: Inputs, gap: number): number {
  return planarPenumbra(inputs.number("width_m"), inputs.number("distance_m"), gap);
}

const DIFFUSER: Answers = new Map([
  [
    "horizontal_angle_deg",
    (inputs) => widthSquareOn(inputs.number("width_m"), inputs.number("distance_m")) * DEGREES,
  ],
  [
    "vertical_angle_deg",
    (inputs) => widthSquareOn(inputs.number("height_m"), inputs.number("distance_m")) * DEGREES,
  ],
  ["luminous_exposure_lxs", (inputs) => diffuserExposure(inputs, inputs.number("distance_m"))],
  [
    "f_number",
    (inputs) =>
      flashFNumber(
        diffuserExposure(inputs, inputs.number("distance_m")),
        inputs.number("iso"),
        inputs.number("C"),
      ),
  ],
  [
    "backdrop_stops_below_subject",
    (inputs) => {
      const distance = inputs.number("distance_m");
      const backdrop = distance + inputs.number("backdrop_behind_m");
      return stopsBetween(diffuserExposure(inputs, distance), diffuserExposure(inputs, backdrop));
    },
  ],
  ["nose_shadow_edge_m", (inputs) => diffuserEdge(inputs, inputs.number("nose_to_cheek_m"))],
  ["backdrop_shadow_edge_m", (inputs) => diffuserEdge(inputs, inputs.number("backdrop_behind_m"))],
]);

function bareExposure(inputs: Inputs, distance: number): number {
  return isotropicExposure(inputs.number("energy_J"), inputs.number("efficacy_lms_per_J"), distance);
}

const BARE_FLASH: Answers = new Map([
  [
    "angular_diameter_deg",
    (inputs) => widthSquareOn(inputs.number("tube_diameter_m"), inputs.number("distance_m")) * DEGREES,
  ],
  ["luminous_exposure_lxs", (inputs) => bareExposure(inputs, inputs.number("distance_m"))],
  [
    "f_number",
    (inputs) =>
      flashFNumber(
        bareExposure(inputs, inputs.number("distance_m")),
        inputs.number("iso"),
        inputs.number("C"),
      ),
  ],
  [
    "shadow_edge_m",
    (inputs) =>
      planarPenumbra(
        inputs.number("tube_diameter_m"),
        inputs.number("distance_m"),
        inputs.number("edge_to_backdrop_m"),
      ),
  ],
  [
    "head_to_foot_falloff_stops",
    (inputs) => {
      const distance = inputs.number("distance_m");
      const half = inputs.number("figure_height_m") / 2;
      const end = Math.sqrt(distance * distance + half * half);
      return stopsBetween(bareExposure(inputs, distance), bareExposure(inputs, end));
    },
  ],
]);

const FLASH_INPUTS = [
  positive("energy_J", "J"),
  positive("efficacy_lms_per_J", "lm s/J"),
  positive("iso", "1"),
  positive("C", "lx s"),
] as const;

/** Whole scenes that chain the formulas of other topics. */
export const SCENARIO_QUANTITIES: readonly Quantity[] = [
  {
    name: "scenario_frontal_diffuser",
    inputs: [
      positive("width_m", "m"),
      positive("height_m", "m"),
      positive("distance_m", "m"),
      ...FLASH_INPUTS,
      number("transmission", "1", { above: 0, atMost: 1 }),
      nonNegative("backdrop_behind_m", "m"),
      nonNegative("nose_to_cheek_m", "m"),
      output(DIFFUSER),
    ],
    unit: "by output",
    title:
      "A flash behind a diffuser on the axis of the lens: size, exposure, fall-off to the backdrop, edges",
    source:
      "chain: 2 atan(w / 2 d); H = Q / (pi w h) times the projected solid angle (Lambert 1760); N = sqrt(H S / C); " +
      "edge = w b / a",
    compute: (inputs) => answer(DIFFUSER, inputs),
  },
  {
    name: "scenario_bare_flash_full_length",
    inputs: [
      positive("tube_diameter_m", "m"),
      positive("distance_m", "m"),
      ...FLASH_INPUTS,
      nonNegative("edge_to_backdrop_m", "m"),
      nonNegative("figure_height_m", "m"),
      output(BARE_FLASH),
    ],
    unit: "by output",
    title:
      "A bare flash tube on a full-length figure: size, exposure, fall-off from the middle to the ends, edge",
    source:
      "chain: 2 atan(D / 2 d); H = Q / (4 pi d^2); N = sqrt(H S / C); log2(1 + (h / 2 d)^2); edge = D b / a",
    compute: (inputs) => answer(BARE_FLASH, inputs),
  },
];
