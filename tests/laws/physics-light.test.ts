import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Vec3 } from "../../src/core/vector.js";
import { lambertVector } from "../../src/math/lambert-polygon.js";
import { gaussLegendre } from "../../src/math/quadrature.js";
import { radians, rotateAbout } from "../../src/math/rotation.js";
import { polygonSolidAngle } from "../../src/math/solid-angle.js";
import { dot, frameAround, normalise, scale, subtract } from "../../src/math/vector.js";
import {
  clippedLightVector,
  discReading,
  domeReading,
  lightVector,
  solidAngle,
} from "../../src/physics/illuminance.js";
import { emptyVector } from "../../src/physics/light-vector.js";
import { luminancePerEnergy } from "../../src/physics/luminous-energy.js";
import { sourceOutline } from "../../src/physics/source-outline.js";
import { emittingArea, type SourceShape } from "../../src/physics/source-shape.js";
import { clearOf, direction, even, moved, place, source } from "../helpers/light-shapes.js";
import { mustBreak } from "../helpers/must-break.js";

type Reading = (source: SourceShape, point: Vec3, normal: Vec3) => number;
type Vector = (source: SourceShape, point: Vec3) => Vec3;

const disc: Reading = (s, p, n) => discReading(s, p[0], p[1], p[2], n[0], n[1], n[2], emptyVector());
const dome: Reading = (s, p, n) => domeReading(s, p[0], p[1], p[2], n[0], n[1], n[2], emptyVector());
const angle = (s: SourceShape, p: Vec3): number => solidAngle(s, p[0], p[1], p[2]);
const vector: Vector = (s, p) => {
  const { x, y, z } = lightVector(s, p[0], p[1], p[2], emptyVector());
  return [x, y, z];
};
const clipped = (s: SourceShape, p: Vec3, m: Vec3): Vec3 => {
  const { x, y, z } = clippedLightVector(s, p[0], p[1], p[2], m[0], m[1], m[2], emptyVector());
  return [x, y, z];
};
const near = (a: number, b: number, share: number, floor = 1e-12): void => {
  expect(Math.abs(a - b)).toBeLessThanOrEqual(share * Math.max(Math.abs(a), Math.abs(b)) + floor);
};

describe("light does not know our frame", () => {
  const scaleInvariant = (reading: Reading) => () => {
    fc.assert(
      fc.property(source, place, direction, even(0.01, 100), (s, p, n, k) => {
        fc.pre(clearOf(s, p));
        const larger = moved(
          s,
          (q) => [q[0] * k, q[1] * k, q[2] * k],
          (d) => d,
          k,
        );
        near(reading(larger, [p[0] * k, p[1] * k, p[2] * k], n), reading(s, p, n), 1e-9, 1e-11);
      }),
    );
  };
  const mirrorInvariant = (reading: Reading) => () => {
    const flip = (q: Vec3): Vec3 => [-q[0], q[1], q[2]];
    fc.assert(
      fc.property(source, place, direction, (s, p, n) => {
        fc.pre(clearOf(s, p));
        near(reading(moved(s, flip, flip, 1, true), flip(p), flip(n)), reading(s, p, n), 1e-9, 1e-11);
      }),
    );
  };
  const turnInvariant = (reading: Reading) => () => {
    fc.assert(
      fc.property(source, place, direction, direction, even(0, 360), (s, p, n, axis, deg) => {
        fc.pre(clearOf(s, p));
        const turn = (q: Vec3): Vec3 => rotateAbout(q, axis, radians(deg));
        near(reading(moved(s, turn, turn), turn(p), turn(n)), reading(s, p, n), 1e-8, 1e-10);
      }),
    );
  };
  const shiftInvariant = (reading: Reading) => () => {
    fc.assert(
      fc.property(source, place, direction, place, (s, p, n, by) => {
        fc.pre(clearOf(s, p));
        const shift = (q: Vec3): Vec3 => [q[0] + by[0], q[1] + by[1], q[2] + by[2]];
        near(
          reading(
            moved(s, shift, (d) => d),
            shift(p),
            n,
          ),
          reading(s, p, n),
          1e-8,
          1e-10,
        );
      }),
    );
  };

  test.each([
    ["disc", disc],
    ["dome", dome],
  ] as const)("a %s reading stays under scaling, mirror, turn, shift", (_, reading) => {
    scaleInvariant(reading)();
    mirrorInvariant(reading)();
    turnInvariant(reading)();
    shiftInvariant(reading)();
    mustBreak(scaleInvariant((s, p, n) => reading(s, p, n) / (1 + p[0] * p[0])));
    mustBreak(mirrorInvariant((s, p, n) => reading(s, p, n) + 1e-6 * n[0]));
    mustBreak(turnInvariant((s, p, n) => reading(s, p, n) * (1 + 1e-5 * n[2])));
    mustBreak(shiftInvariant((s, p, n) => reading(s, p, n) * (1 + 1e-5 * p[2])));
  });
});

