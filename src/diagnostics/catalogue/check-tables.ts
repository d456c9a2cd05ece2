import type { CatalogueRow } from "./row.js";

/** Findings about lesson tables. */
export const tableFindings = {
  "table.placed": {
    severity: "error",
    message: "A {kind} holds no tables, since there is no set-up in it to vary",
    help: "Write the table in a recipe.",
    page: "A table repeats the set-up of its recipe with other values. A kit holds definitions only and a session measurements only.",
  },
  "table.twice": {
    severity: "error",
    message: 'There are two tables called "{title}"',
    help: "Give one of them another title.",
    page: 'A table is asked for by its title: `halfshade table plan.light "Walk the lamp in"`. So each title is there once.',
  },
  "table.still": {
    severity: "error",
    message: "The table varies nothing",
    help: "Write what it varies, for example `sweep {example}`.",
    page: "A table has one row for each value of a sweep: `sweep key.distance over [1 m, 2 m, 4 m]`. With two sweeps there is a row for each pair.",
  },
  "table.sweeps": {
    severity: "error",
    message: "A table has one or two sweeps, and this is one more",
    help: "Make two tables of it, or take this sweep out.",
    page: "Two things may vary at once; a third would make a book of tables that nobody reads. A `hold` may turn a dial in every row besides.",
  },
  "table.empty": {
    severity: "error",
    message: "The table shows nothing",
    help: "Write its columns, for example `show key.angular_size as deg`.",
    page: 'The columns of a table are results, each with a unit and a title if wanted: `show key.angular_size as deg "Size", lit_to_shadow(face)`. What is swept has its column by itself.',
  },
  "table.setting": {
    severity: "error",
    message: "A table has no setting `{name}`",
    help: "{known}",
    page: "Besides its lines a table has two settings: `note`, a text that stands under it, and `worksheet`, the titles of the columns that a worksheet leaves blank.",
  },
  "table.unit": {
    severity: "error",
    message: "{words} cannot be shown in `{unit}`",
    help: "{remedy}",
    page: "A column is shown in a unit of its own kind: an angle in `deg`, a length in `m`, `cm`, `mm`, `ft` or `in`, a contrast in `stop`. Without `as` it is shown as reports do: f-numbers as meters show them, contrasts as a ratio and in stops.",
  },
  "table.blank": {
    severity: "error",
    message: 'The table has no column "{title}" to leave blank',
    help: "{known}",
    page: 'A worksheet leaves columns blank for the pupil, by their titles: `worksheet: ["Size"]`. A column without a title is called as its result is written.',
  },
  "sweep.same": {
    severity: "error",
    message: "`{path}` sets what the first sweep sets by `{before}`",
    help: "Sweep something else, or put all its values into one list.",
    page: "Each sweep changes something of its own. What one sweep sets, the other would undo: the same property, or another that takes its place, as `floor_distance` does with `distance`.",
  },
  "sweep.list": {
    severity: "error",
    message: "What is swept `over` is a list with at least one value",
    help: "Write for example `over [{example}]`.",
    page: "A list stands in square brackets: `sweep key.distance over [1 m, 1.4 m, 2 m]`. Equal steps are written `from 1 m to 4 m step 50 cm`.",
  },
  "sweep.words": {
    severity: "error",
    message: "`{path}` has no steps between two values",
    help: "List its values: `sweep {path} over [{example}]`.",
    page: "Lengths, angles, times, shares, powers, f-numbers, sensitivities and temperatures go in steps from one value to another. Shapes, places, names and words do not; they are listed.",
  },
  "sweep.ends": {
    severity: "error",
    message: "`{path}` cannot go in steps from {from} to {to}",
    help: "Write both ends in the same way.",
    page: "Both ends of a stepped sweep are written in one way: both as lengths without `from`, both as a share of full power, both in watt-seconds. `off` is no end, since no number of stops leads to it.",
  },
  "sweep.step": {
    severity: "error",
    message: "A step of {written} never gets from one end to the other",
    help: "Write a step above 0; the sweep goes down by itself where its end lies below its start.",
    page: "A step says how far neighbouring rows lie apart, so it is more than nothing: `from 4 m to 1 m step 50 cm` goes down.",
  },
  "sweep.step-unit": {
    severity: "error",
    message: "The step of `{path}` is given in {wanted}, not as {found}",
    help: "For example `step {example}`.",
    page: "Lengths step by lengths and angles by angles. Powers, f-numbers, sensitivities and exposure times step in stops, as dials do. Watt-seconds may step by watt-seconds or in stops.",
  },
  "sweep.count": {
    severity: "error",
    message: "`count {written}` is no number of rows",
    help: "Write a whole number from 1.",
    page: "`count 5` makes five rows at equal distances, both ends among them: `sweep key.height from 1 m to 3 m count 5`. Powers, f-numbers, sensitivities and times keep equal distances in stops.",
  },
  "sweep.rest": {
    severity: "note",
    message: "The steps end at {last} and do not meet {to}",
    help: "Nothing is wrong with that; a step of {step} would meet it.",
    page: "Steps start at the first value and never go past the second. Where the way is not a whole number of steps, the last value is left out.",
  },
  "sweep.variant": {
    severity: "error",
    message: "{written} is no variant of this recipe",
    help: "{known}",
    page: 'A sweep over variants lists their titles, and `base` for the recipe itself: `sweep variant over [base, "No fill"]`.',
  },
  "sweep.item": {
    severity: "error",
    message: "{written} is no `define {kind}` of this recipe",
    help: "{known}",
    page: "A light or another block that is like a definition can be tried with others of its kind: `sweep key.like over [bench_head, small_head]`. What it writes itself stays.",
  },
  "sweep.row": {
    severity: "error",
    message: "With `{path}` at {value} the set-up is wrong: {what}",
    help: "Take that value out, or write the recipe so that it can take it.",
    page: "Every row of a table is a whole set-up. One that would be refused by itself is refused in the table.",
  },
  "limit.rows": {
    severity: "error",
    message: "The table would have {rows} rows, and the limit is {limit}",
    help: "Take a larger step, or fewer values.",
    page: "A table of the command has at most 10,000 rows, counted before any is worked out. A program that uses the library may allow more.",
  },
  "limit.cells": {
    severity: "error",
    message: "The table would have {cells} cells, and the limit is {limit}",
    help: "Take a larger step, or show fewer columns.",
    page: "A table of the command has at most 100,000 cells: its rows times its columns, the swept ones counted.",
  },
} as const satisfies Record<string, CatalogueRow>;
