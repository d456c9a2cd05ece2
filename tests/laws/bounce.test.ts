import { describe, expect, test } from "vitest";
import type { Vec3 } from "../../src/core/vector.js";
import type { Scene, Source } from "../../src/scene/types.js";
import { type LightField, lightField } from "../../src/transport/light-field.js";
import { energiesOf, mix } from "../../src/transport/mix.js";
import { sceneLight } from "../../src/transport/scene-light.js";
import { discAt } from "../helpers/closed-room.js";
import { livedInRoom, mirrored } from "../helpers/lived-in-room.js";
import { mustBreak } from "../helpers/must-break.js";
import { sourceOf } from "../helpers/sources.js";

type Evaluate = (scene: Scene) => LightField;

const scene = livedInRoom();
const field = lightField(scene);

/** What every reading is to keep, stops. */
const EVERY_DAY = 0.05;
const apart = (a: number, b: number): number => Math.abs(Math.log2(a / b));

describe("light goes both ways alike: a lamp and a flat meter change places", () => {
  // A small matt disc gives a flat meter what the meter's place, shining so, would give the disc's (Helmholtz).
  const unit = ([x, y, z]: Vec3): Vec3 => {
    const size = Math.sqrt(x * x + y * y + z * z);
    return [x / size, y / size, z / size];
  };
  const spots: readonly (readonly [Vec3, Vec3])[] = [
    [[-1.5, -1.8, 2.2], unit([1, 1.5, -0.6])],
    [[1.4, -1, 1.2], unit([-1, 1, 0.2])],
    [[-2, 2, 1], unit([1, -1, 0])],
    [[0.5, -0.8, 0.7], unit([-0.3, -0.2, -1])],
    [[1.8, 2.5, 2.4], unit([-1, -1, -1])],
  ];
  const changed = (beam?: Source["beam"]): Scene => ({
    ...scene,
    stations: spots.map(([at, facing], i) => discAt(`spot${i}`, at, facing)),
    sources: spots.map(([at, facing]) => sourceOf({ kind: "disc", radius: 0.02 }, at, facing, beam)),
  });
  const law = (run: Evaluate, set: Scene): void => {
    const { direct, bounced } = run(set);
    const n = spots.length;
    const all = direct.map((part, k) => part + (bounced?.[k] ?? 0));
    for (let i = 0; i < n; i++) {
      for (let j = 0; j < i; j++) {
        const [there, back] = [all[i * n + j] as number, all[j * n + i] as number];
        expect(apart(there, back), `${i} and ${j}`).toBeLessThan(EVERY_DAY);
      }
    }
  };
  const fine: Evaluate = (set) => lightField(set, sceneLight(set, "fine"));
  test("holds", () => law(fine, changed()));
  test("breaks for a beam that is not matt, and where bounced light counts once too little", () => {
    mustBreak(() => law(fine, changed({ kind: "cosine-power", exponent: 2 })));
    mustBreak(() =>
      law((set) => {
        const plain = lightField(set);
        return { ...plain, bounced: (plain.bounced ?? new Float64Array()).map((x, k) => x * (1 + k / 100)) };
      }, changed()),
    );
  });
});

describe("left and right swapped: the same light, within what it says it may be off", () => {
  const law = (one: LightField, other: LightField): void => {
    one.direct.forEach((direct, k) => {
      expect(other.direct[k] as number).toBeCloseTo(direct, 6);
      const [a, b] = [one.bounced?.[k] as number, other.bounced?.[k] as number];
      // Two errors of one station and one light.
      const slack = (one.error?.[k] as number) + (other.error?.[k] as number);
      expect(Math.abs(a - b), `${k}`).toBeLessThan(2 * slack);
    });
    const totals = (part: LightField): Float64Array => mix(part, energiesOf(scene));
    totals(one).forEach((total, i) => {
      expect(apart(total, totals(other)[i] as number)).toBeLessThan(EVERY_DAY);
    });
  };
  test("holds", () => law(field, lightField(mirrored(scene))));
  test("breaks for a wall of another reflectance on one side", () => {
    const swapped = mirrored(scene);
    const polygons = swapped.polygons.map((polygon) =>
      polygon.name === "wall left" ? { ...polygon, frontReflectance: 0.05 } : polygon,
    );
    mustBreak(() => law(field, lightField({ ...swapped, polygons })));
  });
});

