import { readFileSync } from "node:fs";
import { bench, describe } from "vitest";
import { compile } from "../../src/compile.js";
import { reportColour } from "../../src/report/colour/build.js";
import { measuredInputs } from "../../src/report/evaluate/inputs.js";
import { reportFaces } from "../../src/report/face/report.js";
import { reportFinishing } from "../../src/report/finishing/build.js";
import { reportFrame, reportSharpness } from "../../src/report/frame/report.js";
import { reportTiming } from "../../src/report/frame/report-timing.js";
import { reportIntent } from "../../src/report/intent/build.js";
import { keyReading } from "../../src/report/light/key-reading.js";
import type { Plan } from "../../src/report/plan.js";
import { rules } from "../../src/report/rules/index.js";
import { reportShadows } from "../../src/report/shadows.js";
import { reportStations } from "../../src/report/stations.js";
import { castOf } from "../../src/report/thrown/cast.js";
import { reportThrown } from "../../src/report/thrown/report.js";
import { buildScene } from "../../src/scene/build.js";
import { sceneLight } from "../../src/transport/scene-light.js";
import { withOurKits } from "../helpers/kits.js";
import { cpuNow } from "./interleaved.js";

/**
 * The parts of a report of `examples/NAME.light` against its bounced light. Baseline: all readings of its stations, with
 * intervals, direct and bounced, with nothing kept from before. Then, with those readings at hand as a report has them:
 * the sections on picture, shadows, faces, colour, wishes and what remains to be done, and all warnings. Clock: CPU time
 * of the process, one run. `REPORT_PARTS=1` prints every section and the dearest warnings.
 */
const names = (process.env.REPORT_RECIPES ?? "low-ceiling-mended rim").split(" ");

function timed(run: () => unknown): number {
  const start = cpuNow();
  run();
  return cpuNow() - start;
}

function planOf(name: string): Plan {
  const text = readFileSync(new URL(`../../examples/${name}.light`, import.meta.url), "utf8");
  const { recipe } = compile({ name: `${name}.light`, text }, withOurKits);
  if (recipe === null) throw new Error(`${name} is wrong`);
  const scene = buildScene(recipe, () => undefined);
  return { recipe, scene, light: sceneLight(scene) };
}

describe("a report's parts against its bounce", () => {
  for (const name of names) {
    bench(
      name,
      () => {
        const plan = planOf(name);
        const bounce = timed(() => reportStations(plan, measuredInputs(plan)));
        const parts = new Map<string, number>();
        const part = (title: string, run: () => unknown): void => {
          parts.set(title, timed(run));
        };
        const keyed = keyReading(plan);
        const cast = castOf(plan.scene);
        const shadows = reportShadows(plan, keyed === null ? null : keyed.exposure / keyed.constant);
        let frame: ReturnType<typeof reportFrame> = null;
        part("frame", () => {
          frame = reportFrame(plan);
          return [reportSharpness(plan), reportTiming(plan)];
        });
        part("thrown", () => reportThrown(cast, [...shadows]));
        part("face", () => reportFaces(plan));
        part("colour", () => reportColour(plan));
        part("intent", () => reportIntent(plan));
        part("finishing", () =>
          reportFinishing(plan, { colour: reportColour(plan), intent: reportIntent(plan) }),
        );
        const together = [...parts.values()].reduce((sum, ms) => sum + ms, 0);
        // As `judged` does it: the rules know the picture and the shadows.
        const { recipe, scene } = plan;
        const seen: Plan = {
          ...plan,
          cast,
          ...(frame === null ? {} : { picture: { recipe, scene, frame } }),
        };
        const byRule = rules.map((rule) => ({ code: rule.code, ms: timed(() => rule.check(seen)) }));
        const warnings = byRule.reduce((sum, { ms }) => sum + ms, 0);
        const share = (ms: number): string => `${ms.toFixed(0)} ms (${((100 * ms) / bounce).toFixed(0)} %)`;
        process.stdout.write(
          `${name}: bounce ${bounce.toFixed(0)} ms, sections ${share(together)}, warnings ${share(warnings)}\n`,
        );
        if (process.env.REPORT_PARTS === undefined) return;
        for (const [title, ms] of parts) process.stdout.write(`  ${title} ${share(ms)}\n`);
        for (const { code, ms } of [...byRule].sort((a, b) => b.ms - a.ms).slice(0, 8))
          process.stdout.write(`  ${code} ${share(ms)}\n`);
      },
      { iterations: 1, time: 0, warmupIterations: 0, warmupTime: 0 },
    );
  }
});
