import { existsSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, bench, describe } from "vitest";
import { starter } from "../../src/cli/starter.js";
import { coldStarts, type Start } from "./cold-start.js";

/**
 * Whole processes of the built command against bare `node -e 0`. Clock: user and system CPU time of the process and its
 * children, least of 21 rounds taken in turn; wall time says nothing on a shared machine. Recipe: the starter, 56 lines.
 * Build first (`npm run build`).
 */
const program = new URL("../../dist/cli.cjs", import.meta.url).pathname;
const folder = mkdtempSync(join(tmpdir(), "halfshade-cold-"));
const recipe = join(folder, "recipe.light");
writeFileSync(recipe, starter);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const BARE = "node -e 0";
const starts: readonly Start[] = [
  { name: BARE, args: ["-e", "0"] },
  { name: "halfshade --version", args: [program, "--version"] },
  { name: "halfshade check --no-light", args: [program, "check", "--no-light", recipe] },
  { name: "halfshade check", args: [program, "check", recipe] },
  { name: "halfshade report", args: [program, "report", recipe] },
  {
    name: "halfshade calc",
    args: [program, "calc", "angular_diameter_sphere", "radius_m=0.1", "distance_m=1"],
  },
];

const least = existsSync(program) ? coldStarts(starts, 21) : new Map<string, number>();
const bare = least.get(BARE) ?? Number.NaN;
const lines = [...least].map(
  ([name, ms]) => `${name}: ${ms.toFixed(0)} ms of CPU, ${(ms / bare).toFixed(2)} times bare node`,
);

describe.skipIf(!existsSync(program))(lines.join("\n"), () => {
  bench("halfshade check --no-light, wall time", () => void coldStarts(starts.slice(2, 3), 1), {
    iterations: 3,
    time: 0,
  });
});
