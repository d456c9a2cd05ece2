import type { BaseUnit } from "../units/dimension.js";

/**
 * One threshold at which a rule speaks. A recipe may set it in `thresholds { }`.
 * `value` is in the base unit of `unit`.
 */
export interface ThresholdRow {
  readonly name: string;
  readonly value: number;
  readonly unit: BaseUnit;
  readonly help: string;
  /** A published source, or "common practice". */
  readonly source: string;
}

const practice = "common practice, no source";

/** Every threshold of every rule, one row each. */
export const thresholdTable = [
  {
    name: "sun_angular_size",
    value: 2.5,
    unit: "deg",
    help: "A light that is to pass for sun is warned about above this angular size.",
    source: practice,
  },
  {
    name: "sun_shadow_least",
    value: 2,
    unit: "stop",
    help: "Shadows of a light that is to pass for sun: warned about when shallower.",
    source: practice,
  },
  {
    name: "sun_shadow_most",
    value: 4,
    unit: "stop",
    help: "Shadows of a light that is to pass for sun: warned about when deeper.",
    source: practice,
  },
  {
    name: "sun_shadow_wanted",
    value: 2.7,
    unit: "stop",
    help: "Depth of shadows under a clear sun, which contrast is steepened to afterwards.",
    source: practice,
  },
  {
    name: "low_sun",
    value: 15,
    unit: "deg",
    help: "Elevation at the face below which a sun reads as first or last hour.",
    source: practice,
  },
  {
    name: "elevation_spread",
    value: 15,
    unit: "deg",
    help: "Difference of elevation between face and feet that shows a near lamp.",
    source: practice,
  },
  {
    name: "fan",
    value: 25,
    unit: "deg",
    help: "Spread of the directions of shadows across the set.",
    source: practice,
  },
  {
    name: "head_to_toe",
    value: 0.5,
    unit: "stop",
    help: "Fall-off between face and shin worth knowing.",
    source: practice,
  },
  {
    name: "head_to_toe_check",
    value: 1,
    unit: "stop",
    help: "Fall-off between face and shin that needs a check.",
    source: practice,
  },
  {
    name: "ambient",
    value: 5,
    unit: "stop",
    help: "Room light must be at least this far under the flash.",
    source: practice,
  },
  {
    name: "ambient_stop",
    value: 3,
    unit: "stop",
    help: "Room light nearer to the flash than this spoils the picture.",
    source: practice,
  },
  {
    name: "ceiling_clearance",
    value: 0.25,
    unit: "m",
    help: "Free space above the top of the head of the lamp.",
    source: practice,
  },
  {
    name: "ceiling_clearance_hot",
    value: 0.5,
    unit: "m",
    help: "The same with a hot modelling lamp; the maker's figure comes first.",
    source: practice,
  },
  {
    name: "stand_margin",
    value: 0.05,
    unit: "m",
    help: "Height kept in reserve on a stand.",
    source: practice,
  },
  {
    name: "stand_feet",
    value: 0.5,
    unit: "m",
    help: "Free floor a stand needs to the wall.",
    source: practice,
  },
  {
    name: "tip_force",
    value: 10,
    unit: "1",
    help: "Sideways force in newtons at the lamp that a stand should bear.",
    source: practice,
  },
  {
    name: "tip_height",
    value: 2,
    unit: "m",
    help: "Lamp height above which a stand needs a bag.",
    source: practice,
  },
  {
    name: "reserve",
    value: 1,
    unit: "stop",
    help: "Power kept in reserve.",
    source: practice,
  },
  {
    name: "near_field",
    value: 1.5,
    unit: "1",
    help: "Distance in source sizes below which the inverse-square rule misleads.",
    source: practice,
  },
  {
    name: "soft_distance",
    value: 2,
    unit: "1",
    help: "Distance in diagonals of the source beyond which a soft box works as a hard light.",
    source: practice,
  },
  {
    name: "set_headroom",
    value: 0.1,
    unit: "m",
    help: "Set that must be visible above the head.",
    source: practice,
  },
  {
    name: "uncalibrated",
    value: 0.9,
    unit: "stop",
    help: "Uncertainty of an output from which one meter reading is advised.",
    source: practice,
  },
  {
    name: "overcast_size",
    value: 60,
    unit: "deg",
    help: "Least angular size of a light that is to pass for an overcast sky.",
    source: practice,
  },
  {
    name: "overcast_contrast",
    value: 2,
    unit: "stop",
    help: "Greatest lit-to-shadow difference under an overcast sky.",
    source: practice,
  },
  {
    name: "off_aperture",
    value: 0.3,
    unit: "stop",
    help: "Difference of the face's reading from the set aperture that asks for a change.",
    source: practice,
  },
  {
    name: "meter_trap",
    value: 1,
    unit: "stop",
    help: "Difference between a disc to the key and a dome to the camera that asks for a choice.",
    source: practice,
  },
  {
    name: "people",
    value: 0.3,
    unit: "stop",
    help: "Difference between the faces of several people.",
    source: practice,
  },
  {
    name: "background",
    value: 0.4,
    unit: "stop",
    help: "Difference of the background from its wish.",
    source: practice,
  },
  {
    name: "crossing",
    value: 1,
    unit: "stop",
    help: "Lights from both sides nearer to each other than this throw two shadows of the nose.",
    source: practice,
  },
  {
    name: "second_shadow",
    value: 0.5,
    unit: "stop",
    help: "Depth of a second shadow that betrays a second sun.",
    source: practice,
  },
  {
    name: "dark_sockets",
    value: 50,
    unit: "deg",
    help: "Elevation of the key above which eyes go dark without light from below.",
    source: practice,
  },
  {
    name: "colour_mix",
    value: 30,
    unit: "mired",
    help: "Difference in colour between lights on a face.",
    source: practice,
  },
  {
    name: "flare",
    value: 20,
    unit: "deg",
    help: "Angle outside the picture within which a light may shine into the lens.",
    source: practice,
  },
  {
    name: "camera_room",
    value: 0.7,
    unit: "m",
    help: "Room behind the lens for the person with the camera.",
    source: practice,
  },
  {
    name: "perspective_head",
    value: 1.5,
    unit: "m",
    help: "Least distance from lens to face for a head.",
    source: practice,
  },
  {
    name: "perspective_full",
    value: 2.5,
    unit: "m",
    help: "Least distance from lens to face for a whole figure.",
    source: practice,
  },
] as const satisfies readonly ThresholdRow[];
