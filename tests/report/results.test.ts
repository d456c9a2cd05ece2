import { expect, test } from "vitest";
import { compile } from "../../src/compile.js";
import { evaluate } from "../../src/pipeline.js";

const TEXT = `halfshade 1
recipe "The rope maker's walk"
room { size: 5 x 6 x 3 m }
subject { height: 1.7 m }
light key { role: key, shape: disc(40 cm), output: 400 lm s +- 0.2 stop, distance: 1.6 m +- 5 cm, bearing: left(30 deg), elevation: 20 deg }
camera { held: level, focal_length: 85 mm, aperture: f/8, shutter: 1/125 s, sensitivity: ISO 100, distance: 3 m, height: 1.5 m }
`;

test("what an interval would take too long for is given without one, not as exact", () => {
  const { recipe } = compile({ name: "a.light", text: TEXT });
  if (recipe === null) throw new Error("no recipe");
  const { results } = evaluate(recipe).report;
  const outlines = results.filter(({ name }) => name === "separation");
  expect(outlines.length).toBe(3);
  // What is not worked out is not given as exact.
  for (const row of outlines) expect([row.interval, row.shown_interval]).toEqual([null, null]);
  const contrast = results.find(({ name }) => name === "lit_to_shadow");
  const [low, high] = contrast?.interval ?? [0, 0];
  expect(low).toBeLessThan(contrast?.value ?? Number.NaN);
  expect(high).toBeGreaterThan(contrast?.value ?? Number.NaN);
});
