import { describe, expect, test } from "vitest";
import type { Vec3 } from "../../src/core/vector.js";
import { gaussLegendre } from "../../src/math/quadrature.js";
import { cross, dot } from "../../src/math/vector.js";
import type { Scene, Source } from "../../src/scene/types.js";
import { type LightField, lightField } from "../../src/transport/light-field.js";
import { sceneLight } from "../../src/transport/scene-light.js";
import { bareScene, closedRoom, discAt, faces, type Six, sheet } from "../helpers/closed-room.js";
import { mustBreak } from "../helpers/must-break.js";
import { readRows } from "../helpers/reference-rows.js";
import { sourceOf } from "../helpers/sources.js";

/**
 * Published and worked values of light in rooms and between plates, through the light of whole scenes. Sources stand in
 * tests/reference/cavity: Walsh; Goebel, Appl. Opt. 6 (1967) 125; Howell B-4, C-11 and C-14; energy balance. Rows for
 * spheres hold for a box of equal reflectances too, as means over its walls: what comes from the lamp is absorbed,
 * E A (1 - rho) = Phi, whatever the shape.
 */
const rows = readRows("cavity");
const rowsOf = (quantity: string) => {
  const found = rows.filter((row) => row.quantity === quantity);
  if (found.length === 0) throw new Error(`no row of ${quantity}`);
  return found;
};
/** A number that a row gives. */
const given = (row: (typeof rows)[number], name: string): number => {
  const value = row.inputs.get(name);
  if (typeof value !== "number") throw new Error(`${row.id} has no ${name}`);
  return value;
};

type Evaluate = (scene: Scene) => LightField;
/** Light with its bounced part spoilt. */
const spoilt =
  (factor: number, run: Evaluate = usual): Evaluate =>
  (scene) => {
    const field = run(scene);
    return { ...field, bounced: (field.bounced ?? new Float64Array()).map((part) => part * factor) };
  };

/** A scene's light, worked out once however often it is spoilt. */
const once = (quality: "usual" | "fine"): Evaluate => {
  const known = new Map<string, LightField>();
  return (scene) => {
    const key = JSON.stringify([scene.polygons, scene.sources, scene.stations]);
    const field = known.get(key) ?? lightField(scene, sceneLight(scene, quality));
    known.set(key, field);
    return field;
  };
};
const usual = once("usual");
const fine = once("fine");

type Face = ReturnType<typeof faces>[number];
/** Meters on a face by Gauss's rule, each with its part of the mean; `half` and `quarter` where the rest is alike. */
function meters(face: Face, n: number, which: "whole" | "quarter" | "half" = "whole") {
  const rule = gaussLegendre(n);
  const out = cross(face.u, face.v);
  const size = Math.sqrt(dot(out, out));
  const facing: Vec3 = [out[0] / size, out[1] / size, out[2] / size];
  const end = { whole: [1, 1], half: [0.5, 1], quarter: [0.5, 0.5] }[which] as [number, number];
  const places = rule.points.flatMap((p, i) =>
    rule.points.map((q, j) => {
      const [s, t] = [(end[0] * (p + 1)) / 2, (end[1] * (q + 1)) / 2];
      const at = (k: 0 | 1 | 2): number => face.corner[k] + s * face.u[k] + t * face.v[k] + 1e-9 * facing[k];
      const part = ((rule.weights[i] as number) * (rule.weights[j] as number)) / 4;
      return { station: discAt(`${face.name} ${i} ${j}`, [at(0), at(1), at(2)], facing), part };
    }),
  );
  return places;
}

/** Mean over meters of what a field has for them from a place on. */
const meanOf = (places: ReturnType<typeof meters>, part: Float64Array | null, from = 0): number =>
  places.reduce((all, place, k) => all + place.part * ((part ?? new Float64Array())[from + k] as number), 0);

