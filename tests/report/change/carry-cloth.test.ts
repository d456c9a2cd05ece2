import { expect, test } from "vitest";
import { cosinePower } from "../../../src/model/make/lamps.js";
import { named, offset } from "../../../src/model/make/points.js";
import { size } from "../../../src/model/make/sizes.js";
import { atDistance, withSource } from "../../../src/report/change/move-source.js";
import { readingAt } from "../../../src/report/light/reading.js";
import { m, number } from "../../../src/units/make.js";
import { block } from "../../helpers/models.js";
import { dish, planOf, setOf } from "../../helpers/plan.js";

const face = [0, -0.0969, 1.5861] as const;
/** A cloth straight before the face, with a head 0.6 m behind it on the same line. */
const at = (away: number) => {
  const light = dish({
    through: "silk",
    position: offset({ ahead: m(0.0969 + away + 0.6), up: m(face[2]) }),
    beam: cosinePower(number(3)),
  });
  const { distance: _, bearing: __, height: ___, ...rest } = light;
  const silk = block("scrim", "silk", {
    size: size(m(1.2), m(1.2)),
    at: offset({ ahead: m(0.0969 + away), up: m(face[2]) }),
    faces: { kind: "point", point: named("face"), written: "face" },
  } as never);
  return planOf({ lights: [rest as never], set: setOf(silk as never) });
};

test("a cloth light that is carried takes its scrim and its head along", () => {
  const near = at(1);
  const [cloth] = near.scene.sources;
  if (cloth === undefined) throw new Error("no light");
  // The lit cloth starts a millimetre before the scrim.
  const moved = withSource(near, 0, atDistance(cloth, face, 2 - 1e-3));
  const there = at(2);
  const placed = (plan: typeof near) =>
    plan.scene.polygons
      .find((row) => row.name === "silk")
      ?.vertices.flat()
      .map((x) => x.toFixed(6))
      .sort();
  expect(placed(moved)).toEqual(placed(there));
  const heads = [moved, there].map(({ scene }) => scene.sources.find((row) => row.spillOf === "key")?.centre);
  heads[0]?.forEach((x, i) => {
    expect(x).toBeCloseTo(heads[1]?.[i] as number, 6);
  });
  for (const [i, station] of there.scene.stations.entries()) {
    const other = moved.scene.stations[i];
    if (other === undefined) throw new Error("no station");
    const [a, b] = [readingAt(moved, other), readingAt(there, station)];
    expect(Math.abs(Math.log2(a.exposure / b.exposure))).toBeLessThan(0.01);
  }
  // As before, the scene that it came from is untouched.
  expect(placed(near)).not.toEqual(placed(there));
});

test("a cloth light that is only turned up keeps the work of its set", () => {
  const near = at(1);
  const [cloth] = near.scene.sources;
  if (cloth === undefined) throw new Error("no light");
  expect(withSource(near, 0, { ...cloth, energy: 2 * cloth.energy }).light).toBe(near.light);
});
