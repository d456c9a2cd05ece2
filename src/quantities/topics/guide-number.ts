import {
  combinedGuideNumber,
  guideNumberAtPower,
  guideNumberDistance,
  guideNumberFNumber,
  guideNumberFromIntensity,
  guideNumberInFeet,
} from "../../physics/guide-number.js";
import { formula } from "../formula.js";
import { nonNegative, numbers, optional, positive, type Quantity, value } from "../quantity.js";

const GUIDE_NUMBER =
  "GN = N d at ISO 100 in metres, ISO 1230:1992; it grows with the root of speed and energy";

const gn = positive("gn_iso100_m", "m");
const iso = positive("iso", "ISO");

/** Guide numbers of flashes. */
export const GUIDE_NUMBER_QUANTITIES: readonly Quantity[] = [
  formula(
    {
      name: "guide_number_f_number",
      inputs: [gn, iso, positive("distance_m", "m")],
      unit: "1",
      title: "f-number at a distance from a guide number",
      source: GUIDE_NUMBER,
    },
    (get) => guideNumberFNumber(get("gn_iso100_m"), get("iso"), get("distance_m")),
  ),
  formula(
    {
      name: "guide_number_distance",
      inputs: [gn, iso, positive("f_number", "f")],
      unit: "m",
      title: "Distance at which a guide number gives an f-number",
      source: GUIDE_NUMBER,
    },
    (get) => guideNumberDistance(get("gn_iso100_m"), get("iso"), get("f_number")),
  ),
  formula(
    {
      name: "guide_number_at_power_fraction",
      inputs: [gn, positive("power_fraction", "1")],
      unit: "m",
      title: "Guide number at a share of full power",
      source: GUIDE_NUMBER,
    },
    (get) => guideNumberAtPower(get("gn_iso100_m"), get("power_fraction")),
  ),
  formula(
    {
      name: "guide_number_metres_to_feet",
      inputs: [nonNegative("gn_m", "m")],
      unit: "ft",
      title: "A guide number in feet",
      source: "1 ft = 0.3048 m",
    },
    (get) => guideNumberInFeet(get("gn_m")),
  ),
  {
    name: "guide_number_combined",
    inputs: [numbers("gns_m", "m", { atLeast: 0 })],
    unit: "m",
    title: "Guide number of several flashes side by side",
    source: "luminous exposures add: GN = sqrt(sum GN_i^2)",
    compute: (inputs) => value(combinedGuideNumber(inputs.numbers("gns_m"))),
  },
  formula(
    {
      name: "guide_number_from_axial_candela_seconds",
      inputs: [nonNegative("axial_cds", "cd s"), iso, optional(positive("C", "lx s"), 250)],
      unit: "m",
      title: "Guide number from the intensity on the axis over the flash",
      source: "GN = sqrt(Q S / C), from H = Q / d^2 and N^2 = H S / C",
    },
    (get) => guideNumberFromIntensity(get("axial_cds"), get("iso"), get("C")),
  ),
];