describe("closed forms against the outline as a polygon", () => {
  // An inscribed polygon of n corners lacks a share that goes with 1 / n^2: two of them give the limit.
  const limit = (s: SourceShape, p: Vec3, of: (corners: readonly Vec3[]) => number): number => {
    const value = (n: number): number => {
      const corners = sourceOutline(s, p, n);
      return corners.length === 0 ? 0 : of(corners);
    };
    return s.kind === "polygon" ? value(4) : (4 * value(1024) - value(512)) / 3;
  };
  /** Places close to a round outline need more corners than that. */
  const clear = (s: SourceShape, p: Vec3): boolean => {
    const reach = "radius" in s ? s.radius : 1;
    return Math.hypot(...p) > 1.5 * reach + (s.kind === "capsule" ? 1 : 0);
  };
  const agreesOnAngle = (of: (s: SourceShape, p: Vec3) => number) => () => {
    fc.assert(
      fc.property(source, place, (s, p) => {
        fc.pre(clear(s, p));
        near(
          of(s, p),
          limit(s, p, (corners) => -polygonSolidAngle(corners, p)),
          1e-6,
          1e-9,
        );
      }),
    );
  };
  const agreesOnVector = (of: Vector) => () => {
    fc.assert(
      fc.property(source, place, (s, p) => {
        fc.pre(clear(s, p));
        const v = of(s, p);
        for (const axis of [0, 1, 2] as const) {
          const expected = limit(s, p, (corners) => -lambertVector(corners, p)[axis]);
          expect(Math.abs(v[axis] - expected)).toBeLessThan(1e-6 * Math.hypot(...v) + 1e-9);
        }
      }),
    );
  };

  test("solid angle", () => {
    agreesOnAngle(angle)();
    mustBreak(agreesOnAngle((s, p) => angle(s, p) * (1 + 1e-5)));
  });

  test("light vector", () => {
    agreesOnVector(vector)();
    mustBreak(agreesOnVector((s, p) => vector(s, [p[0], p[1], p[2] + 1e-4])));
  });

  test("a 512-gon gives less than the disc around it and more than the disc inside it", () => {
    const round = (radius: number): SourceShape => ({
      kind: "disc",
      centre: [0, 0, 2],
      normal: [0, 0, -1],
      radius,
    });
    const corners = Array.from({ length: 512 }, (_, i): Vec3 => {
      const turn = (-2 * Math.PI * i) / 512;
      return [0.6 * Math.cos(turn), 0.6 * Math.sin(turn), 2];
    });
    const many: SourceShape = { kind: "polygon", corners, normal: [0, 0, -1] };
    const tilted: Vec3 = [0.6, 0, 0.8];
    for (const p of [
      [0, 0, 0],
      [0.5, 0.2, 1],
      [2, -1, 0.4],
    ] as const) {
      for (const reading of [disc, dome]) {
        expect(reading(many, p, tilted)).toBeLessThan(reading(round(0.6), p, tilted));
        expect(reading(many, p, tilted)).toBeGreaterThan(
          reading(round(0.6 * Math.cos(Math.PI / 512)), p, tilted),
        );
      }
    }
  });
});

