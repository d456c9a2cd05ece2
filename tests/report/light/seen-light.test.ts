import { expect, test } from "vitest";
import { run } from "../../../src/pipeline.js";
import { renderText } from "../../../src/render/text.js";
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

test("where a head stands and what it lights are two places, told apart", () => {
  const report = reportOf(`room { size: 4 x 5 x 2.5 m, mark: from(left: 2 m, back: 1 m) }
subject { height: 1.7 m }
light key { role: key, shape: disc(18 cm), output: 8000 lm s, position: (0 m, -1.5 m, 1.8 m), into: ceiling, aim: (0 m, -1.5 m, 2.5 m) }`);
  const [key] = report.lights;
  const level = 1.5 - 0.0969;
  const degrees = (up: number): number => (Math.atan2(up, level) * 180) / Math.PI;
  expect(key?.head?.elevation).toBeCloseTo(degrees(1.8 - 1.5861), 1);
  expect(key?.head?.distance).toBeCloseTo(Math.hypot(level, 1.8 - 1.5861), 2);
  expect(key?.patch?.surface).toBe("ceiling");
  expect(key?.patch?.height).toBeCloseTo(2.5, 9);
  expect(key?.patch?.distance).toBeCloseTo(Math.hypot(level, 2.5 - 1.5861), 2);
  expect(key?.elevation).toBeCloseTo(degrees(2.5 - 1.5861), 1);
  const text = renderText(report, { width: 200 });
  expect(text).toMatch(/Head +1\.42 m from the face, .* 8\.7 deg up from there, 1\.80 m above/);
  expect(text).toMatch(/Lit patch +.* of the ceiling, its middle 1\.67 m from the face, .* 2\.50 m above/);
  expect(report.setup.find((line) => line.startsWith("key"))).toMatch(
    /up from the face, its centre 1\.80 m .* of the ceiling, the light that is seen, 1\.67 m away/,
  );
});

test("a head behind a cloth is one light with it, at the head's own power", () => {
  const report = reportOf(`room { size: 4 x 5 x 2.5 m, mark: from(left: 2 m, back: 1 m) }
subject { height: 1.7 m }
set { scrim silk { size: 1 x 1 m, at: offset(left: 80 cm, ahead: 1 m, up: 1.1 m), faces: face, loses: 1 stop } }
light key { role: key, shape: disc(18 cm), calibration: metered(f/16, at: 2 m, ISO 100), position: (-2.3 m, -2 m, 1.6 m), through: silk, power: 1/4 }`);
  const lines = report.setup.filter((line) => line.includes("a flash"));
  expect(lines).toHaveLength(1);
  expect(lines[0]).toMatch(/^key: a flash with a disc of 18 cm, .* of silk, .*; power 1\/4\.$/);
  const text = renderText(report, { width: 200 });
  expect(text).not.toContain("spill");
  expect(text).toMatch(/Head behind +\S+ m from the face/);
  // It stands 30 cm outside: one warning, under the name of the light.
  const outside = report.warnings.filter(({ code }) => code === "lamp-through-wall");
  expect(outside.map(({ about }) => about)).toEqual(["key"]);
  expect(outside[0]?.message).toBe("The head of key stands 30 cm beyond the left wall.");
  // The cloth hangs 1.2 m from the wall: on its line the head has its 50 cm of floor from here on.
  const [head, cloth] = [report.lights[0]?.head?.position ?? [], report.lights[0]?.position ?? []];
  const [x, y, z] = [0, 1, 2].map((i) => (head[i] ?? 0) - (cloth[i] ?? 0)) as [number, number, number];
  const most = ((1.5 + (cloth[0] ?? 0)) / -x) * Math.hypot(x, y, z);
  const said = Number(/to (\S+) cm from silk/.exec(outside[0]?.remedy ?? "")?.[1]) / 100;
  expect(said).toBeLessThanOrEqual(most);
  expect(said).toBeGreaterThan(most - 0.011);
});

test("any light is more than none", () => {
  const { expectations } = reportOf(`subject { height: 1.7 m }
light key { shape: disc(10 cm), output: 4000 lm s, distance: 2 m, height: 1.6 m }
expect exposure(face.disc(towards: key)) > 0 lx s
expect exposure(face.disc(towards: key)) < 0 lx s`);
  expect(expectations.map((row) => row.outcome)).toEqual(["passed", "failed"]);
});
