import { describe, expect, test } from "vitest";
import { run } from "../../../src/pipeline.js";
import type { ReportGloss } from "../../../src/report/schema/gloss.js";

/** A glossy board behind an empty mark, a camera on the floor line at (0, -3, 1.5) and a lamp at a place. */
function glossOf(
  lamp: string,
  more: { finish?: string; size?: string; shape?: string; set?: string } = {},
): ReportGloss {
  const { finish = "glossy", size = "2 x 3 m", shape = "disc(20 cm)", set = "" } = more;
  const text = `halfshade 1
recipe "Varnisher's wall"
set {
  flat board { size: ${size}, at: offset(behind: 1 m), finish: ${finish} }
  ${set}
}
light key { shape: ${shape}, output: 900 lm s, position: ${lamp}, aim: (0 m, 1 m, 1.5 m) }
camera { held: level, focal_length: 35 mm, aperture: f/8, shutter: 1/125 s, sensitivity: ISO 100, position: (0 m, -3 m, 1.5 m), focus: (0 m, 1 m, 1.5 m) }
`;
  const { evaluated, diagnostics } = run({ name: "a.light", text });
  if (evaluated === null) throw new Error(JSON.stringify(diagnostics));
  return evaluated.report.gloss;
}

describe("lights mirrored in glossy pieces", () => {
  test("angle in is angle out: the place on the board divides the way by the two distances from it", () => {
    // Lens 4 m before the board, lamp 2 m before it and 1.2 m to the right: 4 / (4 + 2) of the way across.
    const [row] = glossOf("(1.2 m, -1 m, 1.5 m)");
    expect(row).toMatchObject({ surface: "board", light: "key", seen: true, share: 1, reason: null });
    expect(row?.at?.[0]).toBeCloseTo((1.2 * 4) / 6, 6);
    expect(row?.at?.[1]).toBeCloseTo(1, 6);
    expect(row?.at?.[2]).toBeCloseTo(1.5, 6);
    // Through the middle of the lens: 0.8 m at 4 m, by an image of 36 mm at f s / (s - f).
    const image = (0.035 * 4) / (4 - 0.035);
    expect(row?.frame?.[0]).toBeCloseTo(0.5 + ((0.8 / 4) * image) / 0.036, 6);
    expect(row?.frame?.[1]).toBeCloseTo(0.5, 6);
  });

  test("the image is as wide as the light from the way by the mirror", () => {
    const [row] = glossOf("(1.2 m, -1 m, 1.5 m)", { shape: "sphere(20 cm)" });
    const way = Math.sqrt(1.2 * 1.2 + 6 * 6);
    expect(row?.width).toBeCloseTo((2 * Math.asin(0.1 / way) * 180) / Math.PI, 6);
  });

  test("matt mirrors nothing", () => {
    expect(glossOf("(1.2 m, -1 m, 1.5 m)", { finish: "matt" })).toEqual([]);
  });

  test.each([
    ["beside the board", "(3.6 m, -1 m, 1.5 m)", {}, "beside"],
    ["outside the picture", "(3.6 m, -1 m, 1.5 m)", { size: "8 x 3 m" }, "outside the picture"],
    ["behind the board", "(0.5 m, 3 m, 1.5 m)", {}, "different sides"],
    [
      "behind another board",
      "(1.2 m, -1 m, 1.5 m)",
      { set: "flat stop { size: 30 x 180 cm, at: (0.9 m, 0.5 m, 0 m) }" },
      "in the way",
    ],
  ])("%s it is not seen, and the report says why", (_, lamp, more, why) => {
    const [row] = glossOf(lamp, more);
    expect(row).toMatchObject({ seen: false, share: 0, at: null, width: null });
    expect(row?.reason).toContain(why);
  });

  test("a part of a large light at the board's edge", () => {
    // The board ends at x = 1; the image of the middle lies just beyond it.
    const [row] = glossOf("(1.55 m, -1 m, 1.5 m)", { shape: "rectangle(60 x 60 cm)" });
    expect(row?.seen).toBe(true);
    expect(row?.share).toBeGreaterThan(0);
    expect(row?.share).toBeLessThan(1);
  });
});
