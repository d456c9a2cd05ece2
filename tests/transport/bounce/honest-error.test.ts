import { expect, test } from "vitest";
import type { Scene } from "../../../src/scene/types.js";
import { sceneLight } from "../../../src/transport/scene-light.js";
import { mustBreak } from "../../helpers/must-break.js";
import { sceneOf } from "../../helpers/worked.js";
import { randomBlocks } from "./random-scenes.js";

/** What one lamp bounces to one meter by usual and by finer working, and how far both say they may be off together. */
interface Pair {
  readonly apart: number;
  readonly stated: number;
}

function pairsOf(scene: Scene): readonly Pair[] {
  const [usual, fine] = [sceneLight(scene), sceneLight(scene, "fine")];
  return scene.stations.flatMap((station) =>
    scene.sources.flatMap((source) => {
      const [a, b] = [usual.reach(source, station), fine.reach(source, station)];
      if (!(b.bounced > 0)) return [];
      return [
        {
          apart: Math.abs(a.bounced - b.bounced),
          stated: Math.sqrt(a.error * a.error + b.error * b.error),
        },
      ];
    }),
  );
}

test("the stated error of bounced light covers what finer working finds, nearly always, and is not wider by far", () => {
  const pairs = [1, 3, 10].flatMap((seed) => pairsOf(sceneOf(randomBlocks(seed))));
  const outside = (scale: number): number =>
    pairs.filter(({ apart, stated }) => apart > scale * stated).length / pairs.length;
  expect(pairs.length).toBeGreaterThan(40);
  // 2.5 standard errors leave 1.2 % of a normal spread outside.
  const law = (scale: number): void => expect(outside(scale)).toBeLessThan(0.03);
  law(1);
  mustBreak(() => law(0.2));
  // One standard error leaves about a third outside: a bound that never meets the deviations would say nothing.
  expect(outside(0.2)).toBeGreaterThan(0.2);
});
