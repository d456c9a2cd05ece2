import { daysSinceJ2000 } from "../../core/utc.js";
import { groundShadowLength } from "../../physics/ground-shadow.js";
import { sunDistance, sunPosition } from "../../physics/sun-position.js";
import { sunAngularDiameter } from "../../physics/sun-size.js";
import {
  type Inputs,
  impossible,
  none,
  nonNegative,
  number,
  type Outcome,
  type Quantity,
  text,
  value,
} from "../quantity.js";

const DEGREES = 180 / Math.PI;

const EPHEMERIS = "VSOP87-based ephemeris, equator of date with aberration, observer at 0 m";

/** Answers with the days of the input `utc`, or says what is wrong with it. */
function atInstant(inputs: Inputs, answer: (days: number) => Outcome): Outcome {
  const days = daysSinceJ2000(inputs.text("utc"));
  return days === undefined
    ? impossible("utc must be a date and time with its offset, like 2026-06-21T12:00:00Z")
    : answer(days);
}

const PLACE = [
  text("utc"),
  number("lat_deg", "deg", { atLeast: -90, atMost: 90 }),
  number("lon_deg", "deg", { atLeast: -180, atMost: 180 }),
] as const;

function size(distanceAu: number): Outcome {
  const angle = sunAngularDiameter(distanceAu);
  return angle === undefined ? impossible("distance_au is inside the sun") : value(angle * DEGREES);
}

/** The sun's size and place in the sky, and the shadows it throws. */
export const SUN_QUANTITIES: readonly Quantity[] = [
  {
    name: "sun_angular_diameter_from_distance_au",
    inputs: [number("distance_au", "au", { above: 0 })],
    unit: "deg",
    title: "Angle under which the sun's disc is seen from a distance",
    source: "theta = 2 asin(Rs / r); IAU 2015 Resolution B3 (Rs = 695700 km), IAU 2012 Resolution B2 (au)",
    compute: (inputs) => size(inputs.number("distance_au")),
  },
  {
    name: "sun_angular_diameter_at_date",
    inputs: [text("utc")],
    unit: "deg",
    title: "Angle under which the sun's disc is seen from the earth's centre at an instant",
    source: `${EPHEMERIS}; IAU radius`,
    compute: (inputs) => atInstant(inputs, (days) => size(sunDistance(days))),
  },
  {
    name: "sun_altitude_geometric",
    inputs: PLACE,
    unit: "deg",
    title: "Altitude of the sun's centre without refraction",
    source: EPHEMERIS,
    compute: (inputs) =>
      atInstant(inputs, (days) =>
        value(sunPosition(days, inputs.number("lat_deg"), inputs.number("lon_deg")).altitude * DEGREES),
      ),
  },
  {
    name: "sun_azimuth_from_north_clockwise",
    inputs: PLACE,
    unit: "deg",
    title: "Direction of the sun along the horizon, from north over east",
    source: EPHEMERIS,
    compute: (inputs) =>
      atInstant(inputs, (days) =>
        value(sunPosition(days, inputs.number("lat_deg"), inputs.number("lon_deg")).azimuth * DEGREES),
      ),
  },
  {
    name: "sun_altitude_apparent_refracted",
    inputs: PLACE,
    unit: "deg",
    title: "Altitude of the sun's centre as it is seen through a standard atmosphere",
    source: `${EPHEMERIS}; standard refraction`,
    compute: (inputs) =>
      atInstant(inputs, (days) =>
        value(
          sunPosition(days, inputs.number("lat_deg"), inputs.number("lon_deg")).apparentAltitude * DEGREES,
        ),
      ),
  },
  {
    name: "shadow_length_on_level_ground",
    inputs: [nonNegative("height_m", "m"), number("sun_altitude_deg", "deg", { atLeast: 0, atMost: 90 })],
    unit: "m",
    title: "Length of the shadow of an upright object on level ground",
    source: "h / tan(altitude), plane geometry",
    compute: (inputs) => {
      const length = groundShadowLength(
        inputs.number("height_m"),
        inputs.number("sun_altitude_deg") / DEGREES,
      );
      return length === undefined
        ? none("the sun is on the horizon and the shadow has no end")
        : value(length);
    },
  },
];
