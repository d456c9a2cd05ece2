import type { ThresholdRow } from "./thresholds.js";

const practice = "common practice, no source";

/** The thresholds of what lights do on a face, and of shadows as they fall. */
export const faceThresholds = [
  {
    name: "pattern_azimuth",
    value: 10,
    unit: "deg",
    help: "How far to the side the key may stand from the range of the wished pattern.",
    source: practice,
  },
  {
    name: "pattern_elevation",
    value: 8,
    unit: "deg",
    help: "How far up or down the key may stand from the range of the wished pattern.",
    source: practice,
  },
  {
    name: "nose_on_lip",
    value: 0.02,
    unit: "m",
    help: "From the foot of the nose to the lip: a nose shadow that falls further down reaches the mouth.",
    source: practice,
  },
  {
    name: "catchlight_lid",
    value: 55,
    unit: "deg",
    help: "How far above the line from eye to lens the upper lid begins to hide a light's image in the eye.",
    source: practice,
  },
  {
    name: "catchlight_side",
    value: 80,
    unit: "deg",
    help: "Angle to the side of the nose line beyond which a light does not shine into the eye.",
    source: practice,
  },
  {
    name: "glare_margin",
    value: 2,
    unit: "deg",
    help: "What has to stay free between a light and where spectacles mirror the lens to.",
    source: practice,
  },
  {
    name: "off_paper",
    value: 0.1,
    unit: "m",
    help: "How far a shadow may run past the edge of a paper.",
    source: practice,
  },
  {
    name: "double_edge",
    value: 6,
    unit: "deg",
    help: "Two openings of one shadow: how near to each other they stand, seen from the face.",
    source: practice,
  },
] as const satisfies readonly ThresholdRow[];
