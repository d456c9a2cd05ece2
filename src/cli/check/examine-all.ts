import { besidesOf, kitsOf } from "../kits.js";
import { type Session, wholeNumber } from "../session.js";
import { crew, type Language, type Light } from "../stages/load.js";
import { loadText } from "../texts.js";
import { type Examination, examineText } from "./examine.js";

/** Files from which on several threads are worth their start. */
const MANY_FILES = 9;
/** Threads that are started unasked, at most. */
const USUAL_JOBS = 4;
const MOST_JOBS = 64;

/** What `--jobs` says; null without it; a sentence where it is no number. */
export const jobLimit = (session: Session): number | null | { readonly problem: string } =>
  wholeNumber(session.options, "jobs", 1, MOST_JOBS);

/** Checks a file in this thread. */
export async function examineFile(
  session: Session,
  stage: Language,
  views: Light | null,
  name: string,
): Promise<Examination> {
  const loaded = await loadText(session, stage, name);
  if (loaded.problem !== undefined) return { problem: loaded.problem };
  return { examined: examineText(loaded.source, stage, views, kitsOf(session, stage, name)) };
}

/**
 * Checks files and hands out what came of each in their order, the same whether threads share the work or not. Standard
 * input is read in this thread.
 */
export async function examineAll(
  session: Session,
  stage: Language,
  views: Light | null,
  files: readonly string[],
  take: (examination: Examination) => void,
): Promise<void> {
  const said = jobLimit(session);
  const usual = views !== null && files.length >= MANY_FILES ? Math.min(session.io.cores(), USUAL_JOBS) : 1;
  const jobs = Math.min(typeof said === "number" ? said : usual, files.length);
  const worker = jobs > 1 ? session.io.workerFile() : null;
  if (worker === null) {
    for (const name of files) take(await examineFile(session, stage, views, name));
    return;
  }
  const { startCrew } = await crew();
  const options = { light: views !== null, ...besidesOf(session) };
  const threads = startCrew(worker, jobs, options);
  try {
    const work = files.map((name) =>
      name === "-" ? examineFile(session, stage, views, name) : threads.examine(name),
    );
    // One that fails is met below, in its turn; until then it must not count as left alone.
    for (const one of work) one.catch(() => undefined);
    for (const one of work) take(await one);
  } finally {
    await threads.end();
  }
}
