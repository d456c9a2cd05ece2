import { brewsterAngle, fresnelReflectance, type Polarisation } from "../../physics/fresnel.js";
import { number, optional, positive, type Quantity, text, value } from "../quantity.js";

const SOURCE = "Fresnel equations (Born and Wolf, Principles of Optics); clear body, n relative to air";

/** What a smooth clear surface mirrors. */
export const FRESNEL_QUANTITIES: readonly Quantity[] = [
  {
    name: "fresnel_reflectance",
    inputs: [
      positive("n", "1"),
      number("incidence_deg", "deg", { atLeast: 0, atMost: 90 }),
      optional(text("polarisation", ["u", "s", "p"]), "u"),
    ],
    unit: "1",
    title: "Share of light that a smooth clear surface mirrors",
    source: SOURCE,
    compute: (inputs) =>
      value(
        fresnelReflectance(
          inputs.number("n"),
          (inputs.number("incidence_deg") * Math.PI) / 180,
          inputs.text("polarisation") as Polarisation,
        ),
      ),
  },
  {
    name: "brewster_angle",
    inputs: [positive("n", "1")],
    unit: "deg",
    title: "Angle at which a mirrored picture is fully polarised",
    source: `atan(n); ${SOURCE}`,
    compute: (inputs) => value((brewsterAngle(inputs.number("n")) * 180) / Math.PI),
  },
];
