/** CPU time of this process in ms: the clock of the benches, which other work on the machine does not slow. */
export function cpuNow(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

/** One thing to be timed: `run` does `count` of it. */
export interface Candidate {
  readonly name: string;
  readonly count: number;
  readonly run: () => void;
}

/** CPU microseconds for one of each candidate: the least of several rounds, taken in turn. */
export function interleavedMinima(candidates: readonly Candidate[], rounds = 9): ReadonlyMap<string, number> {
  for (const candidate of candidates) candidate.run();
  const least = new Map<string, number>();
  for (let round = 0; round < rounds; round++) {
    for (const { name, count, run } of candidates) {
      const start = process.cpuUsage();
      run();
      const { user, system } = process.cpuUsage(start);
      least.set(name, Math.min(least.get(name) ?? Number.POSITIVE_INFINITY, (user + system) / count));
    }
  }
  return least;
}
