import { fillForRatio, keyToFill, litShadowStops, litToShadow } from "../../physics/ratio.js";
import { stopsBetween } from "../../physics/stops.js";
import { partialFormula } from "../formula.js";
import { impossible, none, nonNegative, number, positive, type Quantity } from "../quantity.js";

const LIT_SHADOW = "lit : shadow = (K + F) : F, one of the two conventions in print; the other is K : F";
const NO_FILL = none("there is no fill: the ratio has no end");

const key = nonNegative("key_lx", "lx");
const fill = nonNegative("fill_lx", "lx");

/** Lighting ratios by their names. */
export const RATIO_QUANTITIES: readonly Quantity[] = [
  partialFormula(
    {
      name: "lighting_ratio_lit_to_shadow",
      inputs: [key, fill],
      unit: "1",
      title: "Ratio of the lit side to the shadow side, to 1",
      source: LIT_SHADOW,
    },
    (get) => litToShadow(get("key_lx"), get("fill_lx")),
    NO_FILL,
  ),
  partialFormula(
    {
      name: "lighting_ratio_key_to_fill",
      inputs: [key, fill],
      unit: "1",
      title: "Ratio of key to fill, to 1",
      source: "key : fill = K : F, one of the two conventions in print; the other is (K + F) : F",
    },
    (get) => keyToFill(get("key_lx"), get("fill_lx")),
    NO_FILL,
  ),
  partialFormula(
    {
      name: "lit_shadow_difference_stops",
      inputs: [key, fill],
      unit: "stop",
      title: "Stops between the lit side and the shadow side",
      source: `log2((K + F) / F); ${LIT_SHADOW}`,
    },
    (get) => litShadowStops(get("key_lx"), get("fill_lx")),
    NO_FILL,
  ),
  partialFormula(
    {
      name: "fill_needed_for_lit_to_shadow_ratio",
      inputs: [key, number("ratio", "1")],
      unit: "lx",
      title: "Fill that gives a ratio of lit to shadow",
      source: `F = K / (r - 1); ${LIT_SHADOW}`,
    },
    (get) => fillForRatio(get("key_lx"), get("ratio")),
    impossible("ratio must be greater than 1: the lit side has the fill and the key"),
  ),
  partialFormula(
    {
      name: "background_over_subject_stops",
      inputs: [positive("background_lx", "lx"), positive("subject_lx", "lx")],
      unit: "stop",
      title: "Stops of the background over the subject, by incident readings; + is a brighter background",
      source: "log2(E_background / E_subject)",
    },
    (get) => stopsBetween(get("background_lx"), get("subject_lx")),
    none("the difference is beyond the range of numbers"),
  ),
];
