import { parentPort, workerData } from "node:worker_threads";
import { examineText } from "./check/examine.js";
import { compileOptions } from "./kits.js";
import type { Answer, CrewOptions } from "./stages/crew.js";
import { language, light } from "./stages/load.js";

/** A thread that checks one file after another: it is sent a path and answers with what came of it. */
async function answer(name: string, options: CrewOptions): Promise<Answer> {
  try {
    const stage = await language();
    const views = options.light ? await light() : null;
    const read = stage.readTextFile(name);
    if (read.problem !== undefined) return { examination: { problem: read.problem } };
    const kits = compileOptions(options, stage, name);
    return {
      examination: { examined: examineText({ name, text: read.text }, stage, views, kits) },
    };
  } catch (error) {
    return { fault: error instanceof Error ? error.message : String(error) };
  }
}

/** Answers leave in the order of the questions. */
const queue = { last: Promise.resolve() };
parentPort?.on("message", (name: string) => {
  queue.last = queue.last
    .then(() => answer(name, workerData as CrewOptions))
    .then((said) => parentPort?.postMessage(said));
});