describe("cutting by a plane", () => {
  const halvesAdd = (of: typeof clipped) => () => {
    fc.assert(
      fc.property(source, place, direction, (s, p, m) => {
        fc.pre(clearOf(s, p));
        const one = of(s, p, m);
        const other = of(s, p, [-m[0], -m[1], -m[2]]);
        const whole = vector(s, p);
        for (const axis of [0, 1, 2] as const) {
          expect(Math.abs(one[axis] + other[axis] - whole[axis])).toBeLessThan(2e-9);
        }
      }),
      { numRuns: 400 },
    );
  };
  // The mean of a flat receptor's cosine over all directions is a quarter.
  const meanIsQuarter = (reading: Reading) => () => {
    const rule = gaussLegendre(64);
    fc.assert(
      fc.property(source, place, (s, p) => {
        fc.pre(clearOf(s, p));
        let sum = 0;
        for (const [i, z] of rule.points.entries()) {
          const side = Math.sqrt(1 - z * z);
          for (let k = 0; k < 128; k++) {
            const turn = (2 * Math.PI * (k + 0.5)) / 128;
            const n: Vec3 = [side * Math.cos(turn), side * Math.sin(turn), z];
            sum += ((rule.weights[i] ?? 0) / 256) * reading(s, p, n);
          }
        }
        near(sum, angle(s, p) / 4, 1e-3, 1e-9);
      }),
      { numRuns: 30 },
    );
  };

  test("the parts on both sides make the whole", () => {
    halvesAdd(clipped)();
    mustBreak(halvesAdd((s, p, m) => clipped(s, p, [m[0], m[1], Math.abs(m[2])])));
  });

  test("a flat receptor that faces every way gets a quarter of the solid angle on the mean", () => {
    meanIsQuarter(disc)();
    mustBreak(
      meanIsQuarter((s, p, n) => {
        const v = vector(s, p);
        return Math.max(0, v[0] * n[0] + v[1] * n[1] + v[2] * n[2]) * 0.997;
      }),
    );
  });

  test("a flat receptor above whose horizon the source stands gets the product with the light vector", () => {
    const above: SourceShape = { kind: "capsule", from: [-0.4, 0, 2], to: [0.4, 0.1, 2.2], radius: 0.2 };
    const v = vector(above, [0.1, 0, 0]);
    expect(disc(above, [0.1, 0, 0], [0, 0, 1])).toBeCloseTo(v[2], 14);
    expect(disc(above, [0.1, 0, 0], [0, 0, -1])).toBe(0);
  });
});

describe("inverse square", () => {
  const farLimit = (reading: Reading, response: (cosine: number) => number) => () => {
    fc.assert(
      fc.property(source, direction, direction, (s, way, n) => {
        const d = 3000;
        const p: Vec3 = [way[0] * d, way[1] * d, way[2] * d];
        const shownArea = angle(s, p) * d * d;
        const cosine = -(way[0] * n[0] + way[1] * n[1] + way[2] * n[2]);
        fc.pre(Math.abs(cosine) > 0.01 && !edgeOn(s, way));
        near(reading(s, p, n) * d * d, shownArea * response(cosine), 1e-3, 1e-6 * shownArea);
        // And twice as far there is a quarter of it, but for the near end, which is up to 1/3000 nearer.
        const q: Vec3 = [2 * p[0], 2 * p[1], 2 * p[2]];
        near(4 * reading(s, q, n), reading(s, p, n), 1e-3, 1e-6 * angle(s, p));
      }),
    );
  };
  const shownArea = (of: (s: SourceShape, p: Vec3) => number) => () => {
    fc.assert(
      fc.property(source, direction, (s, way) => {
        const d = 2000;
        fc.pre(!edgeOn(s, way));
        const apparent = of(s, [way[0] * d, way[1] * d, way[2] * d]) * d * d;
        // The near end of a metre is 1/2000 nearer than its middle.
        near(apparent, projectedArea(s, way), 1e-3, 1e-9);
      }),
    );
  };

  test("far away the reading is projected area over distance squared", () => {
    farLimit(disc, (cosine) => Math.max(0, cosine))();
    farLimit(dome, (cosine) => (1 + cosine) / 2)();
    shownArea(angle)();
    mustBreak(
      farLimit(
        (s, p, n) => disc(s, p, n) / Math.hypot(...p),
        (cosine) => Math.max(0, cosine),
      ),
    );
    mustBreak(farLimit(dome, (cosine) => Math.max(0, cosine)));
    mustBreak(shownArea((s, p) => angle(s, p) * 1.003));
  });
});

