import { spawnSync } from "node:child_process";

/** A whole process: its name in the table, and what stands behind `node`. */
export interface Start {
  readonly name: string;
  readonly args: readonly string[];
}

/** User and system seconds of the children, from the second line that the shell's `times` prints. */
function childSeconds(printed: string): number {
  const last = printed.trimEnd().split("\n").at(-1) ?? "";
  return [...last.matchAll(/(\d+)m([\d.]+)s/g)].reduce(
    (sum, [, minutes = "0", seconds = "0"]) => sum + Number(minutes) * 60 + Number(seconds),
    0,
  );
}

/** CPU milliseconds of one process from its start to its end. Its output goes to a pipe, as in a hook or an editor. */
function cpuOf(args: readonly string[]): number {
  const quoted = [process.execPath, ...args].map((part) => `'${part}'`).join(" ");
  const done = spawnSync("bash", ["-c", `${quoted} | cat > /dev/null; times`], { encoding: "utf8" });
  return childSeconds(done.stdout) * 1000;
}

/** The least CPU milliseconds of each, taken in turn so that a busy moment meets them all. */
export function coldStarts(starts: readonly Start[], rounds: number): ReadonlyMap<string, number> {
  const least = new Map<string, number>();
  for (let round = 0; round < rounds; round++) {
    for (const { name, args } of starts) {
      least.set(name, Math.min(least.get(name) ?? Number.POSITIVE_INFINITY, cpuOf(args)));
    }
  }
  return least;
}
