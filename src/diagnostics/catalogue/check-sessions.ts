import type { CatalogueRow } from "./row.js";

/** Findings about a session: the measurements of a day. */
export const sessionFindings = {
  "session.alone": {
    severity: "error",
    message: "There is no folder in which to look for `{path}`",
    help: "Give the session as a file beside its recipe.",
    page: "The path of the recipe is taken from the folder of the session. A text that came through a pipe, or that a program handed over without a way to read files, has no folder; and nothing on the disk is read for it.",
  },
  "session.no-recipe": {
    severity: "error",
    message: "`{path}` is not a recipe",
    help: "Name a file that starts with `recipe` and its title.",
    page: 'A session belongs to one recipe, whose title line says `recipe "..."`. A kit holds definitions and stands in no room; another session holds measurements. Of a file that is no recipe nothing is shown.',
  },
  "session.variant": {
    severity: "error",
    message: 'The recipe has no variant called "{title}"',
    help: "{known}",
    page: 'What was built may be a variant of the recipe. The session then names it behind the path: `session "First try" of "./bench.light" variant "Higher"`. Its readings are put against that variant. Without it they are put against the recipe itself.',
  },
  "session.placed": {
    severity: "error",
    message: "`{what}` does not stand in a session",
    help: "Write it into the recipe, or what was measured of it into `measured { ... }`.",
    page: "A session holds what was measured on a day, in `measured { }`, and an `about` with the remarks to it. Everything else is the recipe's: what was built otherwise than planned is a line such as `key.height: 2.28 m` in `measured`.",
  },
  "session.empty": {
    severity: "note",
    message: '"{title}" holds no reading',
    help: "Write what the meter said, for example `measured { face.disc(towards: key) is f/5.6 }`.",
    page: "Without a reading there is nothing to put against the plan. Tapes and settings alone say how the set-up was built, and the report then tells what it should have read.",
  },
  "measured.placed": {
    severity: "note",
    message: "Measurements in a {kind} are kept, and not put against anything",
    help: 'Move them into a file of their own, which starts with `session "..." of "./recipe.light"`.',
    page: "A recipe says what is planned, and stays the same from day to day. What the meter and the tapes said on one of them is a session: a file of its own, which names its recipe.",
  },
  "measured.reading": {
    severity: "error",
    message: "`{what}` is {words}, and no reading of a meter",
    help: "Write a reading by its meter, `face.disc(towards: key) is f/8`; a tape is written `key.height: 2.28 m`.",
    page: "What stands before `is` in `measured` is a place with a meter, since that is what a meter tells. Tapes and settings are written with a colon, by the path of the property. Contrasts and stops follow from the readings.",
  },
  "measured.value": {
    severity: "error",
    message: "`{written}` is not what a meter shows",
    help: "Write an f-number, an exposure value or a luminous exposure: `f/5.6`, `closed(f/5.6, 0.3 stop)`, `12.3 EV`, `80 lx s`.",
    page: "A reading is a value of the day: an f-number at the camera's sensitivity, an exposure value at ISO 100, or a luminous exposure. It is above nothing. Another reading is no value: write what the meter showed at each.",
  },
  "measured.tolerance": {
    severity: "error",
    message: "How far a reading may be off is said in stops",
    help: "Write it as `f/5.6 +- 0.2 stop`, or leave it out.",
    page: "Without it a reading counts as good to the `meter` tolerance of the recipe, 0.1 stop if the recipe does not say otherwise. A reading that is less sure counts for less where the lamps are calibrated.",
  },
  "measured.twice": {
    severity: "error",
    message: "`{what}` is measured twice",
    help: "Keep one of them, or write their mean with a tolerance.",
    page: "Each place is read once in a session. What was read again after a change is another session of the same recipe.",
  },
} as const satisfies Record<string, CatalogueRow>;
