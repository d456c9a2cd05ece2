import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Vec3 } from "../../src/core/vector.js";
import { clipByPlane, polygonArea } from "../../src/math/polygon.js";
import { addScaled, dot, normalise, subtract } from "../../src/math/vector.js";
import { litPoints } from "../../src/physics/beam-reading.js";
import { edgePlanes } from "../../src/physics/edge-angles.js";
import { edgeShareOfWidth, rectangleEdgePlace } from "../../src/physics/edge-profile.js";
import {
  edgeFullWidth,
  edgeLightShare,
  edgeSection,
  edgeWidthBetween,
  type ShadowEdge,
} from "../../src/physics/edge-share.js";
import { obliquePenumbra, planarPenumbra, spherePenumbra } from "../../src/physics/penumbra-width.js";
import { rectangleExtent } from "../../src/physics/source-extent.js";
import { sourceOutline } from "../../src/physics/source-outline.js";
import { rectangleSource, type SourceShape } from "../../src/physics/source-shape.js";
import { clearOf, direction, even, place, source } from "../helpers/light-shapes.js";
import { mustBreak } from "../helpers/must-break.js";

type Kind = "disc" | "square" | "sphere" | "capsule";
type Width = (kind: Kind, size: number, toEdge: number, gap: number) => number;

/** A source of a greatest size across y-directed edges, above the origin, facing down. */
function above(kind: Kind, size: number, height: number): SourceShape {
  const half = size / 2;
  switch (kind) {
    case "disc":
      return { kind, centre: [0, 0, height], normal: [0, 0, -1], radius: half };
    case "square":
      return rectangleSource([0, 0, height], [-1, 0, 0], [0, 1, 0], size, size);
    case "sphere":
      return { kind, centre: [0, 0, height], radius: half };
    case "capsule":
      return { kind, from: [-size / 4, 0, height], to: [size / 4, 0, height], radius: size / 4 };
    default:
      return kind satisfies never;
  }
}

function edgeOn(source: SourceShape, gap: number, normal: Vec3 = [0, 0, 1]): ShadowEdge {
  return {
    source,
    edgePoint: [0, 0, gap],
    edgeDirection: [0, 1, 0],
    surfacePoint: [0, 0, 0],
    surfaceNormal: normal,
  };
}

const full: Width = (kind, size, toEdge, gap) =>
  edgeFullWidth(edgeOn(above(kind, size, toEdge + gap), gap)) ?? Number.NaN;
const tenToNinety: Width = (kind, size, toEdge, gap) =>
  edgeWidthBetween(edgeOn(above(kind, size, toEdge + gap), gap)) ?? Number.NaN;

const kind = fc.constantFrom<Kind>("disc", "square", "sphere", "capsule");
const size = even(0.02, 1.5);
const toEdge = even(1, 6);
const gap = even(0.05, 2);
const more = even(1.02, 2);

