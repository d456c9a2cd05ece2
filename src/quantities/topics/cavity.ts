import { bounceFromFloor, bounceFromPanel } from "../../physics/bounce.js";
import { type CubeFaces, cubeIlluminance, cubeIlluminanceConverged } from "../../physics/cavity-cube.js";
import { plateRadiosity } from "../../physics/cavity-plates.js";
import { sphereGain, sphereMultiplier, sphereWallIlluminance } from "../../physics/cavity-sphere.js";
import { viewFactorParallel } from "../../physics/view-factor-parallel.js";
import {
  type InputRange,
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

const SHARE: InputRange = { atLeast: 0, atMost: 1 };

const REFLECTANCE = number("reflectance", "1", SHARE);

const ENDLESS = "nothing is lost, so that the light never ends";

function orEndless(result: number | undefined): Outcome {
  return result === undefined ? none(ENDLESS) : value(result);
}

const WHICH = number("which", "1", { atLeast: 1, atMost: 2, whole: true });

function plate(inputs: Inputs, viewFactor: number): Outcome {
  const found = plateRadiosity(
    inputs.number("exitance1"),
    inputs.number("rho1"),
    inputs.number("rho2"),
    viewFactor,
  );
  if (found === undefined) return none(ENDLESS);
  return value(inputs.number("which") === 1 ? found.first : found.second);
}

/** The light of one face of the cube, or that it never ends. */
function cubeFace(
  faces: CubeFaces | undefined,
  face: keyof CubeFaces,
  finish: (illuminance: number) => number,
): Outcome {
  return faces === undefined ? none(ENDLESS) : value(finish(faces[face]));
}

const WHERE: readonly string[] = [
  "mean_irradiance_emitter",
  "mean_irradiance_opposite",
  "mean_irradiance_side",
];

/** Light thrown to and fro between matt surfaces. */
export const CAVITY_QUANTITIES: readonly Quantity[] = [
  {
    name: "sphere_total_over_direct_irradiance",
    inputs: [REFLECTANCE],
    unit: "1",
    title: "Mean light in a closed matt sphere over its direct part",
    source: "1 / (1 - rho) (Walsh, Photometry; Goebel, Appl. Opt. 6 (1967) 125)",
    compute: (inputs) => orEndless(sphereGain(inputs.number("reflectance"))),
  },
  {
    name: "sphere_multiplier_with_ports",
    inputs: [REFLECTANCE, number("port_fraction", "1", SHARE)],
    unit: "1",
    title: "Multiplier of a matt sphere with black openings",
    source: "M = rho / (1 - rho (1 - f)) (Goebel, Appl. Opt. 6 (1967) 125)",
    compute: (inputs) =>
      orEndless(sphereMultiplier(inputs.number("reflectance"), inputs.number("port_fraction"))),
  },
  {
    name: "sphere_wall_irradiance",
    inputs: [nonNegative("flux_lm", "lm"), positive("radius_m", "m"), REFLECTANCE],
    unit: "lx",
    title: "Mean illuminance on the wall of a closed matt sphere with a lamp in it",
    source: "E = Phi / (4 pi r^2 (1 - rho)) (Walsh, Photometry)",
    compute: (inputs) =>
      orEndless(
        sphereWallIlluminance(
          inputs.number("flux_lm"),
          inputs.number("radius_m"),
          inputs.number("reflectance"),
        ),
      ),
  },
  {
    name: "infinite_parallel_plates_radiosity",
    inputs: [
      nonNegative("exitance1", "lm/m2"),
      number("rho1", "1", SHARE),
      number("rho2", "1", SHARE),
      WHICH,
    ],
    unit: "lm/m2",
    title: "Light leaving one of two endless plates of which the first emits",
    source: "B1 = M / (1 - rho1 rho2), B2 = rho2 B1 (geometric series)",
    compute: (inputs) => plate(inputs, 1),
  },
  {
    name: "finite_parallel_squares_radiosity_constant_patch",
    inputs: [
      nonNegative("exitance1", "lm/m2"),
      number("rho1", "1", SHARE),
      number("rho2", "1", SHARE),
      positive("side_m", "m"),
      positive("gap_m", "m"),
      WHICH,
    ],
    unit: "lm/m2",
    title: "Light leaving one of two facing squares of which the first emits, one patch each",
    source: "B1 = M / (1 - rho1 rho2 F^2), B2 = rho2 F B1, F = Howell C-11",
    compute: (inputs) =>
      plate(
        inputs,
        viewFactorParallel(inputs.number("side_m"), inputs.number("side_m"), inputs.number("gap_m")),
      ),
  },
  {
    name: "cube_radiosity_one_patch_per_face",
    inputs: [nonNegative("exitance", "lm/m2"), REFLECTANCE, text("face", ["emitter", "opposite", "side"])],
    unit: "lm/m2",
    title: "Light leaving a face of a closed cube of which one face emits, one patch a face",
    source: "B_i = M_i + rho sum F_ij B_j with Howell C-11 and C-14",
    compute: (inputs) => {
      const exitance = inputs.number("exitance");
      const reflectance = inputs.number("reflectance");
      const face = inputs.text("face") as keyof CubeFaces;
      const own = face === "emitter" ? exitance : 0;
      return cubeFace(cubeIlluminance(exitance, reflectance, 1), face, (lux) => own + reflectance * lux);
    },
  },
  {
    name: "furnace_test_radiosity",
    inputs: [nonNegative("exitance", "lm/m2"), REFLECTANCE],
    unit: "lm/m2",
    title: "Light leaving every patch of a closed room whose patches all emit and reflect alike",
    source: "B = M / (1 - rho), energy balance",
    compute: (inputs) => {
      const gain = sphereGain(inputs.number("reflectance"));
      return gain === undefined ? none(ENDLESS) : value(inputs.number("exitance") * gain);
    },
  },
  {
    name: "cube_radiosity_converged",
    inputs: [nonNegative("exitance", "lm/m2"), REFLECTANCE, text("where", WHERE)],
    unit: "lx",
    title:
      "Mean illuminance on a face of a closed cube of which one face emits, in the limit of small patches",
    source: "B = M + rho F B on meshes of 6 and 12 patches a side, Richardson; good to 0.1 %",
    compute: (inputs) =>
      cubeFace(
        cubeIlluminanceConverged(inputs.number("exitance"), inputs.number("reflectance")),
        inputs.text("where").replace("mean_irradiance_", "") as keyof CubeFaces,
        (lux) => lux,
      ),
  },
  {
    name: "bounce_from_infinite_floor",
    inputs: [
      nonNegative("floor_lx", "lx"),
      REFLECTANCE,
      number("tilt_deg", "deg", { atLeast: 0, atMost: 180 }),
    ],
    unit: "lx",
    title: "Light from an endless matt floor on a small surface, 0 facing down, 90 upright",
    source: "rho E (1 + cos t) / 2, integral of the cosine over the lower half",
    compute: (inputs) =>
      value(
        bounceFromFloor(
          inputs.number("floor_lx"),
          inputs.number("reflectance"),
          (inputs.number("tilt_deg") * Math.PI) / 180,
        ),
      ),
  },
  {
    name: "bounce_from_reflector_panel",
    inputs: [
      nonNegative("panel_lx", "lx"),
      REFLECTANCE,
      positive("width_m", "m"),
      positive("height_m", "m"),
      positive("distance_m", "m"),
    ],
    unit: "lx",
    title: "Light from an evenly lit matt panel on a small surface that faces its middle",
    source: "E = rho E_panel F, F from four corner factors (Howell B-4)",
    compute: (inputs) =>
      value(
        bounceFromPanel(
          inputs.number("panel_lx"),
          inputs.number("reflectance"),
          inputs.number("width_m"),
          inputs.number("height_m"),
          inputs.number("distance_m"),
        ),
      ),
  },
];
