import { expect, test } from "vitest";
import { run } from "../../../src/pipeline.js";
import type { Report } from "../../../src/report/schema/report.js";

const camera =
  "camera { held: upright, focal_length: 50 mm, aperture: f/8, shutter: 1/125 s, sensitivity: ISO 100, distance: 1.8 m, height: 1.5 m }";

function reportOf(lines: string): Report {
  const { evaluated, diagnostics } = run({
    name: "seen.light",
    text: `halfshade 1\nrecipe "Seen light"\n${lines}\n${camera}\n`,
  });
  if (evaluated === null) throw new Error(JSON.stringify(diagnostics));
  return evaluated.report;
}

test("the edge behind a cloth is taken at the face where its head is only aimed at the cloth", () => {
  const { lights } = reportOf(`subject { height: 1.7 m }
set { scrim silk { size: 1.5 x 1.5 m, at: offset(left: 1.2 m, ahead: 1 m, up: 1.6 m), faces: face, loses: 1 stop } }
light key { role: key, shape: disc(18 cm), output: 8000 lm s, position: (-2.4 m, -2 m, 1.6 m), through: silk }`);
  const key = lights.find((light) => light.name === "key");
  // By hand: diagonal times gap over distance; both ends of the lit part are 1.48 m wide, the diagonal 2.093 m, and
  // the cloth hangs 1.50 m from the face.
  expect(key?.distance).toBeCloseTo(1.5, 1);
  const edge = key?.shadow_edges.find((row) => row.gap === 0.1)?.full ?? 0;
  expect(Math.abs(edge / 139.5 - 1)).toBeLessThan(0.02);
});

test("a lamp that shines into the ceiling has the size and direction of the patch it lights", () => {
  const report = reportOf(`room { size: 4 x 5 x 2.5 m, mark: from(left: 2 m, back: 1 m) }
subject { height: 1.7 m }
light key { role: key, shape: disc(18 cm), output: 8000 lm s, position: (0 m, -1.5 m, 1.8 m), into: ceiling, aim: (0 m, -1.5 m, 2.5 m) }`);
  // The face of one who is 1.7 m tall: 0.933 h up, 0.057 h ahead of the mark.
  const face = [0, -0.0969, 1.5861] as const;
  const [key] = report.lights;
  // The lamp stands in the middle of the room, so the patch lies straight above it, 2.5 m up.
  const degrees = (Math.atan2(2.5 - face[2], face[1] + 1.5) * 180) / Math.PI;
  expect(Math.abs((key?.elevation ?? 0) - degrees)).toBeLessThan(0.1);
  expect(key?.angular_size.equivalent).toBeGreaterThan(40);
  expect(report.headline).not.toContain("does not show");
});

test("any light is more than none", () => {
  const { expectations } = reportOf(`subject { height: 1.7 m }
light key { shape: disc(10 cm), output: 4000 lm s, distance: 2 m, height: 1.6 m }
expect exposure(face.disc(towards: key)) > 0 lx s
expect exposure(face.disc(towards: key)) < 0 lx s`);
  expect(expectations.map((row) => row.outcome)).toEqual(["passed", "failed"]);
});
