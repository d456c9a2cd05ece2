import { expect, test } from "vitest";
import { compile } from "../../../src/compile.js";
import { printRecipe } from "../../../src/model/print.js";
import { run } from "../../../src/pipeline.js";
import { renderText } from "../../../src/render/text.js";
import { rules } from "../../../src/report/rules/index.js";
import { warningTable } from "../../../src/vocabulary/warnings.js";

const text = (silence: string): string => `halfshade 1
recipe "Chandler at the quay"
subject { height: 1.7 m }
light key {
  role: key
  shape: disc(20 cm)
  calibration: metered(f/11, at: 2 m, ISO 100)
  distance: 3 m
  bearing: left(35 deg)
  height: 1.9 m
  stand { highest: 1.7 m, head: 2 kg, weight: 2 kg, feet: 50 cm, bag: 10 kg }
}
intent { pass_for: sunlight(elevation: 30 deg) }
camera { held: upright, focal_length: 85 mm, aperture: f/8, shutter: 1/125 s, sensitivity: ISO 200, distance: 3.5 m, height: 1.3 m }
${silence}
`;

const reported = (silence: string) => {
  const { evaluated, diagnostics } = run({ name: "quay.light", text: text(silence) });
  if (evaluated === null) throw new Error(JSON.stringify(diagnostics));
  return evaluated.report;
};
const codes = (silence: string): readonly string[] =>
  reported(silence).warnings.map((warning) => warning.code);

test("a silenced warning goes to the list of silenced ones, with its reason and with what it would say", () => {
  const plain = reported("");
  const before = plain.warnings.filter((row) => row.code === "low-sun");
  expect(before).toHaveLength(1);
  expect(plain.silenced).toEqual([]);
  const after = reported('silence { `low-sun`: "the last hour is what we want" }');
  expect(after.silenced).toEqual([
    { code: "low-sun", because: "the last hour is what we want", warnings: before },
  ]);
  expect(after.warnings).toEqual(plain.warnings.filter((row) => row.code !== "low-sun"));
  const said = renderText(after, { width: 200 });
  expect(said).toContain("low-sun, because: The last hour is what we want.");
});

test("what is silenced counts neither for `no_warnings` nor for the headline", () => {
  expect(codes("")).toContain("stand-too-short");
  const all = codes("").map((code) => `\`${code}\`: "known"`);
  const found = reported(`silence { ${all.join(", ")} }\nexpect no_warnings`);
  expect(found.warnings).toEqual([]);
  expect(found.expectations.map((row) => row.outcome)).toEqual(["passed"]);
  expect(reported("expect no_warnings").expectations.map((row) => row.outcome)).toEqual(["failed"]);
  expect(found.headline).not.toMatch(/stop;|check|note/);
});

test("a silenced warning that does not speak is listed as such", () => {
  const found = reported('silence { `two-suns`: "both are wanted" }');
  expect(found.silenced).toEqual([{ code: "two-suns", because: "both are wanted", warnings: [] }]);
  expect(renderText(found)).toContain("It does not speak here");
});

test("warnings about safety are refused", () => {
  const { sound, diagnostics } = compile({
    name: "quay.light",
    text: text('silence { `stand-tip`: "the floor is level" }'),
  });
  expect(sound).toBe(false);
  expect(diagnostics.map((row) => row.code)).toContain("silence.safety");
  expect(warningTable.filter((row) => row.safety).map((row) => row.code)).toEqual([
    "stand-tip",
    "boom-balance",
    "heat-near",
    "circuit-load",
    "flash-rate",
    "loose-flat",
    "way-out",
  ]);
});

test("a model with silenced warnings prints as a text that says the same", () => {
  const { recipe } = compile({ name: "quay.light", text: text('silence { `low-sun`: "a \\"late\\" sun" }') });
  if (recipe === null) throw new Error("no recipe");
  const again = compile({ name: "again.light", text: printRecipe(recipe) }).recipe;
  expect(again?.silence.map(({ code, because }) => ({ code, because }))).toEqual([
    { code: "low-sun", because: 'a "late" sun' },
  ]);
});

test("the vocabulary's table of warnings is that of the rules, in the same order", () => {
  expect(rules.map(({ code, safety }) => ({ code, safety }))).toEqual([...warningTable]);
});
