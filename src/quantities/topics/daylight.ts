import { footcandlesFromLux } from "../../physics/footcandle.js";
import { directHorizontalSun, directNormalSun } from "../../physics/sun-illuminance.js";
import { nonNegative, number, type Quantity, value } from "../quantity.js";

const RADIANS = Math.PI / 180;

const SOURCE =
  "IES Lighting Handbook; IES RP-21 (J. IES 13:4 (1984) 381): Ext = 127.5 klx (1 + 0.034 cos(2 pi (J - 2) / 365)), " +
  "Edn = Ext exp(-c / sin alt), c = 0.21 clear, 0.80 partly cloudy";

const INPUTS = [
  number("day_of_year", "1", { atLeast: 1, atMost: 366 }),
  number("sun_altitude_deg", "deg", { atLeast: -90, atMost: 90 }),
  nonNegative("c", "1"),
] as const;

/** Light from the sun on a clear or partly cloudy day. */
export const DAYLIGHT_QUANTITIES: readonly Quantity[] = [
  {
    name: "sun_direct_normal_illuminance",
    inputs: INPUTS,
    unit: "klx",
    title: "Direct sunlight on a plane square to the sun",
    source: SOURCE,
    compute: (inputs) =>
      value(
        directNormalSun(
          inputs.number("day_of_year"),
          inputs.number("sun_altitude_deg") * RADIANS,
          inputs.number("c"),
        ) / 1000,
      ),
  },
  {
    name: "sun_direct_horizontal_illuminance",
    inputs: INPUTS,
    unit: "klx",
    title: "Direct sunlight on level ground",
    source: `${SOURCE}; Edh = Edn sin alt`,
    compute: (inputs) =>
      value(
        directHorizontalSun(
          inputs.number("day_of_year"),
          inputs.number("sun_altitude_deg") * RADIANS,
          inputs.number("c"),
        ) / 1000,
      ),
  },
  {
    name: "illuminance_lux_to_footcandle",
    inputs: [nonNegative("illuminance_lx", "lx")],
    unit: "fc",
    title: "Illuminance in footcandles",
    source: "1 fc = 1 lm/ft^2, 1 ft = 0.3048 m exactly",
    compute: (inputs) => value(footcandlesFromLux(inputs.number("illuminance_lx"))),
  },
];
