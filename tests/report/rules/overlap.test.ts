import { describe, expect, test } from "vitest";
import { compile } from "../../../src/compile.js";
import { outsideRoom } from "../../../src/report/rules/outside-room.rule.js";
import { overlap } from "../../../src/report/rules/overlap.rule.js";
import type { Rule } from "../../../src/report/rules/rule.js";
import { buildScene } from "../../../src/scene/build.js";
import { sceneLight } from "../../../src/transport/scene-light.js";
import { numberAfter } from "../../helpers/plan.js";

const lamp =
  "light key { shape: disc(20 cm), output: 900 lm s, distance: 2 m, bearing: left(0 deg), height: 2 m }";
const found = (rule: Rule, text: string) => {
  const { recipe, diagnostics } = compile({
    name: "test.light",
    text: `halfshade 1\nrecipe "test"\n${text}\n${lamp}`,
  });
  const errors = diagnostics.filter(({ severity }) => severity === "error");
  if (recipe === null || errors.length > 0) throw new Error(errors.map(({ code }) => code).join(", "));
  const scene = buildScene(recipe, ({ code }) => {
    throw new Error(code);
  });
  return rule.check({ recipe, scene, light: sceneLight(scene) });
};
const messages = (rule: Rule, text: string) => found(rule, text).map(({ message }) => message);

describe("overlap", () => {
  // Trunks of 0.115 h half width: 1.7 m tall people, side by side, touch at 39.1 cm.
  const pair = (apart: number) =>
    `subject ana { height: 1.7 m }\nsubject ben { height: 1.7 m, at: offset(right: ${apart} cm) }`;

  test("speaks for people whose trunks are 5 cm in each other, not for arms", () => {
    expect(messages(overlap, pair(34.2))).toEqual([]);
    expect(messages(overlap, pair(33.8))).toEqual(["ana and ben reach 5.3 cm into each other."]);
  });

  test("the way that it names leads out", () => {
    const [row] = found(overlap, pair(20));
    expect(row?.remedy).toContain("20 cm to camera-right");
    const by = numberAfter(row?.remedy ?? "", "ben is clear of ana", "cm");
    expect(messages(overlap, pair(20 + by))).toEqual([]);
    // Touching at 39.1 cm; 5 cm in each other are let pass.
    expect(found(overlap, pair(20 + by - 6))).toHaveLength(1);
  });

  test("speaks for a ball in a person and a box round the legs", () => {
    const one = (piece: string) => `set { ${piece} }\nsubject { height: 1.7 m }`;
    // The trunk's middle lies at 0.67 h; its half depth is 12.75 cm.
    const globe = (ahead: number) =>
      one(`sphere globe { diameter: 20 cm, at: offset(ahead: ${ahead} cm, up: 113.9 cm) }`);
    expect(messages(overlap, globe(16.95))).toEqual(["globe and the person reach 5.8 cm into each other."]);
    expect(messages(overlap, globe(18))).toEqual([]);
    const box = one("box crate { size: 60 x 60 x 45 cm, at: offset(right: 0 m) }");
    expect(messages(overlap, box)[0]).toMatch(/^crate and the person reach \d+ cm into each other/);
  });

  test("not for those who sit, stand, lie and lean", () => {
    const set = `set {
  box seat { size: 40 x 40 x 45 cm, at: offset(left: 2 m) }
  box stage { size: 1 x 1 x 0.3 m, at: offset(right: 2 m) }
  table bench { size: 2 x 1 m, at: offset(behind: 2 m) }
  flat wall { size: 2 x 2 m, at: offset(behind: 12 cm) }
}`;
    expect(
      messages(
        overlap,
        `${set}
subject ana { height: 1.7 m, pose: seated, seat: 45 cm, at: offset(left: 2 m) }
subject ben { height: 1.7 m, at: offset(right: 2 m, up: 30 cm) }
subject cat { height: 1.7 m, pose: lying, at: offset(behind: 2 m, up: 75 cm), facing: left(90 deg) }
subject dov { height: 1.7 m }`,
      ),
    ).toEqual([]);
  });

  test("speaks from 2 cm for pieces, not for sheets among themselves", () => {
    const set = (up: number) => `subject { height: 1.7 m, at: offset(left: 3 m) }
set {
  box crate { size: 1 x 1 x 0.5 m, at: (0 m, 0 m, 0 m) }
  sphere globe { diameter: 40 cm, at: (0 m, 0 m, ${up} m) }
  flat one { size: 2 x 2 m, at: (3 m, 0 m, 0 m), faces: left(0 deg) }
  flat two { size: 2 x 2 m, at: (3 m, 0 m, 0 m), faces: left(90 deg) }
}`;
    expect(messages(overlap, set(0.681))).toEqual([]);
    expect(messages(overlap, set(0.679))).toEqual(["crate and globe reach 2.1 cm into each other."]);
  });

  test("is about the name that the sentence starts with", () => {
    expect(found(overlap, pair(20))[0]).toMatchObject({
      about: "ana",
      message: expect.stringMatching(/^ana and ben /),
    });
  });

  test("follows the thresholds of the recipe", () => {
    expect(messages(overlap, `thresholds { overlap_people: 30 cm }\n${pair(20)}`)).toEqual([]);
  });
});

