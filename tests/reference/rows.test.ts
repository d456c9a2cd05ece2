import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { findQuantity } from "../../src/quantities/registry.js";
import { allowed, computeFrom, REFERENCE, readRows, referenceTopics } from "../helpers/reference-rows.js";

describe.each(referenceTopics())("outside values: %s", (topic) => {
  const readFile = (name: string) => readFileSync(join(REFERENCE, topic, `${name}.ies`), "utf8");

  test.each(readRows(topic).map((row) => [row.id, row.quantity, row] as const))("%s %s", (_id, name, row) => {
    const quantity = findQuantity(name);
    if (quantity === undefined) throw new Error(`no quantity ${name}`);
    const outcome = computeFrom(quantity, row.inputs, readFile);
    expect(typeof outcome.value, outcome.reason ?? outcome.problem).toBe("number");
    expect(Math.abs((outcome.value as number) - row.expected)).toBeLessThanOrEqual(allowed(row));
    const unit = row.unit === "(by output)" ? "by output" : row.unit;
    expect(quantity.unit).toBe(unit);
  });
});
