import { describe, expect, test } from "vitest";
import type { Vec3 } from "../../src/core/vector.js";
import type { RoundBeam } from "../../src/physics/beam.js";
import {
  edgeFullWidth,
  edgeLightShare,
  edgeWidthBetween,
  type ShadowEdge,
} from "../../src/physics/edge-share.js";
import { rectangleSource, type SourceShape } from "../../src/physics/source-shape.js";

const degrees = Math.PI / 180;

/** Sources of 1 m in the plane z = 2, which shine down; the edge runs along y at z = 1 and hides what comes from x > 0. */
const disc: SourceShape = { kind: "disc", centre: [0, 0, 2], normal: [0, 0, -1], radius: 0.5 };
const square = rectangleSource([0, 0, 2], [1, 0, 0], [0, -1, 0], 1, 1);

function edgeOf(source: SourceShape, gap: number, beam?: RoundBeam): ShadowEdge {
  return {
    source,
    edgePoint: [0, 0, 1],
    edgeDirection: [0, 1, 0],
    surfacePoint: [0, 0, 1 - gap],
    surfaceNormal: [0, 0, 1],
    ...(beam === undefined ? {} : { beam }),
  };
}

/** Luminance by the definitions in the guide, at a cosine off the axis. */
function luminance(beam: RoundBeam, cosine: number): number {
  if (beam.kind === "lambert") return 1;
  if (beam.kind === "cosine-power") return cosine ** (beam.n - 1);
  return Math.max(0, 1 - Math.tan(Math.acos(Math.min(1, cosine))) / Math.tan(beam.cutoff / 2));
}

/** Share of the light by 400 x 400 cells of the opening; the sight line past the edge meets z = 2 at `limit`. */
function byCells(source: SourceShape, beam: RoundBeam, at: Vec3): number {
  const steps = 400;
  const limit = at[0] + (-at[0] * (2 - at[2])) / (1 - at[2]);
  let whole = 0;
  let part = 0;
  for (let i = 0; i < steps; i++) {
    const x = (i + 0.5) / steps - 0.5;
    // A cell that the limit cuts counts by its share.
    const open = Math.min(1, Math.max(0, (x + 0.5 / steps - limit) * steps));
    for (let j = 0; j < steps; j++) {
      const y = (j + 0.5) / steps - 0.5;
      if (source.kind === "disc" && x * x + y * y > 0.25) continue;
      const h = 2 - at[2];
      const d2 = (x - at[0]) * (x - at[0]) + (y - at[1]) * (y - at[1]) + h * h;
      const light = (luminance(beam, h / Math.sqrt(d2)) * h * h) / (d2 * d2);
      whole += light;
      part += light * open;
    }
  }
  return part / whole;
}

const beams: readonly RoundBeam[] = [
  { kind: "lambert" },
  { kind: "cosine-power", n: 4 },
  { kind: "cosine-power", n: 12 },
  { kind: "grid", cutoff: 50 * degrees },
];

describe("the profile of an edge with a beam", () => {
  for (const [name, source] of [
    ["disc", disc],
    ["square", square],
  ] as const) {
    for (const beam of beams) {
      test(`${name}, ${beam.kind} ${beam.kind === "cosine-power" ? beam.n : ""}: sums over cells, within 0.1 %`, () => {
        for (const x of [-0.12, -0.05, 0, 0.02, 0.08, 0.13]) {
          const at: Vec3 = [x, 0, 0.7];
          const share = edgeLightShare(edgeOf(source, 0.3, beam), at) ?? Number.NaN;
          const cells = byCells(source, beam, at);
          // Which side is dark is a matter of the edge's direction.
          expect(Math.min(Math.abs(share - cells), Math.abs(1 - share - cells))).toBeLessThan(0.001);
        }
      });
    }
  }

  test("from 10 to 90 % of the light, by cells at both ends", () => {
    for (const beam of beams) {
      const width = edgeWidthBetween(edgeOf(square, 0.3, beam)) ?? Number.NaN;
      // The edge lies in the middle of a symmetrical set-up: 10 and 90 % lie as far to either side.
      const ends = [byCells(square, beam, [width / 2, 0, 0.7]), byCells(square, beam, [-width / 2, 0, 0.7])];
      expect(Math.min(...ends)).toBeCloseTo(0.1, 3);
      expect(Math.max(...ends)).toBeCloseTo(0.9, 3);
    }
  });

  test("the full width is that of the opening, whatever the power of the cosine", () => {
    for (const beam of beams.slice(0, 3)) {
      expect(edgeFullWidth(edgeOf(square, 0.3, beam))).toBeCloseTo((1 * 0.3) / 1, 9);
    }
  });

  // A place x off the axis, h below the opening, sees it between x - r and x + r with r = h tan(c / 2). The card parts
  // the opening at -x (H - g) / g: light begins where that is x + r, with H = 1.3 m and g = 0.3 m at x = 0.3 r / 1.3.
  test("behind a grid the full width is that of the part that shines there", () => {
    const cutoff = 30 * degrees;
    const r = 1.3 * Math.tan(cutoff / 2);
    const expected = (2 * 0.3 * r) / 1.3;
    expect(edgeFullWidth(edgeOf(disc, 0.3, { kind: "grid", cutoff }))).toBeCloseTo(expected, 6);
    expect(edgeFullWidth(edgeOf(square, 0.3, { kind: "grid", cutoff }))).toBeCloseTo(expected, 6);
    // A grid that lets the whole opening shine there changes nothing.
    const wide = edgeOf(square, 0.3, { kind: "grid", cutoff: 120 * degrees });
    expect(edgeFullWidth(wide)).toBeCloseTo(0.3, 6);
  });
});
