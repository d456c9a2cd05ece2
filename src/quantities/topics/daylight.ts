import { relativeAirMass } from "../../physics/air-mass.js";
import { footcandlesFromLux } from "../../physics/footcandle.js";
import { overcastThroughWindow } from "../../physics/overcast-window.js";
import { overcastSkyIlluminance } from "../../physics/sky-illuminance.js";
import { curvedAirSun, directHorizontalSun, directNormalSun } from "../../physics/sun-illuminance.js";
import { none, nonNegative, number, positive, type Quantity, value } from "../quantity.js";

const RADIANS = Math.PI / 180;

const SOURCE =
  "IES Lighting Handbook; IES RP-21 (J. IES 13:4 (1984) 381): Ext = 127.5 klx (1 + 0.034 cos(2 pi (J - 2) / 365)), " +
  "Edn = Ext exp(-c / sin alt), c = 0.21 clear, 0.80 partly cloudy";

const AIR =
  "Kasten and Young, Appl. Opt. 28 (1989) 4735: m = 1 / (sin h + 0.50572 (h + 6.07995)^-1.6364), h in degrees as seen";

const INPUTS = [
  number("day_of_year", "1", { atLeast: 1, atMost: 366 }),
  number("sun_altitude_deg", "deg", { atLeast: -90, atMost: 90 }),
  nonNegative("c", "1"),
] as const;

/** What a formula gives for the sun of a day, in klx. */
const klxBy =
  (lux: (day: number, altitude: number, c: number) => number): Quantity["compute"] =>
  (inputs) =>
    value(
      lux(inputs.number("day_of_year"), inputs.number("sun_altitude_deg") * RADIANS, inputs.number("c")) /
        1000,
    );

/** Light from the sun on a clear or partly cloudy day, and from an overcast sky. */
export const DAYLIGHT_QUANTITIES: readonly Quantity[] = [
  {
    name: "sun_direct_normal_illuminance",
    inputs: INPUTS,
    unit: "klx",
    title: "Direct sunlight on a plane square to the sun",
    source: SOURCE,
    compute: klxBy(directNormalSun),
  },
  {
    name: "sun_direct_horizontal_illuminance",
    inputs: INPUTS,
    unit: "klx",
    title: "Direct sunlight on level ground",
    source: `${SOURCE}; Edh = Edn sin alt`,
    compute: klxBy(directHorizontalSun),
  },
  {
    name: "relative_air_mass",
    inputs: [number("sun_altitude_deg", "deg", { atLeast: -90, atMost: 90 })],
    unit: "1",
    title: "Air in the way of sunlight, over what lies overhead",
    source: AIR,
    compute: (inputs) => {
      const air = relativeAirMass(inputs.number("sun_altitude_deg") * RADIANS);
      return air === undefined ? none("the sun is below the horizon") : value(air);
    },
  },
  {
    name: "sun_direct_normal_illuminance_curved_air",
    inputs: INPUTS,
    unit: "klx",
    title: "Direct sunlight on a plane square to the sun, a low sun too",
    source: `${SOURCE}, with m for 1 / sin alt; ${AIR}`,
    compute: klxBy(curvedAirSun),
  },
  {
    name: "overcast_sky_level_illuminance",
    inputs: [number("sun_altitude_deg", "deg", { atLeast: -90, atMost: 90 })],
    unit: "klx",
    title: "Light of an overcast sky on open level ground",
    source: "IES RP-21 (J. IES 13:4 (1984) 381), from memory: 0.3 + 21 sin alt klx",
    compute: (inputs) => value(overcastSkyIlluminance(inputs.number("sun_altitude_deg") * RADIANS) / 1000),
  },
  {
    name: "overcast_window_illuminance",
    inputs: [
      nonNegative("level_illuminance_lx", "lx"),
      positive("width_m", "m"),
      positive("height_m", "m"),
      positive("distance_m", "m"),
      number("ground", "1", { atLeast: 0, atMost: 1 }),
      number("transmittance", "1", { atLeast: 0, atMost: 1 }),
    ],
    unit: "lx",
    title: "Light of an overcast sky through a window on a plane straight opposite",
    source:
      "CIE standard overcast sky (ISO 15469): L = (3 / (7 pi)) E (1 + 2 sin e) above, ground E / pi below; integrated over the window",
    compute: (inputs) =>
      value(
        inputs.number("level_illuminance_lx") *
          inputs.number("transmittance") *
          overcastThroughWindow({
            width: inputs.number("width_m"),
            height: inputs.number("height_m"),
            distance: inputs.number("distance_m"),
            ground: inputs.number("ground"),
          }),
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
