import { expect, test } from "vitest";
import { compile } from "../../src/compile.js";

const recipe = (claim: string) => `halfshade 1
recipe "A slip of the pen"

subject { height: 1.7 m }

camera {
  held: upright
  focal_length: 85 mm
  aperture: f/8
  shutter: 1/125 s
  sensitivity: ISO 100
  distance: 3 m
  height: 1.5 m
}

expect ${claim}
`;

const first = (claim: string) => compile({ name: "slip.light", text: recipe(claim) }).diagnostics[0];

test("a word like a result and like no place is taken for the result, with the way out", () => {
  const found = first("coverge > 90 %");
  expect(found?.code).toBe("result.unknown");
  expect(JSON.stringify(found?.fixes)).toContain("coverage");
  expect(first("headrom > 10 cm")?.code).toBe("result.unknown");
});

test("a word like a place, and one like nothing, stay a place", () => {
  expect(first("fase > floor")?.code).toBe("name.unknown");
  expect(first("qwertz > floor")?.code).toBe("name.unknown");
});
