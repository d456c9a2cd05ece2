import { describe, expect, test } from "vitest";
import { offset } from "../../../src/model/make/points.js";
import { size } from "../../../src/model/make/sizes.js";
import { renderSheet } from "../../../src/render/sheet-html.js";
import { buildReport } from "../../../src/report/build.js";
import { daySheet } from "../../../src/report/sheet/sheet.js";
import { kg, m } from "../../../src/units/make.js";
import { block } from "../../helpers/models.js";
import { dish, planOf, room, setOf } from "../../helpers/plan.js";

const flat = block("flat", "<b>back</b>", { size: size(m(1.5), m(2)), at: offset({ behind: m(0.6) }) });
const stand = block("stand", null, { highest: m(2.6), weight: kg(2), head: kg(2) });
const plan = planOf({ room, set: setOf(flat), lights: [{ ...dish(), parts: [stand] }] });
const sheet = daySheet(plan, buildReport(plan.recipe, plan.scene, plan.light));

describe("the sheet for the day", () => {
  test("two tapes, bearing, height and slant give the lamp its place back", () => {
    const [lamp] = sheet.lamps;
    const [source] = plan.scene.sources;
    if (lamp === undefined || source === undefined) throw new Error("no lamp");
    const a = Number.parseFloat(lamp.fromMark.metric);
    const b = Number.parseFloat(lamp.fromLens?.metric ?? "");
    const z = Number.parseFloat(lamp.height.metric);
    // Two circles on the floor: round the mark, and round the foot of the lens 3.5 m before it.
    const y = (b * b - a * a - 3.5 * 3.5) / 7;
    const x = -Math.sqrt(a * a - y * y);
    // At the mark, from the way to the camera.
    expect(lamp.bearing).toMatch(/ deg to camera-left$/);
    expect(Number.parseFloat(lamp.bearing)).toBeCloseTo((Math.atan2(-x, -y) * 180) / Math.PI, 0);
    expect(Math.hypot(x - source.centre[0], y - source.centre[1])).toBeLessThan(0.02);
    expect(z).toBeCloseTo(source.centre[2], 2);
    const face = plan.scene.subjects[0]?.face as readonly [number, number, number];
    const slant = Math.hypot(x - face[0], y - face[1], z - face[2]);
    expect(Number.parseFloat(lamp.slant?.metric ?? "")).toBeCloseTo(slant, 1);
    const tilt = (Math.asin((z - face[2]) / slant) * 180) / Math.PI;
    expect(Math.abs(Number.parseFloat(lamp.tilt) - tilt)).toBeLessThan(1);
    expect(lamp.tilt).toMatch(/down$/);
  });

  test("the bag in the list is the one that bears 10 N: weight x half the feet / height", () => {
    const line = sheet.kit.find((row) => row.startsWith("stand for key"));
    const bag = Number(/bag of ([\d.]+) kg/.exec(line ?? "")?.[1]);
    const feet = plan.scene.sources[0]?.stand?.feet as number;
    const own = plan.scene.sources[0]?.stand;
    if (own === null || own === undefined) throw new Error("no stand");
    const height = plan.scene.sources[0]?.centre[2] as number;
    const force = (mass: number): number => (mass * 9.81 * 0.5 * feet) / height;
    expect(force(own.weight + own.head + bag)).toBeGreaterThanOrEqual(10);
    if (bag > 5) expect(force(own.weight + own.head + bag - 0.5)).toBeLessThan(10);
  });

  test("as a page: one document, no script, texts stay texts, a row for each reading", () => {
    const html = renderSheet(sheet, "a4");
    expect(html).not.toMatch(/<script|<link|<img|https?:\/\/(?!www\.w3\.org\/2000\/svg)/);
    expect(html).toContain("&lt;b&gt;back&lt;/b&gt;");
    expect(html).not.toContain("<b>back</b>");
    expect(html.match(/class="blank"/g)?.length).toBe(2 * sheet.readings.length);
    expect(html).toContain("size: A4 portrait");
    expect(renderSheet(sheet, "letter")).toContain("size: letter portrait");
    expect(renderSheet(sheet, "a4")).toBe(html);
  });

  test("a figure on it is to the scale that it says", () => {
    const html = renderSheet(sheet, "a4");
    const [, width, scale] = /<svg[^>]* width="([\d.]+)"[\s\S]*?From above, 1:(\d+)/.exec(html) ?? [];
    const { left, right } = sheet.plan;
    // 96 px are an inch of 25.4 mm (CSS Values and Units Level 3); 14 px are left free on each side.
    const metres = ((Number(width) - 28) / 96) * 0.0254 * Number(scale);
    expect(metres).toBeCloseTo(right - left, 2);
  });
});
