import { describe, expect, test } from "vitest";
import type { Vec3 } from "../../src/core/vector.js";
import type { Scene, Source } from "../../src/scene/types.js";
import { type LightField, lightField } from "../../src/transport/light-field.js";
import { sceneLight } from "../../src/transport/scene-light.js";
import { bareScene, closedRoom, discAt, faces, grid, type Six, sheet } from "../helpers/closed-room.js";
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
  (factor: number, run: Evaluate = lightOnce): Evaluate =>
  (scene) => {
    const field = run(scene);
    return { ...field, bounced: (field.bounced ?? new Float64Array()).map((part) => part * factor) };
  };

/** A scene's light is worked out once, however often it is spoilt. */
const known = new Map<string, LightField>();
function lightOnce(scene: Scene): LightField {
  const key = JSON.stringify([scene.polygons, scene.sources, scene.stations]);
  const field = known.get(key) ?? lightField(scene);
  known.set(key, field);
  return field;
}

/**
 * Mean direct light of each surface of an empty room with one light over n by n meters, and mean bounced light over
 * few, since it is smooth.
 */
function means(run: Evaluate, size: Vec3, rho: Six, source: Source, n: number) {
  const walls = faces(...size);
  const few = 4;
  const room = (m: number): Scene =>
    closedRoom(
      size,
      rho,
      [source],
      walls.flatMap((wall) => grid(wall, m)),
    );
  const many = room(n);
  const light = sceneLight(many);
  const direct = Float64Array.from(many.stations, (station) => light.direct(source, station));
  const field = run(room(few));
  const mean = (part: Float64Array | null, wall: number, m: number): number =>
    (part ?? new Float64Array())
      .subarray(wall * m * m, (wall + 1) * m * m)
      .reduce((sum, x) => sum + x / (m * m), 0);
  const [width, depth, height] = size;
  const [level, side, back] = [width * depth, depth * height, width * height];
  return [level, level, side, side, back, back].map((area, i) => ({
    area,
    rho: rho[i] as number,
    direct: mean(direct, i, n),
    bounced: mean(field.bounced, i, few),
  }));
}

const sum = (parts: readonly number[]): number => parts.reduce((all, part) => all + part, 0);
const ball = (centre: Vec3) => sourceOf({ kind: "sphere", radius: 0.05 }, centre);

/** What may be missing or too much of a room's light: a seventieth of a stop. */
const CLOSED = 0.01;

describe("a closed room takes all the light of its lamp", () => {
  // Of what arrives, 1 - rho stays: the bounced part that stays is what was not taken at the first touch.
  const law = (run: Evaluate, size: Vec3, rho: Six, source: Source): void => {
    const walls = means(run, size, rho, source, 8);
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
    ["long and low", [3, 9, 2.4], [0.2, 0.8, 0.5, 0.5, 0.5, 0.5], ball([-0.5, 2, 1.3])],
  ])("%s", (_name, size, rho, source) => {
    law(lightOnce, size, rho, source);
    mustBreak(() => law(spoilt(0.95), size, rho, source));
    mustBreak(() => law(spoilt(1.05), size, rho, source));
  });
});

describe("spheres, as boxes of the same area", () => {
  test.each(rowsOf("sphere_total_over_direct_irradiance").map((row) => [row.id, row] as const))(
    "%s",
    (_id, row) => {
      const rho = given(row, "reflectance");
      const law = (run: Evaluate): void => {
        const walls = means(run, [4, 5, 2.8], [rho, rho, rho, rho, rho, rho], ball([0.4, 0.5, 1.45]), 6);
        const over = 1 + sum(walls.map(({ area, bounced }) => area * bounced));
        expect(Math.abs(over / row.expected - 1)).toBeLessThan(CLOSED);
      };
      law(lightOnce);
      mustBreak(() => law(spoilt(rho < 0.6 ? 0.9 : 0.97)));
    },
  );

  test.each(rowsOf("sphere_wall_irradiance").map((row) => [row.id, row] as const))("%s", (_id, row) => {
    const rho = given(row, "reflectance");
    const side = given(row, "radius_m") * Math.sqrt((4 * Math.PI) / 6);
    const law = (run: Evaluate): void => {
      const walls = means(
        run,
        [side, side, side],
        [rho, rho, rho, rho, rho, rho],
        ball([0.1, 0.05, side / 2]),
        6,
      );
      const mean = sum(walls.map(({ bounced }) => bounced)) / 6 + 1 / (6 * side * side);
      expect(Math.abs((given(row, "flux_lm") * mean) / row.expected - 1)).toBeLessThan(CLOSED);
    };
    law(lightOnce);
    mustBreak(() => law(spoilt(0.9)));
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
      const n = 9;
      const field = run(closedRoom(size, [rho, rho, rho, rho, rho, rho], [face], grid(place, n)));
      const mean = sum([...field.direct, ...(field.bounced ?? [])]) / (n * n);
      // The source gives 1 lm s in all, so its exitance is 1; the row's is 100.
      expect(Math.abs((given(row, "exitance") * mean) / row.expected - 1)).toBeLessThan(0.01);
    };
    law(lightOnce);
    mustBreak(() => law(spoilt(0.95)));
  },
);

/** A small ball so far away that its light is even: 3 km. */
const FAR = 3000;

test.each(rowsOf("bounce_from_infinite_floor").map((row) => [row.id, row] as const))(
  "a wide floor, seen from a 400th of its width: %s",
  (_id, row) => {
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
      const stations = [discAt("over", [0, 0, 0.5], facing), discAt("on", [0, 0, 1e-6], [0, 0, 1])];
      const sun = sourceOf({ kind: "sphere", radius: 1 }, [0, 0, FAR]);
      const { direct, bounced, error } = run(bareScene([floor], [sun], stations));
      const found = (given(row, "floor_lx") * (bounced?.[0] ?? 0)) / (direct[1] as number);
      // The floor ends somewhere, and the light states its error.
      const slack = 1e-3 + (error?.[0] ?? 0) / (bounced?.[0] ?? 0);
      expect(Math.abs(found / row.expected - 1)).toBeLessThan(slack);
    };
    law(lightOnce);
    mustBreak(() => law(spoilt(1.05)));
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
    law(lightOnce, EVERY_DAY);
    mustBreak(() => law(spoilt(0.93), EVERY_DAY));
    const fine: Evaluate = (scene) => lightField(scene, sceneLight(scene, "fine"));
    law(fine, 0.003);
    mustBreak(() => law(spoilt(0.99, fine), 0.003));
  },
);