describe("the width of an edge", () => {
  const growsWithSource = (width: Width) => () => {
    fc.assert(
      fc.property(kind, size, toEdge, gap, more, (k, s, a, b, by) => {
        fc.pre(s * by < 1.9 * a);
        expect(width(k, s * by, a, b)).toBeGreaterThan(width(k, s, a, b));
      }),
    );
  };
  const growsWithGap = (width: Width) => () => {
    fc.assert(
      fc.property(kind, size, toEdge, gap, more, (k, s, a, b, by) => {
        expect(width(k, s, a, b * by)).toBeGreaterThan(width(k, s, a, b));
      }),
    );
  };
  const shrinksWithDistance = (width: Width) => () => {
    fc.assert(
      fc.property(kind, size, toEdge, gap, more, (k, s, a, b, by) => {
        expect(width(k, s, a * by, b)).toBeLessThan(width(k, s, a, b));
      }),
    );
  };
  const scales = (width: Width) => () => {
    fc.assert(
      fc.property(kind, size, toEdge, gap, even(0.1, 10), (k, s, a, b, by) => {
        expect(width(k, s * by, a * by, b * by) / (by * width(k, s, a, b))).toBeCloseTo(1, 8);
      }),
    );
  };

  test.each([
    ["full", full],
    ["10-90 %", tenToNinety],
  ] as const)("%s: grows with source and gap, shrinks with distance, scales with the set", (_, width) => {
    growsWithSource(width)();
    growsWithGap(width)();
    shrinksWithDistance(width)();
    scales(width)();
    mustBreak(growsWithSource((k, s, a, b) => width(k, Math.min(s, 1), a, b)));
    mustBreak(growsWithGap((k, s, a, b) => width(k, s, a, 1) * (1 + 1e-9 * b - b)));
    mustBreak(shrinksWithDistance((k, s, a, b) => width(k, s, a, b) * a * a));
    mustBreak(scales((k, s, a, b) => width(k, s, a, b) + 0.001));
  });

  test("10-90 % lies inside the full width", () => {
    fc.assert(
      fc.property(kind, size, toEdge, gap, (k, s, a, b) => {
        const share = tenToNinety(k, s, a, b) / full(k, s, a, b);
        expect(share).toBeGreaterThan(0.4);
        expect(share).toBeLessThan(0.85);
      }),
    );
  });

  test("general planes give the formulas of flat sources and spheres, tilted surfaces included", () => {
    fc.assert(
      fc.property(size, toEdge, gap, even(-60, 60), (s, a, b, tilt) => {
        const t = (tilt * Math.PI) / 180;
        const normal: Vec3 = [Math.sin(t), 0, Math.cos(t)];
        const flat = edgeFullWidth(edgeOn(above("square", s, a + b), b, normal));
        const expected = obliquePenumbra(s, a, b, t);
        if (expected === undefined) expect(flat).toBeUndefined();
        else expect((flat ?? 0) / expected).toBeCloseTo(1, 9);
        expect(full("disc", s, a, b)).toBeCloseTo(planarPenumbra(s, a, b), 10);
        expect(full("sphere", s, a, b)).toBeCloseTo(spherePenumbra(s / 2, a, b) ?? 0, 10);
      }),
    );
  });

  test("a surface tilted about an axis square to the edge keeps the width", () => {
    fc.assert(
      fc.property(size, toEdge, gap, even(-50, 50), (s, a, b, tilt) => {
        const t = (tilt * Math.PI) / 180;
        const width = edgeFullWidth(edgeOn(above("square", s, a + b), b, [0, Math.sin(t), Math.cos(t)]));
        expect(width).toBeCloseTo(planarPenumbra(s, a, b), 10);
      }),
    );
  });

  test("a turned rectangle has its extent across the edge", () => {
    fc.assert(
      fc.property(size, size, toEdge, gap, even(0, 180), (w, h, a, b, deg) => {
        const t = (deg * Math.PI) / 180;
        // The edge runs along y; the width direction is turned by t from it.
        const source = rectangleSource(
          [0, 0, a + b],
          [Math.sin(t), Math.cos(t), 0],
          [Math.cos(t), -Math.sin(t), 0],
          w,
          h,
        );
        expect(edgeFullWidth(edgeOn(source, b))).toBeCloseTo(
          planarPenumbra(rectangleExtent(w, h, t), a, b),
          10,
        );
      }),
    );
  });
});

describe("the planes through an edge that touch a source", () => {
  const touches = (planes: typeof edgePlanes) => () => {
    fc.assert(
      fc.property(source, place, direction, (s, edgePoint, edgeDirection) => {
        const found = planes(s, edgePoint, edgeDirection);
        fc.pre(found !== undefined && clearOf(s, edgePoint));
        // No point of the outline, as seen from any place of the edge, lies outside; some lie next to each plane.
        let low = Math.PI;
        let high = -Math.PI;
        for (const t of [-0.2, 0, 0.2]) {
          const eye = addScaled(edgePoint, found.along, t);
          for (const corner of sourceOutline(s, eye, 2000)) {
            const ray = subtract(eye, corner);
            const angle = Math.atan2(dot(ray, found.across), dot(ray, found.axis));
            low = Math.min(low, angle);
            high = Math.max(high, angle);
          }
        }
        fc.pre(high > low);
        expect(low).toBeGreaterThan(found.low - 1e-9);
        expect(high).toBeLessThan(found.high + 1e-9);
        // The outline of 2000 corners misses a ten-thousandth of the whole at most, more next to the source.
        fc.pre(found.high - found.low < 2);
        expect(high - low).toBeGreaterThan((found.high - found.low) * 0.999);
      }),
    );
  };
  test("touch it, for every shape and tilt", () => {
    touches(edgePlanes)();
    mustBreak(
      touches((...args) => {
        const found = edgePlanes(...args);
        return found === undefined ? undefined : { ...found, high: found.high * 1.01 };
      }),
    );
    mustBreak(
      touches((...args) => {
        const found = edgePlanes(...args);
        return found === undefined ? undefined : { ...found, low: found.low + 0.002 };
      }),
    );
  });
});

