import { fNumberOfThirds } from "../../physics/aperture-scale.js";
import {
  stopsBetweenFNumbers,
  stopsBetweenIso,
  stopsBetweenTimes,
  stopsFromGrey,
  stopsOfDensity,
  stopsOfPops,
  stopsOfPower,
  stopsOfTransmittance,
  sumOfFNumbers,
} from "../../physics/stops.js";
import { formula, partialFormula } from "../formula.js";
import { none, nonNegative, number, numbers, positive, type Quantity, value } from "../quantity.js";

/** Counting in stops. */
export const STOPS_QUANTITIES: readonly Quantity[] = [
  formula(
    {
      name: "stops_between_f_numbers",
      inputs: [positive("n1", "f"), positive("n2", "f")],
      unit: "stop",
      title: "Stops from the first f-number to the second; + is less light",
      source: "2 log2(N2 / N1)",
    },
    (get) => stopsBetweenFNumbers(get("n1"), get("n2")),
  ),
  formula(
    {
      name: "stops_between_times",
      inputs: [positive("t1_s", "s"), positive("t2_s", "s")],
      unit: "stop",
      title: "Stops from the first time to the second; + is more light",
      source: "log2(t2 / t1)",
    },
    (get) => stopsBetweenTimes(get("t1_s"), get("t2_s")),
  ),
  formula(
    {
      name: "stops_between_iso",
      inputs: [positive("iso1", "ISO"), positive("iso2", "ISO")],
      unit: "stop",
      title: "Stops from the first speed to the second; + is brighter",
      source: "log2(S2 / S1)",
    },
    (get) => stopsBetweenIso(get("iso1"), get("iso2")),
  ),
  partialFormula(
    {
      name: "exact_f_number_of_step",
      inputs: [number("thirds", "1")],
      unit: "1",
      title: "Exact f-number so many thirds of a stop from f/1",
      source: "N = 2^(k / 6)",
    },
    (get) => fNumberOfThirds(get("thirds")),
    none("the f-number is beyond the range of numbers"),
  ),
  formula(
    {
      name: "nd_density_to_stops",
      inputs: [nonNegative("density", "1")],
      unit: "stop",
      title: "Stops that a filter of an optical density takes",
      source: "D log2(10), D = -log10(T); ISO 5",
    },
    (get) => stopsOfDensity(get("density")),
  ),
  formula(
    {
      name: "transmittance_to_stops",
      inputs: [number("transmittance", "1", { above: 0, atMost: 1 })],
      unit: "stop",
      title: "Stops that a transmittance takes",
      source: "-log2(T)",
    },
    (get) => Math.abs(stopsOfTransmittance(get("transmittance"))),
  ),
  formula(
    {
      name: "stops_for_pops",
      inputs: [number("pops", "1", { atLeast: 1, whole: true })],
      unit: "stop",
      title: "Stops gained by equal flashes on one frame",
      source: "log2(n)",
    },
    (get) => stopsOfPops(get("pops")),
  ),
  formula(
    {
      name: "power_fraction_to_stops",
      inputs: [positive("fraction", "1")],
      unit: "stop",
      title: "Stops of a share of full power; - is less light",
      source: "log2(fraction)",
    },
    (get) => stopsOfPower(get("fraction")),
  ),
  {
    name: "sum_of_lights_in_f_number",
    inputs: [numbers("f_numbers", "f", { above: 0 })],
    unit: "1",
    title: "f-number of several lights together, each by its own f-number",
    source: "exposures add: N = sqrt(sum N_i^2)",
    compute: (inputs) => value(sumOfFNumbers(inputs.numbers("f_numbers"))),
  },
  formula(
    {
      name: "reflectance_stops_from_grey",
      inputs: [number("reflectance", "1", { above: 0, atMost: 1 })],
      unit: "stop",
      title: "Stops of a reflectance from the 18 % grey card",
      source: "log2(rho / 0.18); the card's 18 % is common practice, no source",
    },
    (get) => stopsFromGrey(get("reflectance")),
  ),
];
