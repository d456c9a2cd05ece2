import type { CatalogueRow } from "./row.js";

/** Findings about values, units and arithmetic. */
export const valueFindings = {
  "unit.unknown": {
    severity: "error",
    message: "`{unit}` is not a unit",
    help: "Lengths: m, cm, mm, ft, in. Times: s, ms. Angles: deg. Others: stop, Ws, lm s, K, mired, lx, %, kg.",
    page: "A unit follows its number: `2.4 m`, `30 deg`, `1/3 stop`, `400 Ws`, `18 %`. `halfshade words units` lists them all.",
  },
  "unit.missing": {
    severity: "error",
    message: "`{name}` needs a unit: {written} is a plain number, and {words} is wanted",
    help: "",
    page: "Every quantity that has a dimension carries its unit, even zero: `distance: 2.4 m`, `bearing: left(0 deg)`. A reflectance is in per cent: `18 %`.",
  },
  "unit.wrong": {
    severity: "error",
    message: "`{name}` wants {wanted}, not {found}",
    help: "For example `{example}`.",
    page: "Units are never converted into one another by guessing: an angle is not a length and watts are not watt-seconds.",
  },
  "unit.beside": {
    severity: "error",
    message: "`{written}` puts two quantities side by side",
    help: "Only feet and inches, and minutes and seconds, may stand side by side: `5 ft 7 in`.",
    page: "There is no silent multiplication. `5 ft 7 1/2 in` is a length because everybody writes it so; anything else needs a sign between.",
  },
  "unit.by": {
    severity: "error",
    message: "`{written}` is {count} numbers joined by x; {wanted} is wanted",
    help: "For example `{example}`.",
    page: "Sizes are written with an x: `60 x 90 cm` is width by height, `5 x 7 x 2.8 m` is width by depth by height. One unit at the end serves all.",
  },
  "value.type": {
    severity: "error",
    message: "`{name}` wants {wanted}, not {found}",
    help: "For example `{example}`.",
    page: "Each property has one type of value. `halfshade words KIND` shows them with an example each.",
  },
  "value.range": {
    severity: "error",
    message: "`{name}: {written}` is out of range",
    help: "It lies between {low} and {high}.",
    page: "The range holds everything that a studio could mean; a value outside is nearly always a wrong unit or a lost decimal point.",
  },
  "value.word": {
    severity: "error",
    message: "`{name}` cannot be `{word}`",
    help: "It is one of: {words}.",
    page: "Some properties take one of a few words. They are written without quotation marks.",
  },
  "value.call": {
    severity: "error",
    message: "`{call}` is not {wanted}",
    help: "For example `{example}`.",
    page: "Shapes, calibrations, gels and the like are written as a word with brackets: `disc(18 cm)`, `metered(f/8, at: 2 m, ISO 100)`.",
  },
  "value.argument": {
    severity: "error",
    message: "`{call}` {trouble}",
    help: "For example `{example}`.",
    page: "Arguments in brackets are told apart by their place or by a name with a colon: `offset(left: 40 cm, up: 1 m)`.",
  },
  "value.open": {
    severity: "error",
    message: "`{name}: ?` asks to be solved for, which this version does not do",
    help: "Write a value.",
    page: "`?` marks a value that a `solve` is to find. The language has it; the solver is work of a later version.",
  },
  "value.tolerance": {
    severity: "error",
    message: "The tolerance of {words} is given as {allowed}, not as {found}",
    help: "For example `{example}`.",
    page: "A tolerance has the unit of its value or is a share in per cent; f-numbers, ISO values and ratios take theirs in stops, colour temperatures in mired.",
  },
  "value.add": {
    severity: "error",
    message: "{left} and {right} cannot be {done}",
    help: "Only quantities of one kind add up.",
    page: "Lengths add to lengths, times to times, stops to stops. Exposure values take stops, colour temperatures take mired. There is no conversion on the quiet.",
  },
  "value.stops-on-f-number": {
    severity: "error",
    message: "`{written}` can be read two ways: more light, or a smaller hole",
    help: "Say which is meant.",
    page: "Adding a stop to an f-number means less light to one person and more to the next. `closed(f/8, 1/3 stop)` is the smaller hole, `opened(f/8, 1/3 stop)` the larger.",
  },
  "value.product": {
    severity: "error",
    message: "{left} and {right} cannot be {done}",
    help: "Multiply by plain numbers, or divide two of a kind.",
    page: "Products and quotients are made where the trade has a name for the result: a length by a length is an area, an energy by a time is a power. F-numbers, ISO values and temperatures are points on a scale and do not multiply.",
  },
  "value.zero-division": {
    severity: "error",
    message: "`{written}` divides by zero",
    help: "Divide by a number other than zero, or write the value itself.",
    page: "Dividing by zero has no value, so the recipe cannot be worked out.",
  },
  "value.not-constant": {
    severity: "error",
    message: "`{written}` is not a value that is known before anything is computed",
    help: "Use numbers with units and names set by `let`.",
    page: "The values of blocks come from what is written: numbers and `let`s. Results such as `key.angular_size` can be asked for in `expect`, not set.",
  },
  "bearing.side": {
    severity: "error",
    message: "A bearing needs a side: {written} to the left, or to the right?",
    help: "Left and right are as the camera sees them; there is no plus or minus.",
    page: "`bearing: left(35 deg)` stands to the camera's left. Signs are not used, since half the world counts them the other way.",
  },
  "power.percent": {
    severity: "error",
    message: "`power: {written}` can be read two ways: that share of the energy, or that share of the dial",
    help: "Say which is meant.",
    page: "Half the energy is one stop less; the middle of a dial may be three or four stops less. Write `1/2` for half the energy, `full - 1 stop`, or the dial's own number: `dial(5)`.",
  },
  "gel.temperature": {
    severity: "error",
    message: "A gel has no colour temperature: `{written}` is what a light has",
    help: "A gel shifts by so many mired, warm or cool.",
    page: "A gel moves every light by the same number of mired, not to a fixed temperature. From 5600 K to 3200 K is 134 mired warm: `gel: warm(134 mired, loses: 2/3 stop)`. What the light itself has is `colour: 5600 K`.",
  },
  "gel.direction": {
    severity: "error",
    message: "A gel needs a direction: {written} warm, or cool?",
    help: "Write `warm({written})` or `cool({written})`.",
    page: "Mired shifts have signs that are easily mistaken, so a gel says its direction in a word: `warm(60 mired)` towards orange, `cool(60 mired)` towards blue.",
  },
  "surface.unknown": {
    severity: "error",
    message: "There is no surface called `{name}`",
    help: "Give a reflectance in per cent, or one of: {names}.",
    page: "White is anything from 70 to 90 %, and the difference is what fills the shadows. So a surface is a per cent, or one of the named ones with its reflectance: `halfshade words surfaces` lists them.",
  },
  "contrast.plain": {
    severity: "error",
    message: "`{written}` is a plain number; a contrast is a ratio or stops",
    help: "For example `3:1` or `1.5 stop`.",
    page: "A contrast is written `3:1` or in stops, so that nobody takes one for the other.",
  },
} as const satisfies Record<string, CatalogueRow>;
