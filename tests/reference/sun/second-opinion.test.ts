import { getPosition } from "suncalc";
import { expect, test } from "vitest";
import { sunPosition } from "../../../src/physics/sun-position.js";

const DEGREES = 180 / Math.PI;

const PLACES = [
  [51.5, -0.1],
  [-33.87, 151.21],
  [1.35, 103.8],
  [64.1, -21.9],
] as const;

/** Days from 2000-01-01T12:00:00Z to the start of 2026. */
const START = 9496.5;

test.each(PLACES)(
  "a year of hours at latitude %d, longitude %d against another program",
  (latitude, longitude) => {
    let hours = 0;
    for (let i = 0; i < 365; i += 1) {
      for (let hour = 0; hour < 24; hour += 3) {
        const days = START + i + (hour + 0.37) / 24;
        const ours = sunPosition(days, latitude, longitude);
        if (ours.altitude < 0) continue;
        const theirs = getPosition(
          new Date(Date.UTC(2000, 0, 1, 12) + days * 86_400_000),
          latitude,
          longitude,
        );
        // That program answers with the refracted altitude. Measured: within 0.09 degree by day, because it models
        // refraction more simply near the horizon; 0.03 degree of azimuth except close to the zenith.
        expect(Math.abs(ours.apparentAltitude * DEGREES - theirs.altitude)).toBeLessThan(0.1);
        const turn = ours.azimuth * DEGREES - theirs.azimuth;
        const off = Math.abs(turn - 360 * Math.round(turn / 360)) * Math.cos(ours.altitude);
        expect(off).toBeLessThan(0.03);
        hours += 1;
      }
    }
    expect(hours).toBeGreaterThan(1200);
  },
);
