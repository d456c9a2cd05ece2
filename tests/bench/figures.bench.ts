import { readFileSync } from "node:fs";
import { bench, describe } from "vitest";
import { compile } from "../../src/compile.js";
import type { Recipe } from "../../src/model/types.js";
import { evaluate } from "../../src/pipeline.js";
import { addBounced } from "../../src/preview/bounced.js";
import { addDirect } from "../../src/preview/direct.js";
import { showLamps } from "../../src/preview/lamps.js";
import { viewOf } from "../../src/preview/view.js";
import { renderSheet } from "../../src/render/sheet-html.js";
import { drawFigure, figureTable } from "../../src/report/figures/figures.js";
import type { Plan } from "../../src/report/plan.js";
import { daySheet } from "../../src/report/sheet/sheet.js";
import type { Scene } from "../../src/scene/types.js";
import { sceneLight } from "../../src/transport/scene-light.js";
import { withOurKits } from "../helpers/kits.js";
import { sceneOf } from "../helpers/worked.js";
import { corner } from "./bounce-scene.js";
import { coldStarts } from "./cold-start.js";
import { cpuNow } from "./interleaved.js";

/**
 * What figures, sheet and preview cost. Clock: CPU time of the process, one run each after one to warm up; of bare node the
 * user and system time of the whole process, least of 5. All eight figures of a recipe, with the light that a command has
 * that draws one, against its evaluation with bounce; the sheet as HTML, its two small figures included, against the
 * figures; a preview of 360 x 540 pixels of the corner of `bounce-scene.ts` against the start of bare node.
 */
const names = (process.env.FIGURE_RECIPES ?? "rim window").split(" ");

function timed<T>(run: () => T): readonly [result: T, ms: number] {
  const start = cpuNow();
  const result = run();
  return [result, cpuNow() - start];
}

function recipeOf(name: string): Recipe {
  const text = readFileSync(new URL(`../../examples/${name}.light`, import.meta.url), "utf8");
  const { recipe } = compile({ name: `${name}.light`, text }, withOurKits);
  if (recipe === null || recipe.kind !== "recipe") throw new Error(`${name} is wrong`);
  return recipe;
}

const ms = (value: number): string => `${value.toFixed(0)} ms`;
const once = { iterations: 1, time: 0, warmupIterations: 1, warmupTime: 0 };

describe("figures and sheet against the evaluation", () => {
  for (const name of names) {
    bench(
      name,
      () => {
        const recipe = recipeOf(name);
        const [{ scene, report }, whole] = timed(() => evaluate(recipe));
        const plan: Plan = { recipe, scene, light: sceneLight(scene) };
        const parts = figureTable.map((row) => timed(() => drawFigure(row.name, { plan, report }))[1]);
        const figures = parts.reduce((sum, part) => sum + part, 0);
        const [, sheet] = timed(() => renderSheet(daySheet(plan, report), "a4"));
        const each = figureTable.map((row, i) => `${row.name} ${(parts[i] ?? 0).toFixed(0)}`).join(", ");
        process.stdout.write(
          `${name}: evaluation ${ms(whole)}, figures ${ms(figures)} (${each}), sheet ${ms(sheet)}\n`,
        );
      },
      once,
    );
  }
});

/** The corner, seen upright so that the person and both flats fill the picture. */
function seenCorner(): Scene {
  const { camera } = sceneOf(
    "subject { height: 1.7 m }\ncamera { held: upright, focal_length: 60 mm, aperture: f/8, shutter: 1/125 s, sensitivity: ISO 200, distance: 3.2 m, height: 1.2 m }",
  );
  return { ...corner(), camera };
}

describe("a preview against bare node", () => {
  bench(
    "360 x 540 of the corner",
    () => {
      const scene = seenCorner();
      const [view, seen] = timed(() => viewOf(scene, 360));
      if (view === null) throw new Error("no camera");
      const exposure = new Float64Array(view.width * view.height);
      const [, direct] = timed(() => addDirect(scene, view, exposure));
      const [, bounced] = timed(() => addBounced(scene, sceneLight(scene, "look"), view, exposure));
      const [, lamps] = timed(() => showLamps(scene, scene.sources, view, 1, exposure));
      const whole = seen + direct + bounced + lamps;
      const bare = coldStarts([{ name: "bare", args: ["-e", "0"] }], 5).get("bare") ?? Number.NaN;
      process.stdout.write(
        `${view.width} x ${view.height}: ${ms(whole)} (what is seen ${ms(seen)}, direct ${ms(direct)}, bounced ${ms(bounced)}, lamps ${ms(lamps)}), bare node ${ms(bare)}: ${(whole / bare).toFixed(1)} times\n`,
      );
    },
    once,
  );
});
