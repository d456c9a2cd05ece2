import type { ThresholdRow } from "./thresholds.js";

const practice = "common practice, no source";

/** The thresholds of warnings about people's safety, stands left out. */
export const safetyThresholds = [
  {
    name: "heat_clearance",
    value: 0.5,
    unit: "m",
    help: "Nearer than this to cloth, paper or board a hot modelling lamp is warned about.",
    source: practice,
  },
  {
    name: "circuit_share",
    value: 0.8,
    unit: "1",
    help: "Share of what the circuit bears that the lamps may take on the average.",
    source: practice,
  },
  {
    name: "circuit_ask",
    value: 2000,
    unit: "W",
    help: "Power from which it has to be asked what a circuit bears, where the recipe does not say.",
    source: practice,
  },
  {
    name: "modelling_draw",
    value: 150,
    unit: "W",
    help: "What a hot modelling lamp takes where `draws` is not said.",
    source: practice,
  },
  {
    name: "flash_rate",
    value: 3,
    unit: "1",
    help: "Flashes in a second that are not exceeded.",
    source: "W3C, Web Content Accessibility Guidelines 2.1, 2.3.1, three flashes (from memory)",
  },
  {
    name: "loose_height",
    value: 1.8,
    unit: "m",
    help: "Height from which a flat that is not weighed down is warned about.",
    source: practice,
  },
  {
    name: "way_out",
    value: 0.9,
    unit: "m",
    help: "Width of the way that is kept free to a door.",
    source: practice,
  },
] as const satisfies readonly ThresholdRow[];
