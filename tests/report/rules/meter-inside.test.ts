import { describe, expect, test } from "vitest";
import { run } from "../../../src/pipeline.js";
import { meterInside } from "../../../src/report/rules/meter-inside.rule.js";
import { sceneLight } from "../../../src/transport/scene-light.js";
import { numberAfter } from "../../helpers/plan.js";
import { reportOf, worked } from "../../helpers/worked.js";

const around = `
room { size: 6 x 6 x 3 m }
light key { shape: disc(40 cm), output: 900 lm s, distance: 2 m, bearing: left(20 deg), height: 2 m }
camera { held: upright, distance: 2.5 m, height: 1.5 m, sensitivity: ISO 100, aperture: f/5.6, focal_length: 85 mm, shutter: 1/160 s }`;
/** A ball of 80 cm with its middle 1.2 m to the right and 1 m up, and a point this far from its middle. */
const ball = (out: string, more = "") => `${around}
set { sphere globe { diameter: 80 cm, at: offset(right: 1.2 m, up: 1 m) } }
subject { height: 1.7 m }
point spot { at: offset(right: 1.2 m, up: 1 m, ahead: ${out}), faces: key }
${more}`;
const found = (text: string) => {
  const { recipe, scene } = worked(text);
  return meterInside.check({ recipe, scene, light: sceneLight(scene) });
};

describe("meter-inside", () => {
  test("speaks from 2 cm below the surface of a ball of 40 cm radius", () => {
    expect(found(ball("38.1 cm"))).toHaveLength(0);
    const [row] = found(ball("37.9 cm"));
    expect(row).toMatchObject({
      severity: "check",
      message: "spot lies 2.1 cm inside globe; its reading is that of the surface nearest to it.",
    });
  });

  test("says so where there is no reading, and the way that it names leads out", () => {
    const [row] = found(ball("20 cm"));
    expect(row).toMatchObject({
      severity: "stop",
      message: "spot lies 20 cm inside globe, where no meter can be held: it has no reading.",
    });
    expect(row?.remedy).toContain("towards the camera's side");
    const by = numberAfter(row?.remedy ?? "", "is free", "cm");
    expect(found(ball(`${20 + by} cm`))).toHaveLength(0);
    expect(found(ball(`${20 + by - 3} cm`))).toHaveLength(1);
  });

  test("is not silent where there is no reading, however far the recipe lets a meter sink", () => {
    const lax = (out: string) => found(ball(out, "thresholds { meter_sunk: 30 cm }"));
    // Read to 5 cm below the surface, which is 40 cm from the middle.
    expect(lax("35.1 cm")).toHaveLength(0);
    expect(lax("34.9 cm")[0]?.severity).toBe("stop");
  });

  test("looks at a meter that an expectation holds elsewhere than the station of its name", () => {
    const text = (expects: string) => `${around}
set { sphere globe { diameter: 26 cm, at: offset(ahead: 27 cm, up: 1.586 m) } }
subject { height: 1.7 m }
point side { at: offset(right: 1 m, ahead: 10 cm, up: 1.586 m) }
${expects}`;
    const names = (expects: string) => found(text(expects)).map(({ message }) => message.split(" lies ")[0]);
    const before = names("");
    const asked = names("expect face.disc(towards: side) > f/2");
    expect(asked).toEqual([...before, "face (disc towards side)"]);
    // Said once, however often it is asked.
    expect(names("expect face.disc(towards: side) > f/2\nexpect face.disc(towards: side) > f/4")).toEqual(
      asked,
    );
  });

  test("no number stands in the report, but why", () => {
    const station = reportOf(ball("20 cm")).stations.find(({ name }) => name === "spot");
    expect(station).toMatchObject({
      f_number: null,
      exposure: { direct: 0, bounced: 0, total: 0 },
      reason: "lies 20 cm inside globe, where no meter can be held",
    });
  });

  test("an expectation about it cannot be decided, and a place that only an expectation asks for is looked at", () => {
    const text = ball("1 m", "expect exposure(globe.disc(towards: key)) is 3 lx s within 5 %");
    expect(found(text).map(({ about }) => about)).toEqual(["globe"]);
    const { evaluated } = run({ name: "test.light", text: `halfshade 1\nrecipe "test"\n${text}` });
    expect(evaluated?.report.expectations[0]).toMatchObject({
      outcome: "undecidable",
      reason: "globe lies 40 cm inside globe, where no meter can be held",
    });
  });

  test("speaks for another person's trunk, whose half depth is 0.075 of the stature", () => {
    const two = (y: string) => `${around}
subject ana { height: 1.6 m, at: offset(left: 1 m) }
subject ben { height: 1.6 m, at: offset(right: 1 m)
  point badge { up: 1.072 m, ahead: ${y}, faces: camera }
}`;
    expect(found(two("10.1 cm"))).toHaveLength(0);
    expect(found(two("9 cm"))[0]?.message).toMatch(/^ben\.badge lies 3 cm inside ben/);
  });
});
