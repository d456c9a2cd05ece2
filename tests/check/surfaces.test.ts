import { describe, expect, test } from "vitest";
import { run } from "../../src/pipeline.js";

const found = (text: string, light = "") =>
  run({
    name: "test.light",
    text: `halfshade 1
recipe "test"
room { size: 5 x 6 x 2.8 m }
subject { height: 1.7 m }
light key { shape: disc(20 cm), output: 900 lm s, position: (-1.4 m, -1.4 m, 1.5 m)${light} }
camera { held: upright, distance: 2.2 m, height: 1.5 m, focal_length: 85 mm, aperture: f/8, shutter: 1/125 s, sensitivity: ISO 200 }
${text}`,
  }).diagnostics;
const codes = (text: string, light = "") => found(text, light).map(({ code }) => code);
const veil =
  "set { scrim veil { size: 1.5 x 1.5 m, at: offset(left: 1 m, ahead: 1 m, up: 1.5 m), faces: face } }";

describe("a light through a cloth or into a surface", () => {
  test("is one of the two", () => {
    expect(codes(veil, ", through: veil")).toEqual([]);
    expect(codes(veil, ", into: ceiling")).toEqual([]);
    expect(codes(veil, ", through: veil, into: ceiling")).toEqual(["light.through-and-into"]);
  });

  test("likeness and variants may put one in the place of the other", () => {
    const light = `\ndefine light like_veil { through: veil }
light fill like like_veil { shape: disc(20 cm), output: 900 lm s, position: (1.4 m, -1.4 m, 1.5 m), into: ceiling }`;
    expect(codes(veil + light)).toEqual([]);
  });

  test("the ceiling lets no light through, and that is the cause that is told", () => {
    const [row, ...more] = found(veil, ", through: ceiling");
    expect(more).toEqual([]);
    expect(row?.code).toBe("name.kind");
    expect(row?.args).toMatchObject({ name: "ceiling", kind: "surface of the room" });
    expect(row?.args.wanted).toContain("`into: ceiling`");
  });
});

describe("pieces of the set", () => {
  const flats = (a: string, b: string) =>
    `set {\n  flat one { size: 1 x 2 m, ${a} }\n  flat two { size: 1 x 2 m, ${b} }\n}`;

  test("two flats that hang on each other are a ring, and no more is wrong with them", () => {
    expect(codes(flats("hinge: left_edge(two)", "hinge: right_edge(one)"))).toEqual(["point.circular"]);
    expect(codes(flats("at: offset(behind: 2 m)", "hinge: right_edge(one)"))).toEqual([]);
  });

  test("an opening without a hinge is noted", () => {
    expect(codes(flats("at: offset(behind: 2 m)", "at: offset(behind: 3 m), opening: 100 deg"))).toEqual([
      "flat.opening",
    ]);
    expect(codes(flats("at: offset(behind: 2 m)", "hinge: right_edge(one), opening: 100 deg"))).toEqual([]);
  });

  test("a post is no lower than it is wide", () => {
    const post = (height: number) =>
      `set { capsule post { diameter: 40 cm, height: ${height} cm, at: offset(right: 1 m) } }`;
    expect(codes(post(39))).toEqual(["capsule.low"]);
    expect(codes(post(40))).toEqual([]);
  });
});

describe("the name of a surface in a result", () => {
  const board = "set { flat board { size: 3 x 2.5 m, at: offset(behind: 2 m) } }\n";
  const claim = (name: string) =>
    `${board}expect separation(hair, ${name}, side: left) is 1 stop within 9 stop`;

  test("one that is unknown is called so, with what is near", () => {
    const [row, ...more] = found(claim("bord"));
    expect(more).toEqual([]);
    expect(row?.code).toBe("name.unknown");
    expect(row?.fixes[0]?.title).toContain("board");
    expect(codes(claim("board"))).toEqual([]);
  });

  test("a light is no surface", () => {
    expect(codes(claim("key"))).toEqual(["result.argument"]);
  });
});
