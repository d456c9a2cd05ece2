import { spawnSync } from "node:child_process";
import { cpSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { cpus, tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, bench, describe } from "vitest";

/**
 * A book of 200 recipes, checked with its light, by one thread and by two. The recipes are the examples in turn, with
 * their kit. Clock: wall time of whole processes, least of 7 rounds taken in turn, since threads are about wall time; on
 * a machine that is busy with other work the figures mean little. Build first (`npm run build`).
 */
const program = new URL("../../dist/cli.cjs", import.meta.url).pathname;
const examples = new URL("../../examples/", import.meta.url).pathname;
const RECIPES = 200;
const ROUNDS = Number(process.env.BOOK_ROUNDS ?? 7);
const folder = mkdtempSync(join(tmpdir(), "halfshade-book-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
cpSync(join(examples, "foundry-kit.light"), join(folder, "foundry-kit.light"));
const texts = readdirSync(examples)
  .filter((name) => name.endsWith(".light") && name !== "foundry-kit.light")
  .sort()
  .map((name) => readFileSync(join(examples, name), "utf8"));
for (let index = 0; index < RECIPES; index++) {
  writeFileSync(join(folder, `${String(index).padStart(3, "0")}.light`), texts[index % texts.length] ?? "");
}

function wall(jobs: string): number {
  const start = process.hrtime.bigint();
  spawnSync(process.execPath, [program, "check", folder, "--jobs", jobs], { stdio: "ignore" });
  return Number(process.hrtime.bigint() - start) / 1e6;
}

const least = new Map<string, number>();
if (existsSync(program)) {
  for (let round = 0; round < ROUNDS; round++) {
    for (const jobs of ["1", "2"])
      least.set(jobs, Math.min(least.get(jobs) ?? Number.POSITIVE_INFINITY, wall(jobs)));
  }
}
const [one = Number.NaN, two = Number.NaN] = ["1", "2"].map((jobs) => least.get(jobs));
const line = `${RECIPES} recipes on ${cpus().length} cores: one thread ${one.toFixed(0)} ms, two ${two.toFixed(0)} ms, ${(one / two).toFixed(2)} times faster`;

describe.skipIf(!existsSync(program))(line, () => {
  bench("two threads", () => void wall("2"), { iterations: 2, time: 0 });
});
