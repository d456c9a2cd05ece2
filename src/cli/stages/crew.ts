import { Worker } from "node:worker_threads";
import type { Examination } from "../check/examine.js";
import type { Besides } from "../kits.js";

/** Threads that check files. Loaded only where there are many. */
export interface Crew {
  /** Checks one file as soon as a thread is free. */
  examine(name: string): Promise<Examination>;
  end(): Promise<void>;
}

/** What every thread is told at its start. */
export interface CrewOptions extends Besides {
  readonly light: boolean;
}

/** What a thread answers: what came of a file, or the words of a fault of our own. */
export type Answer =
  | { readonly examination: Examination; readonly fault?: never }
  | { readonly examination?: never; readonly fault: string };

interface Job {
  readonly name: string;
  readonly done: (examination: Examination) => void;
  readonly failed: (error: Error) => void;
}

/** Files that a thread has at hand at a time, so that it need not wait for this thread to give it the next. */
const AT_HAND = 2;

/** Starts threads that take files one by one, in the order in which they are given. */
export function startCrew(file: string, count: number, options: CrewOptions): Crew {
  const waiting: Job[] = [];
  let broken: Error | null = null;
  const threads = Array.from({ length: count }, () => ({
    worker: new Worker(file, { workerData: options }),
    jobs: [] as Job[],
  }));

  const give = (): void => {
    for (let full = 0; full < AT_HAND; full++) {
      for (const { worker, jobs } of threads) {
        if (jobs.length > full) continue;
        const job = waiting.shift();
        if (job === undefined) return;
        jobs.push(job);
        worker.postMessage(job.name);
      }
    }
  };

  const breakDown = (error: Error): void => {
    broken ??= error;
    for (const job of [...threads.flatMap(({ jobs }) => jobs.splice(0)), ...waiting.splice(0)])
      job.failed(broken);
  };

  for (const { worker, jobs } of threads) {
    worker.on("message", ({ examination, fault }: Answer) => {
      const job = jobs.shift();
      if (fault !== undefined) job?.failed(new Error(fault));
      else job?.done(examination);
      give();
    });
    worker.on("error", breakDown);
    worker.on("exit", (code) => {
      if (jobs.length > 0) breakDown(new Error(`a thread ended with ${code}`));
    });
  }

  return {
    examine: (name) =>
      new Promise((done, failed) => {
        if (broken !== null) {
          failed(broken);
          return;
        }
        waiting.push({ name, done, failed });
        give();
      }),
    end: async () => {
      await Promise.all(threads.map(({ worker }) => worker.terminate()));
    },
  };
}