describe("a finer working is less uncertain, and no reading of every day is far from it", () => {
  const law = (usual: LightField, fine: LightField): void => {
    const mean = (part: LightField): number => [...(part.error ?? [])].reduce((sum, x) => sum + x, 0);
    expect(mean(fine)).toBeLessThan(0.7 * mean(usual));
    usual.direct.forEach((direct, k) => {
      const [a, b] = [usual.bounced?.[k] as number, fine.bounced?.[k] as number];
      expect(apart(direct + a, direct + b), `${k}`).toBeLessThan(EVERY_DAY);
    });
  };
  const fine = lightField(scene, sceneLight(scene, "fine"));
  test("holds", () => law(field, fine));
  test("breaks with a fifteenth of the bounced light missing, and the other way round", () => {
    mustBreak(() =>
      law(field, { ...fine, bounced: (fine.bounced ?? new Float64Array()).map((x) => 0.93 * x) }),
    );
    mustBreak(() => law(fine, field));
  });
});

describe("with nothing to bounce there is direct light alone", () => {
  const black: Scene = {
    ...scene,
    polygons: scene.polygons.map((polygon) => ({ ...polygon, frontReflectance: 0, backReflectance: 0 })),
    bodies: scene.bodies.map((body) => ({ ...body, reflectance: 0 })),
  };
  const law = (found: LightField): void => {
    const energies = energiesOf(scene);
    const alone = mix({ ...field, bounced: null, error: null }, energies);
    mix(found, energies).forEach((total, i) => {
      expect(Object.is(total, alone[i])).toBe(true);
    });
    expect(Math.max(...(found.error ?? []))).toBe(0);
  };
  test("holds to the last bit", () => law(lightField(black)));
  test("breaks for a person of 1 % alone", () =>
    mustBreak(() =>
      law(lightField({ ...black, bodies: black.bodies.map((body) => ({ ...body, reflectance: 0.01 })) })),
    ));
});

describe("more reflectance anywhere gives more light everywhere", () => {
  const lighter = (name: string): Scene => ({
    ...scene,
    polygons: scene.polygons.map((polygon) =>
      polygon.name === name ? { ...polygon, frontReflectance: 0.95 } : polygon,
    ),
  });
  const law = (more: LightField): void => {
    more.bounced?.forEach((bounced, k) => {
      expect(bounced + 2 * (more.error?.[k] as number)).toBeGreaterThan(field.bounced?.[k] as number);
    });
    const sum = (part: LightField): number => [...(part.bounced ?? [])].reduce((all, x) => all + x, 0);
    expect(sum(more)).toBeGreaterThan(sum(field));
  };
  test.each(["floor", "ceiling", "wall front", "back"])("%s", (name) => law(lightField(lighter(name))));
  test("breaks for a darker one", () =>
    mustBreak(() =>
      law(
        lightField({
          ...scene,
          polygons: scene.polygons.map((row) =>
            row.name === "ceiling" ? { ...row, frontReflectance: 0.5 } : row,
          ),
        }),
      ),
    ));
});

describe("powers mix in a room too", () => {
  const energies = energiesOf(scene);
  test("twice the power is twice the light, to the last bit, and lights add", () => {
    const one = mix(field, energies);
    mix(
      field,
      energies.map((energy) => 2 * energy),
    ).forEach((total, i) => {
      expect(Object.is(total, 2 * (one[i] as number))).toBe(true);
    });
    const key = mix(field, [energies[0] as number, 0]);
    const fill = mix(field, [0, energies[1] as number]);
    one.forEach((total, i) => {
      expect(total / ((key[i] as number) + (fill[i] as number))).toBeCloseTo(1, 14);
    });
  });
  test("the order of the lights changes no bit, and one that is off changes none", () => {
    const [key, fill] = scene.sources as [Source, Source];
    const plain = mix(field, energies);
    const turned = { ...scene, sources: [fill, key] };
    expect([...mix(lightField(turned), energiesOf(turned))]).toEqual([...plain]);
    const more = { ...scene, sources: [key, { ...fill, energy: 0, centre: [1, -2, 2] as const }, fill] };
    expect([...mix(lightField(more), energiesOf(more))]).toEqual([...plain]);
    const leaking = { ...more, sources: more.sources.map((row) => ({ ...row, energy: row.energy + 1e-6 })) };
    mustBreak(() => expect([...mix(lightField(leaking), energiesOf(leaking))]).toEqual([...plain]));
  });
});
