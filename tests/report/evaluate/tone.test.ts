import { expect, test } from "vitest";
import { run } from "../../../src/pipeline.js";

const recipe = (reflectance: number, asked: string): string => `halfshade 1
recipe "A grey behind a glazier"
subject { height: 1.7 m }
set { flat back { size: 2 x 3 m, at: offset(behind: 2 m), reflectance: ${reflectance} % } }
light key { role: key, shape: disc(18 cm), output: 500 lm s, distance: 2 m, bearing: left(30 deg), elevation: 0 deg }
light wash { role: background, shape: disc(18 cm), output: 500 lm s, position: offset(behind: 10 cm, up: 1.5 m, right: 2.5 m), aim: back }
camera { held: upright, focal_length: 85 mm, aperture: f/8, shutter: 1/125 s, sensitivity: ISO 100, distance: 3 m, height: 1.5 m }
expect stops(back, face.disc(towards: key)) > -9 stop
expect ${asked} > -1
`;

function found(
  reflectance: number,
  asked: string,
): { stops: number; value: number | null; reason: string | null } {
  const { evaluated } = run({ name: "tone.light", text: recipe(reflectance, asked) });
  const [stops, tone] = evaluated?.report.expectations ?? [];
  return { stops: stops?.value ?? Number.NaN, value: tone?.value ?? null, reason: tone?.reason ?? null };
}

test.each([10, 18, 40])(
  "a flat of %d %% is as light and as grey as its share of the face's light makes it",
  (percent) => {
    const { stops, value } = found(percent, "lightness(back)");
    const share = (percent / 100) * Math.pow(2, stops);
    // CIE 15: L* = 116 (Y/Yn)^(1/3) - 16; IEC 61966-2-1: 1.055 c^(1/2.4) - 0.055.
    expect(value).toBeCloseTo(116 * Math.cbrt(share) - 16, 6);
    const grey = found(percent, "srgb(back)").value;
    expect(grey).toBe(Math.round(255 * (1.055 * Math.pow(share, 1 / 2.4) - 0.055)));
  },
);

test("a meter in the air has no tone, and the reason says what is wanted", () => {
  const { value, reason } = found(18, "lightness(face.disc(towards: key))");
  expect(value).toBeNull();
  expect(reason).toContain("a surface is wanted");
});
