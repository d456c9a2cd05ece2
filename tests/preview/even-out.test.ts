import { expect, test } from "vitest";
import { evenOut, foretell, type Sample } from "../../src/preview/even-out.js";
import { SEEN, type View } from "../../src/preview/view.js";

/** A picture of one wall. */
const wall = (width: number, height: number): View => {
  const data = new Float64Array(SEEN * width * height);
  for (let pixel = 0; pixel < width * height; pixel++) data[SEEN * pixel + 4] = -1;
  return {
    width,
    height,
    side: new Int32Array(width * height).fill(1),
    reflectance: new Float32Array(width * height).fill(0.5),
    data,
    way: new Float64Array(width * height).fill(3),
  };
};

const samplesOf = (view: View, step: number, light: (x: number, y: number) => number): Sample[] => {
  const samples: Sample[] = [];
  for (let row = step / 2; row < view.height; row += step)
    for (let column = step / 2; column < view.width; column += step)
      samples.push({ row, column, pixel: row * view.width + column, light: light(column, row) });
  return samples;
};

test("light that lies on one slope over a wall is told to its edges, and an even one everywhere", () => {
  const view = wall(80, 60);
  for (const light of [(x: number, y: number) => 100 + 0.3 * x - 0.2 * y, () => 70]) {
    const samples = samplesOf(view, 10, light);
    const exposure = new Float64Array(80 * 60).fill(5);
    evenOut(view, 1, new Map([[1, samples]]), 10, exposure);
    let worst = 0;
    exposure.forEach((found, pixel) => {
      const row = Math.floor(pixel / 80);
      worst = Math.max(worst, Math.abs(found - 5 - light(pixel - 80 * row, row)));
    });
    // The ridge makes slopes a little flatter: the light falls by 36 over the picture.
    expect(worst).toBeLessThan(1.2);
  }
});

test("a sample that the others do not foretell is told from them alone when it is left out", () => {
  const view = wall(80, 60);
  const samples = samplesOf(view, 10, () => 40);
  const odd = samples.map((sample, i) => (i === 19 ? { ...sample, light: 80 } : sample));
  const { pixel } = odd[19] as Sample;
  expect(foretell(view, true, pixel, odd, 10, 19)).toBeCloseTo(40, 6);
  expect(foretell(view, true, pixel, odd, 10, -1)).toBeGreaterThan(70);
});
