import { configureGlobal } from "fast-check";

/** One seed for every property, so that a red run is red again; FC_RUNS lengthens the long run. */
const runs = Number(process.env.FC_RUNS ?? "0");
configureGlobal({ seed: 20_261_124, ...(runs > 0 ? { numRuns: runs } : {}) });
