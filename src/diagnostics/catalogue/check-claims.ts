import type { CatalogueRow } from "./row.js";

/** Findings about what an expectation says. */
export const claimFindings = {
  "result.unknown": {
    severity: "error",
    message: "There is no result `{name}`",
    help: "{known}",
    page: "Results are taken of a light (`key.angular_size`), of readings (`stops(a, b)`) or of the whole set-up (`no_warnings`). `halfshade words results` lists them.",
  },
  "result.ratio": {
    severity: "error",
    message: "`{name}` has two meanings in the trade: lit to shadow, and key to fill",
    help: "Say which is meant.",
    page: "One school calls the lit side over the shaded side the ratio, the other the key light over the fill light. At one stop between key and fill the first says 3:1, the second 2:1. So a ratio carries its name: `lit_to_shadow(face)` or `key_to_fill(key, fill)`.",
  },
  "result.argument": {
    severity: "error",
    message: "`{name}` {trouble}",
    help: "For example `{example}`.",
    page: "Each result takes fixed arguments: `key.shadow_edge(gap: 12 cm)`, `stops(a, b)`. `halfshade words results` lists them with an example each.",
  },
  "result.not-here": {
    severity: "note",
    message: "`{name}` cannot be had here: {cause}",
    help: "{remedy}",
    page: "A result is taken of something: `headroom` of a camera, a head and a set, `key.reserve` of a lamp that is on. Where that is not in the recipe there is nothing to work out, so an expectation of it stays undecided, which is not passed, and a column of it stays empty. Add what is missing, or leave the result out.",
  },
  "reading.meter": {
    severity: "error",
    message: "`{name}` is a place, not a reading: which meter, looking where?",
    help: "A flat receptor looks at the light, a dome at the camera.",
    page: "At one place a flat receptor towards the key and a dome towards the camera may differ by a stop. A reading names its meter: `face.disc(towards: key)` or `face.dome(towards: camera)`. Surfaces have one natural reading along their normal, so `back`, `floor` and the cheeks stand for themselves.",
  },
  "claim.truth": {
    severity: "error",
    message: "`{written}` is a value; what is expected of it?",
    help: "Write `is ... within ...`, `between ... and ...`, or a comparison.",
    page: "An expectation says something that can be true or false: `expect key.angular_size < 1 deg`. Only `no_warnings` is true or false by itself.",
  },
  "claim.types": {
    severity: "error",
    message: "{left} is compared with {right}",
    help: "Both sides must be of one kind.",
    page: "Like is compared with like: an angle with an angle, a reading with a reading or an f-number, a contrast with a ratio or stops.",
  },
  "claim.tolerance": {
    severity: "error",
    message: "The tolerance of {words} is given in {wanted}, not as {found}",
    help: "For example `within {example}`.",
    page: "Readings, f-numbers and contrasts are judged in stops, colour temperatures in mired, everything else in its own unit or in per cent.",
  },
  "claim.arithmetic": {
    severity: "error",
    message: "{left} and {right} cannot be {done}",
    help: "Differences of light are had by `stops(a, b)`.",
    page: "Angles, lengths and stops of results may be added and multiplied by plain numbers. Readings are compared by `stops(a, b)`.",
  },
  "claim.order": {
    severity: "error",
    message: "The lower bound {low} lies above the upper bound {high}",
    help: "Put the smaller first: `between {high} and {low}`.",
    page: "`between a and b` holds from a to b, both included, so a must not be greater than b. For f-numbers the smaller number comes first.",
  },
} as const satisfies Record<string, CatalogueRow>;
