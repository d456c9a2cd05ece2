import { describe, expect, test } from "vitest";
import { belowFull } from "../../../src/model/make/lamps.js";
import { left, offset } from "../../../src/model/make/points.js";
import { size, volume } from "../../../src/model/make/sizes.js";
import type { Recipe } from "../../../src/model/types.js";
import { buildReport } from "../../../src/report/build.js";
import { readingAt } from "../../../src/report/light/reading.js";
import { bounceColour } from "../../../src/report/rules/bounce-colour.rule.js";
import { clippedLit } from "../../../src/report/rules/clipped-lit.rule.js";
import { reflectanceAssumed } from "../../../src/report/rules/reflectance-assumed.rule.js";
import { deg, m, percent, stops } from "../../../src/units/make.js";
import { block } from "../../helpers/models.js";
import { bulb, camera, dish, finding, findings, numberAfter, planOf, setOf } from "../../helpers/plan.js";
import { reflect, reflectWall, roomOf } from "../../helpers/rooms.js";

const limit = (name: string, value: number) => ({ thresholds: [{ name, value, unit: "stop", written: "" }] });
const readingOf = (parts: Partial<Recipe>, station: string): number => {
  const plan = planOf(parts);
  const found = plan.scene.stations.find((row) => row.name === station);
  if (found === undefined) throw new Error(`no ${station}`);
  return readingAt(plan, found).exposure;
};

describe("clipped-lit", () => {
  const person = (skin: number) => [
    block("subject", null, { height: m(1.7), skin: percent(skin), cloth: percent(10) } as never),
  ];
  /** Skin that throws so much back, with the key so many stops under full, in the open. */
  const shot = (skin: number, down: number): Partial<Recipe> => ({
    subjects: person(skin) as never,
    lights: [dish({ power: belowFull(stops(down)) })],
  });
  // A disc at the face with C 250 at ISO 200, f/8: pure white at E = 250 x 64 / 200 / reflectance = 80 / reflectance.
  const full = readingOf(shot(60, 0), "face");
  // Less what an 85 mm lens loses by focusing at the face, 3.40 m from it: 2 log2(1 + m), m = 85 / (3400 - 85).
  const loss = 2 * Math.log2(1 + 85 / (3403 - 85));
  const down = (skin: number): number => Math.log2((full * skin) / 100 / 80) - loss;

  test("speaks when skin comes nearer to white than a tenth of a stop", () => {
    expect(findings(clippedLit, shot(60, down(60) + 0.08))).toHaveLength(1);
    expect(findings(clippedLit, shot(60, down(60) + 0.12))).toHaveLength(0);
    expect(findings(clippedLit, { ...shot(60, 0), camera: null })).toHaveLength(0);
    const { message, remedy } = finding(clippedLit, shot(60, down(60) - 0.4));
    expect(message).toContain("the skin of the face (60 %)");
    expect(numberAfter(remedy, "down by", "stop")).toBeCloseTo(0.5, 5);
  });

  test("takes the worst of what is in the picture, and leaves a white background that is wished for", () => {
    const back = block("flat", "back", { size: size(m(2), m(3)), at: offset({ behind: m(0.3) }) });
    const parts = { ...shot(10, 0), set: setOf(back as never) };
    expect(finding(clippedLit, parts).about).toBe("back");
    const side = { ...parts, camera: { ...camera, bearing: left(deg(97)) } as never };
    expect(findings(clippedLit, side).map((row) => row.about)).not.toContain("back");
    const wish = {
      kind: "reading",
      type: "reading",
      station: "face",
      receptor: "disc",
      towards: null,
      lights: [],
    };
    const intent = block("intent", null, {
      background: { stops: stops(0.5), side: "over", of: wish, written: "" },
    } as never);
    expect(findings(clippedLit, { ...parts, intent }).map((row) => row.about)).not.toContain("back");
  });
});