/** Mean direct and bounced light of each surface of an empty room with one light. */
function means(run: Evaluate, size: Vec3, rho: Six, source: Source) {
  const walls = faces(...size);
  const many = closedRoom(size, rho, [source], []);
  const light = sceneLight(many);
  const places = walls.map((wall) => meters(wall, 4));
  const stations = places.flatMap((list) => list.map(({ station }) => station));
  const field = run({ ...many, stations });
  const [width, depth, height] = size;
  const [level, side, back] = [width * depth, depth * height, width * height];
  return [level, level, side, side, back, back].map((area, i) => ({
    area,
    rho: rho[i] as number,
    // Direct light is steep before a lamp, and costs little.
    direct: meters(walls[i] as Face, 24).reduce(
      (all, { station, part }) => all + part * light.direct(source, station),
      0,
    ),
    bounced: meanOf(places[i] as ReturnType<typeof meters>, field.bounced, 16 * i),
  }));
}

const sum = (parts: readonly number[]): number => parts.reduce((all, part) => all + part, 0);
const ball = (centre: Vec3) => sourceOf({ kind: "sphere", radius: 0.05 }, centre);

/** What may be missing or too much of a room's light: a seventieth of a stop. */
const CLOSED = 0.01;

describe("a closed room takes all the light of its lamp", () => {
  // Of what arrives, 1 - rho stays: the bounced part that stays is what was not taken at the first touch.
  const law = (run: Evaluate, size: Vec3, rho: Six, source: Source): void => {
    const walls = means(run, size, rho, source);
    const first = sum(walls.map(({ area, rho: share, direct }) => area * share * direct));
    const kept = sum(walls.map(({ area, rho: share, bounced }) => area * (1 - share) * bounced));
    // All direct light lands somewhere; the mean over few receptors is not exact.
    const landed = sum(walls.map(({ area, direct }) => area * direct));
    expect(Math.abs(landed - 1)).toBeLessThan(0.005);
    expect(Math.abs(kept - first / landed)).toBeLessThan(CLOSED);
  };
  test.each<readonly [string, Vec3, Six, Source]>([
    ["all alike", [4, 5, 2.8], [0.8, 0.8, 0.8, 0.8, 0.8, 0.8], ball([0.4, 0.5, 1.45])],
    [
      "all different",
      [4, 5, 2.8],
      [0.3, 0.85, 0.5, 0.6, 0.7, 0.2],
      sourceOf({ kind: "disc", radius: 0.3 }, [0.4, 0.5, 1.45], [0, 0.6, -0.8]),
    ],
    ["small and low", [3, 4.5, 2.4], [0.2, 0.8, 0.5, 0.5, 0.5, 0.5], ball([-0.3, 0.5, 1.2])],
  ])("%s", (_name, size, rho, source) => {
    law(usual, size, rho, source);
    mustBreak(() => law(spoilt(0.95), size, rho, source));
    mustBreak(() => law(spoilt(1.05), size, rho, source));
  });
});

describe("spheres, as cubes of the same area with the lamp in the middle", () => {
  /** Mean bounced light on a wall by lumen-second; every quarter of every wall is alike. */
  const wallOf = (run: Evaluate, side: number, rho: number): number => {
    const places = meters(faces(side, side, side)[0] as Face, 2, "quarter");
    const stations = places.map(({ station }) => station);
    const lamp = ball([0, 0, side / 2]);
    return meanOf(
      places,
      run(closedRoom([side, side, side], [rho, rho, rho, rho, rho, rho], [lamp], stations)).bounced,
    );
  };
  test.each(rowsOf("sphere_total_over_direct_irradiance").map((row) => [row.id, row] as const))(
    "%s",
    (_id, row) => {
      const rho = given(row, "reflectance");
      const law = (run: Evaluate): void => {
        const over = 1 + 6 * 2 * 2 * wallOf(run, 2, rho);
        expect(Math.abs(over / row.expected - 1)).toBeLessThan(CLOSED);
      };
      law(rho < 0.7 ? usual : fine);
      mustBreak(() => law(spoilt(rho < 0.6 ? 0.9 : 0.97, rho < 0.7 ? usual : fine)));
    },
  );

  test.each(rowsOf("sphere_wall_irradiance").map((row) => [row.id, row] as const))("%s", (_id, row) => {
    const rho = given(row, "reflectance");
    const side = given(row, "radius_m") * Math.sqrt((4 * Math.PI) / 6);
    const law = (run: Evaluate): void => {
      const mean = wallOf(run, side, rho) + 1 / (6 * side * side);
      expect(Math.abs((given(row, "flux_lm") * mean) / row.expected - 1)).toBeLessThan(CLOSED);
    };
    law(rho < 0.7 ? usual : fine);
    mustBreak(() => law(spoilt(0.9, rho < 0.7 ? usual : fine)));
  });
});

