import { reflectanceFromDensity } from "../../physics/density.js";
import { reflectanceFromLightness } from "../../physics/lightness.js";
import { number, type Quantity, value } from "../quantity.js";

/** Scales on which reflectances are stated. */
export const REFLECTANCE_QUANTITIES: readonly Quantity[] = [
  {
    name: "reflectance_from_Lstar",
    inputs: [number("L_star", "1", { atLeast: 0, atMost: 100 })],
    unit: "1",
    title: "Reflectance of a CIE lightness",
    source: "CIE 15: Y/Yn = ((L* + 16) / 116)^3 for L* > 8, else L* / 903.2963",
    compute: (inputs) => value(reflectanceFromLightness(inputs.number("L_star"))),
  },
  {
    name: "reflectance_from_density",
    inputs: [number("density", "1", { atLeast: 0 })],
    unit: "1",
    title: "Reflectance of a reflection density",
    source: "R = 10^-D (ISO 5-4 reflection density)",
    compute: (inputs) => value(reflectanceFromDensity(inputs.number("density"))),
  },
];
