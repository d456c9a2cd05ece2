import fc from "fast-check";
import { expect, test } from "vitest";
import { renderJson } from "../../src/render/json.js";
import { sample } from "./sample-report.js";

test("the report comes back from JSON, keys in their order", () => {
  const text = renderJson(sample);
  expect(Object.keys(JSON.parse(text))).toEqual(Object.keys(sample));
  expect(text.endsWith("}\n")).toBe(true);
});

test("any data gives JSON with no number that is not finite and no minus before zero", () => {
  fc.assert(
    fc.property(fc.jsonValue({ noUnicodeString: false }), fc.double(), (data, number) => {
      const text = renderJson({ data, number, zero: -0 });
      expect(text).not.toMatch(/NaN|Infinity|: -0[,\n]/);
      expect(Object.keys(JSON.parse(text))).toEqual(["data", "number", "zero"]);
    }),
  );
});
