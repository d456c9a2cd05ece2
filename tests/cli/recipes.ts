import { starter } from "../../src/cli/starter.js";

/** A sound recipe whose expectations hold. */
export const sound = starter;
/** One wrong unit. */
export const wrongUnit = starter.replace("distance: 2 m", "distance: 2 mt");
/** One expectation that does not hold. */
export const failing = starter.replace("is 23 deg within 2 deg", "is 40 deg within 2 deg");
/** One expectation that cannot be decided: the lamp is off, so nothing lights the face. */
export const undecidable = `${starter}expect lit_to_shadow(face) <= 8:1\n`.replace(
  /power: 1\/4/,
  "power: off",
);
/** A lamp that goes through the ceiling. */
export const warned = starter
  .replace("4.6 x 6.2 x 3 m", "4.6 x 6.2 x 2.2 m")
  .replace("2.4 x 2.5 m", "2.4 x 2.1 m")
  // The ceiling takes part of its light.
  .replace("within 1/3 stop", "within 1 stop");
/** The sound recipe, untidy. */
export const untidy = starter.replace("  height: 1.68 m", "      height:1.68 metres   # her shoes off");
/** A kit: definitions only. */
export const kit =
  'halfshade 1\nkit "One lamp"\n\ndefine light bench {\n  shape: disc(20 cm)\n  output: 900 lm\n  kind: steady\n}\n';