describe("bounce-colour", () => {
  const wall = (share: number) =>
    block("wall", "right", { reflectance: percent(share), tint: "green" } as never);
  const shot = (share: number): Partial<Recipe> => ({
    lights: [bulb()],
    room: roomOf(reflect("walls", 20), reflect("ceiling", 20), reflect("floor", 20), wall(share) as never),
  });
  const black: Partial<Recipe> = {
    ...shot(0),
    room: roomOf(reflect("walls", 20), reflect("ceiling", 20), reflect("floor", 20), reflectWall("right", 0)),
  };

  test("speaks when a coloured wall gives more than its threshold of the light in the shade", () => {
    const [all, without] = [readingOf(shot(70), "shaded_cheek"), readingOf(black, "shaded_cheek")];
    const share = 1 - without / all;
    expect(share).toBeGreaterThan(0.2);
    const { message, remedy } = finding(bounceColour, shot(70));
    expect(message).toContain("the right wall: the shade turns green");
    const said = Number(/^(\d+) %/.exec(message)?.[1]) / 100;
    expect(Math.abs(said - share)).toBeLessThan(0.03);
    expect(Math.abs(numberAfter(remedy, "is then", "stop darker") - Math.log2(all / without))).toBeLessThan(
      0.1,
    );
    expect(findings(bounceColour, { ...shot(70), ...limit("bounce_colour", said + 0.01) })).toHaveLength(0);
    expect(findings(bounceColour, { ...shot(70), ...limit("bounce_colour", said - 0.01) })).toHaveLength(1);
  });

  test("of one colour on two walls is one finding, with both shares", () => {
    const tinted = block("walls", null, { reflectance: percent(70), tint: "green" } as never);
    const all: Partial<Recipe> = {
      lights: [bulb()],
      room: roomOf(reflect("ceiling", 0), reflect("floor", 0), tinted as never),
      ...limit("bounce_colour", 0.1),
    };
    const { message, remedy } = finding(bounceColour, all);
    expect(message.match(/by way of/g)?.length).toBeGreaterThan(1);
    expect(message).toContain("the shade turns green");
    expect(remedy).toMatch(/^Cover them with white/);
  });

  test("is silent about walls without a colour, and about weak ones", () => {
    expect(findings(bounceColour, { ...shot(70), room: roomOf(reflectWall("right", 70)) })).toHaveLength(0);
    expect(findings(bounceColour, shot(3))).toHaveLength(0);
  });
});

describe("reflectance-assumed", () => {
  const silent: Partial<Recipe> = {
    lights: [bulb()],
    room: block("room", null, {
      size: volume(m(3.5), m(4.5), m(2.6)),
      parts: [reflect("ceiling", 80), reflect("floor", 30)],
    } as never) as never,
  };
  const withWalls = (share: number): Partial<Recipe> => ({
    ...silent,
    room: block("room", null, {
      size: volume(m(3.5), m(4.5), m(2.6)),
      parts: [reflect("ceiling", 80), reflect("floor", 30), reflect("walls", share)],
    } as never) as never,
  });

  test("speaks when walls that nobody has described decide a reading, with what they would do", () => {
    const { message, about } = finding(reflectanceAssumed, silent);
    expect(about).toBe("walls");
    expect(message).toContain("50 % is assumed, and with 30 %");
    const moved = ["face", "shaded_cheek"].map((name) =>
      Math.log2(readingOf(withWalls(50), name) / readingOf(withWalls(30), name)),
    );
    expect(numberAfter(message, "would read", "stop less")).toBe(Number(Math.max(...moved).toFixed(1)));
    expect(findings(reflectanceAssumed, withWalls(50))).toHaveLength(0);
    expect(
      findings(reflectanceAssumed, { ...silent, ...limit("assumed", Math.max(...moved) + 0.01) }),
    ).toHaveLength(0);
    expect(
      findings(reflectanceAssumed, { ...silent, ...limit("assumed", Math.max(...moved) - 0.01) }),
    ).toHaveLength(1);
  });

  test("what it speaks of is starred among what was assumed, and nothing else of its kind", () => {
    const starred = (parts: Partial<Recipe>): readonly string[] => {
      const { recipe, scene, light } = planOf(parts);
      const { assumed } = buildReport(recipe, scene, light);
      return assumed.flatMap(({ what, matters }) =>
        matters && ["walls", "ceiling", "floor"].includes(what) ? [what] : [],
      );
    };
    expect(starred(silent)).toEqual(["walls"]);
    expect(starred({ ...silent, ...limit("assumed", 2) })).toEqual([]);
    expect(starred(withWalls(50))).toEqual([]);
    const known = [{ code: "reflectance-assumed" as const, because: "metered before" }];
    expect(starred({ ...silent, silence: known })).toEqual(["walls"]);
  });

  test("takes the tolerance that the recipe sets", () => {
    const tolerances = [{ name: "assumed_reflectance", value: 0.02, unit: "1", written: "2 %" }];
    expect(findings(reflectanceAssumed, { ...silent, tolerances })).toHaveLength(0);
  });
});
