import type { CatalogueRow } from "./row.js";

/** Findings about variants, and about what is held in them. */
export const variantFindings = {
  "variant.repeats": {
    severity: "error",
    message: "`{head}` stands in the recipe already, and a variant changes one value at a time",
    help: "Write `{path}`, with what is to change.",
    page: 'A variant says what differs from the recipe: `key.distance: 3 m` changes one value, `remove fill` takes something out, and a block with a new name adds something. A block that is there already is not written again, since nobody could see which of its values are new.\n\nRight: `variant "Lamp farther out" { key.distance: 3 m }`.',
  },
  "variant.twice": {
    severity: "error",
    message: 'There is a second variant "{title}"',
    help: "Give it another title.",
    page: "A variant is known by its title: in the report, in `from`, and in `halfshade compare`. So no two have the same.",
  },
  "variant.unknown": {
    severity: "error",
    message: 'There is no variant "{title}" to start from',
    help: "{known}",
    page: 'A variant starts from the recipe, or with `from "..."` from another variant of the same file, and then has all that this one changes too.',
  },
  "variant.circle": {
    severity: "error",
    message: 'The variant "{title}" comes from itself in the end',
    help: "One of them has to start from the recipe, without `from`.",
    page: "Variants may come from one another in a chain, and the chain has to end at the recipe. In a circle nobody could say what the first one changes.",
  },
  "variant.keep": {
    severity: "error",
    message: "A variant keeps `expectations`, and not `{word}`",
    help: "Write `keep expectations`.",
    page: "A variant has everything of what it comes from, except its expectations: those were written for another light. `keep expectations` asks for them as well.",
  },
  "variant.unchecked": {
    severity: "note",
    message: 'The variant "{title}" expects nothing',
    help: "Write an `expect`, or `keep expectations` for those of the recipe.",
    page: "The expectations of a recipe are not asked of its variants, since a variant is there to be different. One without any of its own is worked out and never judged.",
  },
  "variant.placed": {
    severity: "error",
    message: "A variant belongs in a recipe, and this is a {kind}",
    help: "Move it to the recipe.",
    page: "A variant changes a set-up. A kit holds definitions and a session holds measurements, so there is nothing in them to change.",
  },
  "limit.variants": {
    severity: "error",
    message: "There are more than {limit} variants, as many as a file of this length may have",
    help: "Sweep a value in a `table`, or split the recipe.",
    page: "Every variant is checked as a whole set-up. The cap keeps a large file with many variants from taking minutes.",
  },
  "hold.by": {
    severity: "error",
    message: "`{path}` is nothing that can be turned or moved to hold a reading",
    help: "{known}",
    page: "A reading is held by the power of a light, or by moving the light: its `distance`, `floor_distance`, `height` or `elevation`. `hold face.disc(towards: key) is f/8 by key.power` turns the dial of the key until the meter says f/8.",
  },
  "hold.several": {
    severity: "error",
    message: "Only powers are turned together",
    help: "Hold by one place of one light, or by the powers of several lights.",
    page: "With `by key.power, fill.power` both dials turn by the same number of stops. Two lamps that move have no such common step, and many pairs of places would do.",
  },
  "hold.truth": {
    severity: "error",
    message: "`{written}` is true or false, and no dial holds it",
    help: "Hold a reading, an angle or a length.",
    page: "What is held is a number that changes with the dial: a reading, a contrast, an angular size, the width of a shadow edge.",
  },
} as const satisfies Record<string, CatalogueRow>;
