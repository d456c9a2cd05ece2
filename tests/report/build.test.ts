import { expect, test } from "vitest";
import { buildReport } from "../../src/report/build.js";
import { reportSchema } from "../../src/report/schema/report.js";
import { planOf } from "../helpers/plan.js";

test("a report is valid against its schema and is plain JSON", () => {
  const { recipe, scene } = planOf();
  const report = buildReport(recipe, scene);
  expect(reportSchema.parse(report)).toEqual(report);
  expect(JSON.parse(JSON.stringify(report))).toEqual(report);
});
