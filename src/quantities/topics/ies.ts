import { beamAngle } from "../../photometry/beam-angle.js";
import { candelaAt } from "../../photometry/candela.js";
import { lumensByZones, totalLumens, zonalLumens } from "../../photometry/flux.js";
import type { Photometry } from "../../photometry/photometry.js";
import { readLm63 } from "../../photometry/read-lm63.js";
import { cosinePowerFlux, lambertianFlux, zonalConstant } from "../../physics/zonal-flux.js";
import {
  file,
  type Inputs,
  impossible,
  none,
  nonNegative,
  number,
  type Outcome,
  optional,
  positive,
  type Quantity,
  value,
} from "../quantity.js";

const RADIANS = Math.PI / 180;

const SOURCE =
  "IES LM-63 file; linear between the angles; multiplier and ballast factors applied, tilt in the position of test";

/** Answers with the table of the input `file`, or says what is wrong with it. */
function fromTable(inputs: Inputs, system: "any" | "C", answer: (table: Photometry) => Outcome): Outcome {
  const { name, text } = inputs.file("file");
  const result = readLm63(text);
  if (result.photometry === null) return impossible(`${name}, line ${result.line}: ${result.problem}`);
  if (system === "C" && result.photometry.system !== "C") {
    return impossible(`${name}: this quantity needs a file of photometric type C, and this one is of type B`);
  }
  return answer(result.photometry);
}

const LOW = number("lo_deg", "deg", { atLeast: 0, atMost: 180 });
const HIGH = number("hi_deg", "deg", { atLeast: 0, atMost: 180 });
const HORIZONTAL = optional(number("horizontal_deg", "deg", { atLeast: -360, atMost: 360 }), 0);

function zone(inputs: Inputs, answer: (low: number, high: number) => number): Outcome {
  const low = inputs.number("lo_deg");
  const high = inputs.number("hi_deg");
  return high < low ? impossible("hi_deg must not be below lo_deg") : value(answer(low, high));
}

/** Photometric files and the flux of simple beams. */
export const IES_QUANTITIES: readonly Quantity[] = [
  {
    name: "ies_total_lumens",
    inputs: [file("file")],
    unit: "lm",
    title: "Luminous flux of a photometric file",
    source: `${SOURCE}; exact integral over the sphere`,
    compute: (inputs) => fromTable(inputs, "any", (table) => value(totalLumens(table))),
  },
  {
    name: "ies_zonal_lumens",
    inputs: [file("file"), LOW, HIGH],
    unit: "lm",
    title: "Luminous flux of a photometric file between two cones around the nadir",
    source: `${SOURCE}; exact integral`,
    compute: (inputs) =>
      fromTable(inputs, "C", (table) => zone(inputs, (low, high) => zonalLumens(table, low, high))),
  },
  {
    name: "ies_total_lumens_by_zonal_constants",
    inputs: [file("file"), number("zone_deg", "deg", { atLeast: 0.01, atMost: 180 })],
    unit: "lm",
    title: "Luminous flux of a photometric file by zonal constants",
    source: "IES Lighting Handbook, zonal-constant method: sum of I(mid-zone) 2 pi (cos t1 - cos t2)",
    compute: (inputs) =>
      fromTable(inputs, "C", (table) => value(lumensByZones(table, inputs.number("zone_deg")))),
  },
  {
    name: "zonal_constant",
    inputs: [LOW, HIGH],
    unit: "sr",
    title: "Solid angle between two cones around the nadir",
    source: "2 pi (cos t1 - cos t2) (IES Lighting Handbook)",
    compute: (inputs) => zone(inputs, (low, high) => zonalConstant(low * RADIANS, high * RADIANS)),
  },
  {
    name: "ies_candela",
    inputs: [file("file"), number("vertical_deg", "deg", { atLeast: -180, atMost: 180 }), HORIZONTAL],
    unit: "cd",
    title: "Intensity of a photometric file in a direction",
    source: `${SOURCE}; mirrored as the horizontal angles of the file demand`,
    compute: (inputs) =>
      fromTable(inputs, "any", (table) =>
        value(candelaAt(table, inputs.number("vertical_deg"), inputs.number("horizontal_deg"))),
      ),
  },
  {
    name: "ies_beam_angle",
    inputs: [file("file"), number("fraction", "1", { above: 0, below: 1 }), HORIZONTAL],
    unit: "deg",
    title: "Full angle at which a beam has fallen to a share of its axial intensity",
    source: `${SOURCE}; 0.5 is the beam angle, 0.1 the field angle`,
    compute: (inputs) =>
      fromTable(inputs, "C", (table) => {
        const angle = beamAngle(table, inputs.number("fraction"), inputs.number("horizontal_deg"));
        return angle === undefined ? none("the file has no intensity along its axis") : value(angle);
      }),
  },
  {
    name: "ies_illuminance_floor",
    inputs: [file("file"), positive("height_m", "m"), nonNegative("offset_m", "m"), HORIZONTAL],
    unit: "lx",
    title: "Illuminance on the floor under a lamp that is aimed straight down",
    source: `${SOURCE}; E = I(theta) cos^3(theta) / h^2`,
    compute: (inputs) =>
      fromTable(inputs, "C", (table) => {
        const height = inputs.number("height_m");
        const offset = inputs.number("offset_m");
        const square = height * height + offset * offset;
        const vertical = Math.atan2(offset, height) / RADIANS;
        const candela = candelaAt(table, vertical, inputs.number("horizontal_deg"));
        return value((candela * height) / (square * Math.sqrt(square)));
      }),
  },
  {
    name: "lambertian_total_lumens",
    inputs: [nonNegative("axial_cd", "cd")],
    unit: "lm",
    title: "Luminous flux of a flat matt source",
    source: "I = I0 cos(theta): Phi = pi I0",
    compute: (inputs) => value(lambertianFlux(inputs.number("axial_cd"))),
  },
  {
    name: "cosine_power_total_lumens",
    inputs: [nonNegative("axial_cd", "cd"), nonNegative("n", "1")],
    unit: "lm",
    title: "Luminous flux of a beam that falls as a power of the cosine",
    source: "I = I0 cos^n(theta): Phi = 2 pi I0 / (n + 1)",
    compute: (inputs) => value(cosinePowerFlux(inputs.number("axial_cd"), inputs.number("n"))),
  },
];
