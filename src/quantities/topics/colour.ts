import type { Chromaticity } from "../../physics/chromaticity.js";
import { correlatedTemperature } from "../../physics/correlated-temperature.js";
import { daylightChromaticity } from "../../physics/daylight-locus.js";
import { miredFromKelvin, miredShift, shiftedTemperature } from "../../physics/mired.js";
import { PLANCK_RANGE_K, planckChromaticity } from "../../physics/planck.js";
import { planckKang, planckKrystek } from "../../physics/planck-approximations.js";
import { temperatureHernandez, temperatureMcCamy } from "../../physics/temperature-approximations.js";
import { temperatureRobertson } from "../../physics/temperature-robertson.js";
import {
  type InputRange,
  type Inputs,
  none,
  number,
  type Outcome,
  positive,
  type Quantity,
  value,
} from "../quantity.js";

const PLANCK =
  "CIE 15:2018: Planck's law with c2 = 1.4388e-2 m K, CIE 1931 2-degree observer, 1 nm sum 360-830 nm";
const CIE_D = "CIE 15:2018, illuminants D: x as a polynomial in 1/T, y = -3 x^2 + 2.87 x - 0.275";
const KANG = "Kang and others, J. Korean Phys. Soc. 41 (2002) 865: cubic approximation, 1667-25000 K";
const KRYSTEK =
  "Krystek, Color Res. Appl. 10 (1985) 38: rational approximation in CIE 1960 u, v, 1000-15000 K";
const CCT =
  "definition CIE 15: nearest point of the Planckian locus in CIE 1960 u, v, |Duv| <= 0.05; Ohno, Leukos 10 (2014) 47";

const OUT_OF_REACH = "the colour is outside the range of this method";
const NO_TEMPERATURE =
  "no black body from 1000 K to 1000000 K lies within 0.05 of this colour, so that it has no colour temperature";

const XY = [number("x", "1", { atLeast: 0, atMost: 1 }), number("y", "1", { above: 0, atMost: 1 })] as const;

function temperature(least: number, greatest: number) {
  return number("temperature_K", "K", { atLeast: least, atMost: greatest } satisfies InputRange);
}

function colourOf(inputs: Inputs): Chromaticity {
  return { x: inputs.number("x"), y: inputs.number("y") };
}

function orNone(result: number | undefined, reason: string): Outcome {
  return result === undefined ? none(reason) : value(result);
}

/** Two quantities that are the two coordinates of one colour. */
function pair(
  name: string,
  coordinates: readonly [string, string],
  title: string,
  source: string,
  range: readonly [number, number],
  compute: (kelvin: number) => readonly [number, number] | undefined,
): readonly Quantity[] {
  return coordinates.map((coordinate, index) => ({
    name: `${name}_${coordinate}`,
    inputs: [temperature(range[0], range[1])],
    unit: "1",
    title: `${title}, ${coordinate}`,
    source,
    compute: (inputs: Inputs) => orNone(compute(inputs.number("temperature_K"))?.[index], OUT_OF_REACH),
  }));
}

function xyOf(colour: Chromaticity | undefined): readonly [number, number] | undefined {
  return colour === undefined ? undefined : [colour.x, colour.y];
}

/** A quantity that finds a temperature from x and y by a named method. */
function approximation(
  name: string,
  title: string,
  source: string,
  find: (colour: Chromaticity) => number | undefined,
): Quantity {
  return {
    name,
    inputs: XY,
    unit: "K",
    title,
    source,
    compute: (inputs) => orNone(find(colourOf(inputs)), OUT_OF_REACH),
  };
}

/** Colour temperatures and chromaticities. */
export const COLOUR_QUANTITIES: readonly Quantity[] = [
  ...pair(
    "planck",
    ["x", "y"],
    "Chromaticity of a black body",
    PLANCK,
    [PLANCK_RANGE_K.least, PLANCK_RANGE_K.greatest],
    (kelvin) => xyOf(planckChromaticity(kelvin)),
  ),
  ...pair("cie_d", ["x", "y"], "Chromaticity of a CIE daylight illuminant", CIE_D, [4000, 25_000], (kelvin) =>
    xyOf(daylightChromaticity(kelvin)),
  ),
  ...pair(
    "planck_kang2002",
    ["x", "y"],
    "Chromaticity of a black body by a cubic approximation",
    KANG,
    [1667, 25_000],
    (kelvin) => xyOf(planckKang(kelvin)),
  ),
  ...pair(
    "planck_krystek1985",
    ["u", "v"],
    "Chromaticity of a black body by a rational approximation",
    KRYSTEK,
    [1000, 15_000],
    (kelvin) => {
      const colour = planckKrystek(kelvin);
      return colour === undefined ? undefined : [colour.u, colour.v];
    },
  ),
  {
    name: "mired",
    inputs: [positive("temperature_K", "K")],
    unit: "MK^-1",
    title: "Reciprocal colour temperature",
    source: "M = 1e6 / T",
    compute: (inputs) => value(miredFromKelvin(inputs.number("temperature_K"))),
  },
  {
    name: "mired_shift",
    inputs: [positive("from_K", "K"), positive("to_K", "K")],
    unit: "MK^-1",
    title: "Shift between two colour temperatures, negative towards blue",
    source: "1e6 / T2 - 1e6 / T1",
    compute: (inputs) => value(miredShift(inputs.number("from_K"), inputs.number("to_K"))),
  },
  {
    name: "temperature_after_mired_shift",
    inputs: [positive("from_K", "K"), number("shift_mired", "MK^-1")],
    unit: "K",
    title: "Colour temperature behind a filter",
    source: "T2 = 1e6 / (1e6 / T1 + shift)",
    compute: (inputs) =>
      orNone(
        shiftedTemperature(inputs.number("from_K"), inputs.number("shift_mired")),
        "the shift goes past an infinite colour temperature",
      ),
  },
  {
    name: "cct_exact",
    inputs: XY,
    unit: "K",
    title: "Correlated colour temperature by its definition",
    source: CCT,
    compute: (inputs) => orNone(correlatedTemperature(colourOf(inputs))?.kelvin, NO_TEMPERATURE),
  },
  {
    name: "duv_exact",
    inputs: XY,
    unit: "1",
    title: "Distance from the Planckian locus, + above it (greenish)",
    source: `${CCT}; sign ANSI C78.377`,
    compute: (inputs) => orNone(correlatedTemperature(colourOf(inputs))?.duv, NO_TEMPERATURE),
  },
  approximation(
    "cct_mccamy1992",
    "Correlated colour temperature by a cubic approximation",
    "McCamy, Color Res. Appl. 17 (1992) 142",
    temperatureMcCamy,
  ),
  approximation(
    "cct_hernandez1999",
    "Correlated colour temperature by sums of exponentials",
    "Hernandez-Andres, Lee and Romero, Appl. Opt. 38 (1999) 5703",
    temperatureHernandez,
  ),
  approximation(
    "cct_robertson1968",
    "Correlated colour temperature by isotemperature lines",
    "Robertson, J. Opt. Soc. Am. 58 (1968) 1528; table in Wyszecki and Stiles (2000), 1(3.11)",
    temperatureRobertson,
  ),
];
