import type { Chromaticity } from "../../physics/chromaticity.js";
import { type ColouredLight, mixLights } from "../../physics/colour-mixture.js";
import { correlatedTemperature } from "../../physics/correlated-temperature.js";
import { daylightChromaticity } from "../../physics/daylight-locus.js";
import { PLANCK_RANGE_K, planckChromaticity } from "../../physics/planck.js";
import { type Inputs, impossible, json, none, type Outcome, type Quantity, value } from "../quantity.js";

const SOURCE = "CIE 15: tristimulus values add; weights are the illuminances";

const SHAPE =
  'lights must be a list of lights, each like ["planck", 3200, 500] or ["cie_d", 5600, 500]: kind, kelvin, lux';

/** Most lights of one mixture; far more than a set has. */
const MOST_LIGHTS = 1000;

/** The lights of the input `lights`, or what is wrong with it. */
function readLights(given: unknown): readonly ColouredLight[] | string {
  if (!Array.isArray(given) || given.length === 0 || given.length > MOST_LIGHTS) return SHAPE;
  const lights: ColouredLight[] = [];
  for (const each of given as readonly unknown[]) {
    if (!Array.isArray(each) || each.length !== 3) return SHAPE;
    const [kind, kelvin, lux] = each as readonly unknown[];
    if (typeof kelvin !== "number" || typeof lux !== "number") return SHAPE;
    if (!(lux >= 0 && lux <= 1e12)) return "each light of lights needs an illuminance from 0 lx to 1e12 lx";
    const colour = colourOf(kind, kelvin);
    if (typeof colour === "string") return colour;
    lights.push({ colour, amount: lux });
  }
  return lights;
}

function colourOf(kind: unknown, kelvin: number): Chromaticity | string {
  if (kind === "planck") {
    const { least, greatest } = PLANCK_RANGE_K;
    if (!(kelvin >= least && kelvin <= greatest)) return `a planck light needs ${least} K to ${greatest} K`;
    return planckChromaticity(kelvin);
  }
  if (kind === "cie_d") return daylightChromaticity(kelvin) ?? "a cie_d light needs 4000 K to 25000 K";
  return SHAPE;
}

function mixed(inputs: Inputs, answer: (colour: Chromaticity) => Outcome): Outcome {
  const lights = readLights(inputs.json("lights"));
  if (typeof lights === "string") return impossible(lights);
  const colour = mixLights(lights);
  return colour === undefined ? none("no light arrives, so that there is no colour") : answer(colour);
}

function temperatureOf(colour: Chromaticity, part: "kelvin" | "duv"): Outcome {
  const found = correlatedTemperature(colour);
  return found === undefined ? none("the mixture is too far from any black body") : value(found[part]);
}

/** Mixtures of lights of several colours. */
export const MIX_QUANTITIES: readonly Quantity[] = [
  {
    name: "mix_x",
    inputs: [json("lights")],
    unit: "1",
    title: "Chromaticity of a mixture of lights, x",
    source: SOURCE,
    compute: (inputs) => mixed(inputs, (colour) => value(colour.x)),
  },
  {
    name: "mix_y",
    inputs: [json("lights")],
    unit: "1",
    title: "Chromaticity of a mixture of lights, y",
    source: SOURCE,
    compute: (inputs) => mixed(inputs, (colour) => value(colour.y)),
  },
  {
    name: "mix_cct",
    inputs: [json("lights")],
    unit: "K",
    title: "Correlated colour temperature of a mixture of lights",
    source: `${SOURCE}; temperature by its definition`,
    compute: (inputs) => mixed(inputs, (colour) => temperatureOf(colour, "kelvin")),
  },
  {
    name: "mix_duv",
    inputs: [json("lights")],
    unit: "1",
    title: "Distance of a mixture of lights from the Planckian locus",
    source: `${SOURCE}; sign ANSI C78.377`,
    compute: (inputs) => mixed(inputs, (colour) => temperatureOf(colour, "duv")),
  },
];