describe("the profile of an edge", () => {
  const rises = (share: typeof edgeLightShare) => () => {
    fc.assert(
      fc.property(kind, size, toEdge, gap, even(-40, 40), (k, s, a, b, tilt) => {
        const t = (tilt * Math.PI) / 180;
        const edge = edgeOn(above(k, s, a + b), b, [Math.sin(t), 0, Math.cos(t)]);
        const section = edgeSection(edge);
        fc.pre(section !== undefined);
        const at = (x: number): number =>
          share(
            edge,
            addScaled(section.middle, section.across, section.dark + x * (section.light - section.dark)),
          ) ?? Number.NaN;
        expect(at(-0.001)).toBeLessThan(1e-9);
        expect(at(1.001)).toBeGreaterThan(1 - 1e-9);
        let before = 0;
        for (let x = 0.05; x < 1; x += 0.1) {
          const now = at(x);
          expect(now).toBeGreaterThan(before);
          before = now;
        }
      }),
      { numRuns: 60 },
    );
  };
  test("rises from 0 at the dark end to 1 at the light end", () => {
    rises(edgeLightShare)();
    mustBreak(rises((edge, p) => (edgeLightShare(edge, p) ?? 0) * 0.999));
    mustBreak(rises((edge, p) => edgeLightShare(edge, [p[0] + 0.002, p[1], p[2]])));
  });

  /** The share by asking of many points of a flat source whether the card hides them. */
  const counted = (edge: ShadowEdge, point: Vec3): number => {
    const planes = edgePlanes(edge.source, edge.edgePoint, edge.edgeDirection);
    const n = normalise(edge.surfaceNormal);
    if (planes === undefined || n === undefined) return Number.NaN;
    if (edge.source.kind !== "disc" && edge.source.kind !== "polygon") return Number.NaN;
    let whole = 0;
    let seen = 0;
    for (const { at, area } of litPoints(edge.source, { kind: "lambert" }, point, undefined, 96)) {
      const ray = subtract(at, point);
      const d2 = dot(ray, ray);
      const weight = (area * Math.max(0, dot(ray, n)) * -dot(ray, edge.source.normal)) / (d2 * d2);
      whole += weight;
      // Where the ray passes the plane of the card, on which side of the edge is it?
      const t = dot(subtract(edge.edgePoint, point), planes.axis) / dot(ray, planes.axis);
      const place = addScaled(point, ray, t);
      if (dot(subtract(place, edge.edgePoint), planes.across) > 0) seen += weight;
    }
    return seen / whole;
  };
  const agrees = (share: typeof edgeLightShare) => () => {
    fc.assert(
      fc.property(
        fc.constantFrom<Kind>("disc", "square"),
        size,
        toEdge,
        gap,
        even(-30, 30),
        even(-30, 30),
        even(0.1, 0.9),
        (k, s, a, b, tiltX, tiltY, x) => {
          const normal: Vec3 = [Math.sin((tiltX * Math.PI) / 180), Math.sin((tiltY * Math.PI) / 180), 1];
          const edge: ShadowEdge = { ...edgeOn(above(k, s, a + b), b, normal), edgeDirection: [0.3, 1, 0.1] };
          const section = edgeSection(edge);
          fc.pre(section !== undefined);
          const p = addScaled(
            section.middle,
            section.across,
            section.dark + x * (section.light - section.dark),
          );
          expect(Math.abs((share(edge, p) ?? Number.NaN) - counted(edge, p))).toBeLessThan(0.012);
        },
      ),
      { numRuns: 40 },
    );
  };
  test("is what counting the hidden points of the source gives, edges and surfaces aslant", () => {
    agrees(edgeLightShare)();
    mustBreak(agrees((edge, p) => 1 - (edgeLightShare(edge, p) ?? 0)));
    mustBreak(agrees((edge, p) => Math.sqrt(edgeLightShare(edge, p) ?? 0)));
  });

  test("far from the source it has the shares of the outline", () => {
    const share = (k: Kind): number => tenToNinety(k, 0.01, 30, 1) / full(k, 0.01, 30, 1);
    expect(share("disc")).toBeCloseTo(edgeShareOfWidth("disc", 0.1, 0.9), 5);
    expect(share("sphere")).toBeCloseTo(edgeShareOfWidth("sphere", 0.1, 0.9), 5);
    expect(share("square")).toBeCloseTo(0.8, 5);
    const t = Math.PI / 6;
    const turned = rectangleSource(
      [0, 0, 31],
      [Math.sin(t), Math.cos(t), 0],
      [Math.cos(t), -Math.sin(t), 0],
      0.012,
      0.008,
    );
    const edge = edgeOn(turned, 1);
    const place = (p: number): number => rectangleEdgePlace(p, 0.012 * Math.sin(t), 0.008 * Math.cos(t));
    expect((edgeWidthBetween(edge) ?? 0) / (edgeFullWidth(edge) ?? 1)).toBeCloseTo(
      place(0.9) - place(0.1),
      5,
    );
  });

  test("the far profile of a rectangle is the share of its area on one side of a line", () => {
    fc.assert(
      fc.property(even(0.05, 1), even(0.05, 1), even(0, 1.57), even(0.01, 0.99), (w, h, turn, x) => {
        const across: Vec3 = [Math.cos(turn), Math.sin(turn), 0];
        const box = rectangleSource([0, 0, 0], across, [-Math.sin(turn), Math.cos(turn), 0], w, h);
        const a = w * Math.abs(across[0]);
        const b = h * Math.abs(across[1]);
        const line = (x - 0.5) * (a + b);
        const share = polygonArea(clipByPlane(box.corners, [-1, 0, 0], -line)) / (w * h);
        expect(rectangleEdgePlace(share, a, b)).toBeCloseTo(x, 6);
      }),
    );
    expect(rectangleEdgePlace(0, 1, 1)).toBe(0);
    expect(rectangleEdgePlace(1, 1, 1)).toBe(1);
  });

  test("a round source that the surface's horizon cuts as well", () => {
    const low: SourceShape = { kind: "sphere", centre: [0, 0, 0.3], radius: 0.5 };
    const edge: ShadowEdge = {
      source: low,
      edgePoint: [-1, 0, 0.2],
      edgeDirection: [0, 0, 1],
      surfacePoint: [-2, 0, 0],
      surfaceNormal: [0.05, 0, 1],
    };
    const shares = [-0.4, -0.2, 0, 0.2, 0.4].map((y) => edgeLightShare(edge, [-2, y, 0]) ?? Number.NaN);
    expect(Math.abs((shares[2] ?? 0) - 0.5)).toBeLessThan(2e-5);
    for (const [i, share] of shares.entries()) {
      expect(Math.abs(share + (shares[4 - i] ?? 0) - 1)).toBeLessThan(2e-5);
    }
  });

  test("no section where the edge runs through the source, or the surface is before the edge", () => {
    expect(edgeSection(edgeOn(above("sphere", 1, 0.4), 0.3))).toBeUndefined();
    expect(edgeSection({ ...edgeOn(above("disc", 1, 2), 0.3), surfacePoint: [0, 0, 1] })).toBeUndefined();
    expect(edgeSection(edgeOn(above("disc", 1, 0.2), 0.3))).toBeUndefined();
    expect(edgeSection({ ...edgeOn(above("disc", 1, 2), 0.3), edgeDirection: [0, 0, 0] })).toBeUndefined();
  });
});
