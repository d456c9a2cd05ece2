import { existsSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, test } from "vitest";
import { coldStarts } from "../bench/cold-start.js";
import { sound } from "./recipes.js";

const program = new URL("../../dist/cli.cjs", import.meta.url).pathname;
const folder = mkdtempSync(join(tmpdir(), "halfshade-start-"));
afterAll(() => rmSync(folder, { recursive: true }));

test.skipIf(!existsSync(program))("a cold start costs little beside bare node", () => {
  const recipe = join(folder, "recipe.light");
  writeFileSync(recipe, sound);
  const least = coldStarts(
    [
      { name: "bare", args: ["-e", "0"] },
      { name: "version", args: [program, "--version"] },
      { name: "check", args: [program, "check", "--no-light", recipe] },
    ],
    9,
  );
  const times = (name: string) => (least.get(name) ?? Number.NaN) / (least.get("bare") ?? Number.NaN);
  expect(times("version")).toBeLessThan(1.25);
  // 1.8 measured; the figure to keep is 2.3.
  expect(times("check")).toBeLessThan(2.3);
});
