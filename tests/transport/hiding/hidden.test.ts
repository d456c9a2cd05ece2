import { ClipType, FillRule, PathType } from "clipper2-ts/dist/Core.js";
import { Clipper64 } from "clipper2-ts/dist/Engine.js";
import { describe, expect, test } from "vitest";
import { emptyScratch } from "../../../src/transport/hiding/edge-lines.js";
import { type HiddenWork, hideBy } from "../../../src/transport/hiding/hidden.js";
import { addPolygon, emptyRegion, type Region } from "../../../src/transport/hiding/region.js";
import { randomFrom } from "../../helpers/random.js";

const workOf = (): HiddenWork => ({
  hidden: emptyRegion(),
  part: emptyRegion(),
  next: emptyRegion(),
  boxes: new Float64Array(8),
  scratch: emptyScratch(),
});

const regionOf = (polygons: readonly (readonly number[])[]): Region => {
  const region = emptyRegion();
  for (const polygon of polygons) addPolygon(region, polygon);
  return region;
};

const polygonsOf = ({ data, ends, count }: Region): readonly number[][] =>
  Array.from({ length: count }, (_, i) =>
    Array.from(data.slice(i === 0 ? 0 : (ends[i - 1] as number), ends[i] as number)),
  );

function areaOf(p: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i < p.length; i += 2) {
    const j = (i + 2) % p.length;
    sum += (p[i] as number) * (p[j + 1] as number) - (p[j] as number) * (p[i + 1] as number);
  }
  return sum / 2;
}

/** A polygon of some corners on an ellipse, turned. */
function ellipse(random: () => number, corners: number, reach: number): readonly number[] {
  const [u, v] = [3 * random() - 1.5, 3 * random() - 1.5];
  const [a, b, turn] = [0.1 + reach * random(), 0.1 + reach * random(), Math.PI * random()];
  return Array.from({ length: corners }, (_, i) => {
    const t = (2 * Math.PI * i) / corners;
    const [x, y] = [a * Math.cos(t), b * Math.sin(t)];
    return [u + x * Math.cos(turn) - y * Math.sin(turn), v + x * Math.sin(turn) + y * Math.cos(turn)];
  }).flat();
}

/** The area of a light that lies in any of some holes, by a general library for polygons. */
const FINE = 1e7;
function unionInLight(light: readonly number[], holes: readonly (readonly number[])[]): number {
  const path = (p: readonly number[]) =>
    Array.from({ length: p.length / 2 }, (_, i) => ({
      x: Math.round(FINE * (p[2 * i] as number)),
      y: Math.round(FINE * (p[2 * i + 1] as number)),
    }));
  const clipper = new Clipper64();
  clipper.addPaths([path(light)], PathType.Clip);
  clipper.addPaths(holes.map(path), PathType.Subject);
  const found: { x: number; y: number }[][] = [];
  clipper.execute(ClipType.Intersection, FillRule.NonZero, found);
  return found.reduce((sum, p) => sum + areaOf(p.flatMap(({ x, y }) => [x / FINE, y / FINE])), 0);
}

describe("what holes take of a light", () => {
  test("has the area that a general polygon library finds for their union within it", () => {
    const random = randomFrom(31);
    let shared = 0;
    for (let i = 0; i < 300; i++) {
      const light = ellipse(random, i % 2 === 0 ? 24 : 4, 1.5);
      const holes = Array.from({ length: 1 + (i % 6) }, (_, k) => ellipse(random, k % 3 === 0 ? 4 : 20, 2));
      const expected = unionInLight(light, holes);
      const work = workOf();
      const all = hideBy(regionOf([light]), regionOf(holes), work);
      const hidden = all ? areaOf(light) : polygonsOf(work.hidden).reduce((sum, p) => sum + areaOf(p), 0);
      expect(Math.abs(hidden - expected), `case ${i}`).toBeLessThan(1e-5);
      for (const piece of polygonsOf(work.hidden)) expect(areaOf(piece)).toBeGreaterThanOrEqual(0);
      if (work.hidden.count > 2) shared++;
    }
    // Many cases are in pieces, so that overlaps are tried.
    expect(shared).toBeGreaterThan(60);
  });

  test("is all of it where one hole covers it, and nothing where none meets it", () => {
    const light = [0, 0, 1, 0, 1, 1, 0, 1];
    const cover = [-1, -1, 3, -1, 3, 3, -1, 3];
    const beside = [2, 0, 3, 0, 3, 1, 2, 1];
    // Its box meets the light's, it does not.
    const past = [1.9, 0.2, 1.9, 1.9, 0.2, 1.9];
    const work = workOf();
    expect(hideBy(regionOf([light]), regionOf([beside, cover]), work)).toBe(true);
    expect(hideBy(regionOf([light]), regionOf([beside, past]), work)).toBe(false);
    expect(work.hidden.count).toBe(0);
  });

  test("counts a hole in the shade of another once", () => {
    const light = [0, 0, 4, 0, 4, 4, 0, 4];
    const large = [1, 1, 3, 1, 3, 3, 1, 3];
    const small = [1.5, 1.5, 2, 1.5, 2, 2, 1.5, 2];
    for (const holes of [
      [large, small],
      [small, large],
      [large, large, small],
    ]) {
      const work = workOf();
      hideBy(regionOf([light]), regionOf(holes), work);
      expect(polygonsOf(work.hidden).reduce((sum, p) => sum + areaOf(p), 0)).toBeCloseTo(4, 12);
    }
  });
});