/** Whether a flat source is seen so nearly from its edge that its light is lost in rounding. */
function edgeOn(s: SourceShape, way: Vec3): boolean {
  return (s.kind === "disc" || s.kind === "polygon") && Math.abs(dot(s.normal, way)) < 0.01;
}

/** The area of a source's shadow on a plane square to a direction. */
function projectedArea(s: SourceShape, way: Vec3): number {
  switch (s.kind) {
    case "disc":
    case "polygon": {
      const c = way[0] * s.normal[0] + way[1] * s.normal[1] + way[2] * s.normal[2];
      return emittingArea(s) * Math.max(0, c);
    }
    case "sphere":
      return Math.PI * s.radius * s.radius;
    case "capsule": {
      const l: Vec3 = [s.to[0] - s.from[0], s.to[1] - s.from[1], s.to[2] - s.from[2]];
      const along = way[0] * l[0] + way[1] * l[1] + way[2] * l[2];
      const side = Math.sqrt(Math.max(0, l[0] * l[0] + l[1] * l[1] + l[2] * l[2] - along * along));
      return Math.PI * s.radius * s.radius + 2 * s.radius * side;
    }
    default:
      return s satisfies never;
  }
}

/** The axis about which a source is even, or nearly so. */
function ownAxis(s: SourceShape): Vec3 | undefined {
  if (s.kind === "disc" || s.kind === "polygon") return s.normal;
  return s.kind === "capsule" ? normalise(subtract(s.to, s.from)) : undefined;
}

describe("energy", () => {
  /** Light through a sphere about the middle, receptors facing inwards, per unit of luminous energy. */
  const through = (s: SourceShape, axis: Vec3, of: Vector): number => {
    const rule = gaussLegendre(32);
    const reach = 4;
    const [a, b] = frameAround(axis);
    // The light of a capsule changes its form where the point passes from before its end to beside it.
    const kink = s.kind === "capsule" ? Math.asin(s.radius / reach) : 0.5;
    const limits = [0, kink, Math.PI / 2, Math.PI - kink, Math.PI];
    let sum = 0;
    for (const [part, to] of limits.slice(1).entries()) {
      const from = limits[part] ?? 0;
      for (const [i, x] of rule.points.entries()) {
        const polar = (from + to + x * (to - from)) / 2;
        const z = Math.cos(polar);
        const side = Math.sin(polar);
        for (let k = 0; k < 32; k++) {
          const turn = (2 * Math.PI * (k + 0.5)) / 32;
          const c = side * Math.cos(turn);
          const t = side * Math.sin(turn);
          const n = scale(axis, z).map((q, j) => q + c * (a[j] ?? 0) + t * (b[j] ?? 0)) as unknown as Vec3;
          const area = ((rule.weights[i] ?? 0) * (to - from) * side * Math.PI * reach * reach) / 32;
          sum -= area * dot(of(s, scale(n, reach)), n);
        }
      }
    }
    return sum * (luminancePerEnergy(s) ?? 0);
  };
  const conserved = (of: Vector) => () => {
    fc.assert(
      fc.property(source, direction, (s, any) => {
        const axis = ownAxis(s) ?? any;
        expect(Math.abs(through(s, axis, of) - 1)).toBeLessThan(1e-7);
      }),
      { numRuns: 24 },
    );
  };

  test("what a source gives off goes through a sphere around it", () => {
    conserved(vector)();
    mustBreak(
      conserved((s, p) => {
        const [x, y, z] = vector(s, p);
        return [x, y, z * (1 + 1e-5)];
      }),
    );
  });
});
