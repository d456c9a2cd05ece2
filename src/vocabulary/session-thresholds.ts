import type { ThresholdRow } from "./thresholds.js";

const practice = "common practice, no source";

/** The thresholds by which a session judges what was measured on the day. */
export const sessionThresholds = [
  {
    name: "session_same",
    value: 0.1,
    unit: "stop",
    help: "A session: up to this far from the plan a reading counts as what was planned.",
    source: practice,
  },
  {
    name: "session_note",
    value: 0.2,
    unit: "stop",
    help: "A session: from this far on a reading is noted, and causes are looked for.",
    source: practice,
  },
  {
    name: "session_act",
    value: 0.3,
    unit: "stop",
    help: "A session: from this far on there is something to do about a reading.",
    source: practice,
  },
  {
    name: "session_telling",
    value: 1,
    unit: "stop",
    help: "A session: a lamp that the readings leave open by more than this to either side is not told.",
    source: practice,
  },
  {
    name: "session_dark",
    value: 6,
    unit: "stop",
    help: "A session: a lamp that gives less than its setting by this much has not fired.",
    source: practice,
  },
] as const satisfies readonly ThresholdRow[];