test.each(rowsOf("cube_radiosity_converged").map((row) => [row.id, row] as const))(
  "a cube one of whose faces shines: %s",
  (_id, row) => {
    const rho = given(row, "reflectance");
    const wall = ["mean_irradiance_emitter", "mean_irradiance_opposite", "mean_irradiance_side"].indexOf(
      row.inputs.get("where") as string,
    );
    const law = (run: Evaluate): void => {
      const face = sourceOf({ kind: "rectangle", width: 1, height: 1 }, [0, 0, 1e-7], [0, 0, 1]);
      const size: Vec3 = [1, 1, 1];
      const place = faces(...size)[wall];
      if (place === undefined) throw new Error(`no place for ${row.id}`);
      const places = meters(place, 4, wall === 2 ? "half" : "quarter");
      const stations = places.map(({ station }) => station);
      const field = run(closedRoom(size, [rho, rho, rho, rho, rho, rho], [face], stations));
      const mean = meanOf(places, field.direct) + meanOf(places, field.bounced);
      // The source gives 1 lm s in all, so its exitance is 1; the row's is 100.
      expect(Math.abs((given(row, "exitance") * mean) / row.expected - 1)).toBeLessThan(0.01);
    };
    law(usual);
    mustBreak(() => law(spoilt(0.95)));
  },
);

/** A small ball so far away that its light is even: 3 km. */
const FAR = 3000;

test.each(rowsOf("bounce_from_infinite_floor").map((row) => [row.id, row] as const))(
  "a wide floor, seen from a 4000th of its width: %s",
  (_id, row) => {
    // A floor that ends 2000 heights off lacks a 2000th of an upright meter's light.
    const tilt = (given(row, "tilt_deg") * Math.PI) / 180;
    const law = (run: Evaluate): void => {
      const floor = sheet(
        "floor",
        "floor",
        [-100, -100, 0],
        [200, 0, 0],
        [0, 200, 0],
        given(row, "reflectance"),
        0,
      );
      const facing: Vec3 = [0, -Math.sin(tilt), -Math.cos(tilt)];
      const stations = [discAt("over", [0, 0, 0.05], facing), discAt("on", [0, 0, 1e-6], [0, 0, 1])];
      const sun = sourceOf({ kind: "sphere", radius: 1 }, [0, 0, FAR]);
      const { direct, bounced } = run(bareScene([floor], [sun], stations));
      const found = (given(row, "floor_lx") * (bounced?.[0] ?? 0)) / (direct[1] as number);
      expect(Math.abs(found / row.expected - 1)).toBeLessThan(0.005);
    };
    law(fine);
    mustBreak(() => law(spoilt(1.02, fine)));
  },
);

/** 0.05 stop, which every reading is to keep, as a share. */
const EVERY_DAY = Math.LN2 * 0.05;

test.each(rowsOf("bounce_from_reflector_panel").map((row) => [row.id, row] as const))(
  "an evenly lit panel: %s",
  (_id, row) => {
    const [w, h, d] = [given(row, "width_m"), given(row, "height_m"), given(row, "distance_m")];
    const law = (run: Evaluate, within: number): void => {
      const rho = given(row, "reflectance");
      const panel = sheet("panel", "panel", [-w / 2, 0, 1 - h / 2], [w, 0, 0], [0, 0, h], rho, 0);
      const stations = [discAt("before", [0, -d, 1], [0, 1, 0]), discAt("on", [0, -1e-6, 1], [0, -1, 0])];
      const sun = sourceOf({ kind: "sphere", radius: 1 }, [0, -FAR, 1]);
      const { direct, bounced } = run(bareScene([panel], [sun], stations));
      const found = (given(row, "panel_lx") * (bounced?.[0] ?? 0)) / (direct[1] as number);
      expect(Math.abs(found / row.expected - 1)).toBeLessThan(within);
    };
    law(usual, EVERY_DAY);
    mustBreak(() => law(spoilt(0.93), EVERY_DAY));
    law(fine, 0.005);
    mustBreak(() => law(spoilt(0.98, fine), 0.005));
  },
);
