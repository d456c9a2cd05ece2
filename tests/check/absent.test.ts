import { describe, expect, test } from "vitest";
import { compile } from "../../src/compile.js";
import { run } from "../../src/pipeline.js";

const light = "light key { shape: disc(40 cm), output: 900 lm s, position: (-1 m, -1.5 m, 2 m), aim: mark }";
const off = light.replace("output", "power: off, output");
const camera =
  "camera { held: upright, focal_length: 85 mm, aperture: f/4, shutter: 1/125 s, sensitivity: ISO 100, distance: 3 m, height: 1.5 m }";
const subject = "subject { height: 1.7 m }";
const set = "set { flat back { size: 2 x 2.4 m, reflectance: 40 %, at: (0 m, 1.5 m, 0 m) } }";
const recipe = (...lines: readonly string[]): string =>
  ["halfshade 1", 'recipe "Rope walk"', ...lines, ""].join("\n");

/** What the notes about absent results say, in order. */
const said = (...lines: readonly string[]): readonly string[] =>
  compile({ name: "a.light", text: recipe(...lines) }).diagnostics.flatMap(({ code, args }) =>
    code === "result.not-here" ? [String(args.cause)] : [],
  );

describe("an expectation of a result that this recipe cannot have is noted, with its cause", () => {
  test.each<[string, readonly string[], string]>([
    ["headroom > 10 cm", [subject, set, light], "there is no camera"],
    ["headroom > 10 cm", [subject, camera, light], "there is no set"],
    ["headroom > 10 cm", [camera, set, light], "there is no subject"],
    ["coverage > 90 %", [subject, set, light], "there is no camera"],
    ["coverage > 90 %", [subject, camera, light], "nothing stands behind the head"],
    ["uncovered(left) < 10 %", [subject, set, light], "there is no camera"],
    ["subject_share > 10 %", [camera, set, light], "there is no subject"],
    ["hand_limit > 1 m", [subject, set, light], "there is no camera"],
    ["near_limit > 1 m", [subject, light], "there is no camera"],
    ["key.angular_size < 20 deg", [camera, light], "there is no subject"],
    ["key.distance < 3 m", [camera, light], "there is no subject"],
    ["key.shadow_length < 3 m", [camera, light], "there is no subject"],
    ["stops_from_aperture(back) < 1 stop", [set, light], "there is no camera"],
    ["evenness(back) < 1 stop", [set, light], "there is no camera"],
    ["separation(hair, side: left) > 1 stop", [subject, camera, light], "nothing stands behind the head"],
    ["lit_to_shadow(face) < 4:1", [subject, camera, off], "no light is on"],
    ["key.reserve > 1 stop", [subject, camera, off], "`key` is off"],
    ["rim_width(key, side: left) > 1 mm", [subject, camera, off], "`key` is off"],
    ["mark.disc(towards: key, only: key) is f/4 within 1 stop", [camera, off], "`key` is off"],
    ["mark.dome(towards: camera) > 4 lx s", [light], "there is no camera"],
  ])("%s", (claim, lines, cause) => {
    expect(said(...lines, `expect ${claim}`)).toEqual([cause]);
  });

  test("without a camera a reading is not held against an f-number, but may be against lx s", () => {
    expect(said(set, light, "expect back is f/4 within 1 stop")).toEqual([
      "there is no camera, and without its ISO a reading has no f-number",
    ]);
    expect(said(set, light, "expect back > 1 lx s")).toEqual([]);
  });
});

test("nothing is noted where the result is there, and what is noted is indeed undecidable", () => {
  const claims = [
    "headroom > 0 m",
    "near_limit > 1 m",
    "key.angular_size < 60 deg",
    "key.shadow_length < 30 m",
    "lit_to_shadow(face) < 400:1",
    "back is f/4 within 20 stop",
  ].map((claim) => `expect ${claim}`);
  const outcomes = (text: string) =>
    run({ name: "a.light", text }).evaluated?.report.expectations.map(({ outcome }) => outcome);
  expect(said(subject, set, light, camera, ...claims)).toEqual([]);
  expect(outcomes(recipe(subject, set, light, camera, ...claims))).not.toContain("undecidable");
  const bare = ["expect headroom > 0 m", "expect near_limit > 1 m", "expect back is f/4 within 20 stop"];
  expect(said(set, light, ...bare)).toHaveLength(3);
  expect(outcomes(recipe(set, light, ...bare))).toEqual(["undecidable", "undecidable", "undecidable"]);
});

test("a place that is named stands in for the subject", () => {
  expect(said(light, camera, "expect key.angular_size(at: mark) < 60 deg")).toEqual([]);
});

test("a column is noted like an expectation, unless a row may bring what is missing", () => {
  const table = (sweep: string, shown: string): string => `table "T" {\n  ${sweep}\n  show ${shown}\n}`;
  const tape = "light key { shape: disc(40 cm), output: 900 lm s, distance: 2 m from mark, height: 1 m }";
  expect(said(tape, table("sweep key.height over [1 m, 2 m]", "near_limit"))).toEqual(["there is no camera"]);
  const steady = tape.replace("output", "power: off, full_power: 400 Ws, output");
  expect(said(subject, camera, steady, table("sweep key.height over [1 m, 2 m]", "key.reserve"))).toEqual([
    "`key` is off",
  ]);
  expect(said(subject, camera, steady, table("sweep key.power over [1/2, 1]", "key.reserve"))).toEqual([]);
});

test("nothing is noted while the text has an error: what is missing may be what could not be read", () => {
  expect(said(light, "camra { held: upright }", "expect near_limit > 1 m")).toEqual([]);
});