describe("outside-room", () => {
  const inRoom = (piece: string, more = "") => `room { size: 4 x 5 x 2.5 m\n${more} }
set { ${piece} }
subject { height: 1.7 m }`;

  test("speaks from 2 cm through a wall, the floor or the ceiling, and says how to bring it in", () => {
    const crate = (right: number) => inRoom(`box crate { size: 1 x 1 x 1 m, at: offset(right: ${right} m) }`);
    expect(messages(outsideRoom, crate(1.515))).toEqual([]);
    const [row] = found(outsideRoom, crate(1.7));
    expect(row?.message).toBe("crate reaches 20 cm through the right wall.");
    expect(row?.remedy).toBe(
      "Look for a slip in a place or a size; 20 cm to camera-left it touches the right wall.",
    );
    expect(messages(outsideRoom, crate(1.7 - 0.2))).toEqual([]);
    expect(
      messages(outsideRoom, inRoom("sphere globe { diameter: 40 cm, at: offset(left: 1 m, up: 5 cm) }")),
    ).toEqual(["globe reaches 15 cm through the floor."]);
    expect(
      messages(outsideRoom, inRoom("table bench { size: 1 x 1 m, at: offset(left: 1 m), height: 2.7 m }")),
    ).toEqual(["bench lies outside the room, beyond the ceiling."]);
  });

  test("speaks for a person, and for what is too long for the room", () => {
    const person = `room { size: 4 x 5 x 2.5 m }\nsubject { height: 1.7 m, at: offset(right: 1.9 m) }`;
    // Half the width of the shoulders is (0.13 + 0.026) h, 26.5 cm.
    expect(messages(outsideRoom, person)).toEqual(["The person reaches 17 cm through the right wall."]);
    expect(
      found(outsideRoom, inRoom("box bar { size: 5 x 0.2 x 0.2 m, at: offset(behind: 1 m) }"))[0]?.remedy,
    ).toBe("It is 5.00 m long there, and the room 4.00 m: make it smaller.");
  });

  test("a person who is too tall takes the arms down, or another pose", () => {
    const person = (height: number, arms: string) =>
      found(outsideRoom, `room { size: 4 x 5 x 2.1 m }\nsubject { height: ${height} m, arms: ${arms} }`);
    expect(person(1.8, "raised")[0]?.remedy).toBe(
      "The figure is longer there than the 2.10 m of the room: arms down, which makes it fit; or a lower pose, or a higher room.",
    );
    expect(person(1.8, "hanging")).toEqual([]);
    expect(person(2.3, "hanging")[0]?.remedy).toBe(
      "The figure is longer there than the 2.10 m of the room: a lower pose, or a higher room.",
    );
  });

  test("not for what stands at a wall, in an opening, or beyond one that has an opening", () => {
    expect(messages(outsideRoom, inRoom("flat back { size: 3 x 2.4 m, at: offset(behind: 2.5 m) }"))).toEqual(
      [],
    );
    const door = "opening door { wall: back, at: (0 m, 2.5 m, 0 m), size: 1.2 x 2.1 m }";
    const box = (behind: number, right = 0) =>
      `box crate { size: 1 x 1 x 1 m, at: offset(behind: ${behind} m, right: ${right} m) }`;
    expect(messages(outsideRoom, inRoom(box(2.5), door))).toEqual([]);
    expect(messages(outsideRoom, inRoom(box(4), door))).toEqual([]);
    expect(messages(outsideRoom, inRoom(box(2.5, 0.5), door))).toEqual([
      "crate reaches 50 cm through the back wall.",
    ]);
    expect(messages(outsideRoom, inRoom(box(4)))).toEqual([
      "crate lies outside the room, beyond the back wall.",
    ]);
  });

  test("not for what is seen through an opening and is larger than the room, but for what is sunk in the ground", () => {
    const pane = "opening pane { wall: left, at: (-2 m, 0 m, 0.9 m), size: 1.2 x 1.2 m }";
    const hedge = (height: number, left: number) =>
      `box hedge { size: 1 x 9 x ${height} m, at: offset(left: ${left} m) }`;
    expect(messages(outsideRoom, inRoom(hedge(4, 5), pane))).toEqual([]);
    // Without the window, or with a part of it inside, the room's other walls and the ceiling hold.
    expect(messages(outsideRoom, inRoom(hedge(4, 5)))).toHaveLength(4);
    expect(messages(outsideRoom, inRoom(hedge(4, 2.4), pane))).toHaveLength(4);
    expect(
      messages(outsideRoom, inRoom("sphere globe { diameter: 1 m, at: offset(left: 5 m, up: 30 cm) }", pane)),
    ).toEqual(["globe reaches 20 cm through the floor."]);
  });

  test("an opening may take up the whole wall, or end at a corner", () => {
    const gate = (width: number, right: number) =>
      `opening gate { wall: back, at: (${right} m, 2.5 m, 0 m), size: ${width} x 2.5 m }`;
    const cart = (behind: number, right: number) => (more: string) =>
      inRoom(`box cart { size: 1 x 1 x 1 m, at: offset(behind: ${behind} m, right: ${right} m) }`, more);
    expect(messages(outsideRoom, cart(4, 0)(gate(4, 0)))).toEqual([]);
    expect(messages(outsideRoom, cart(2.5, 0)(gate(4, 0)))).toEqual([]);
    expect(messages(outsideRoom, cart(2.5, 1)(gate(2, 1)))).toEqual([]);
    expect(messages(outsideRoom, cart(2.5, -1)(gate(2, 1)))).toEqual([
      "cart reaches 50 cm through the back wall.",
    ]);
  });
});
