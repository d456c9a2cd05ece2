import type { CatalogueRow } from "./row.js";

/** Findings of the scene stage: what is written makes sense word by word, but cannot be built in a room. */
export const sceneFindings = {
  "point.circular": {
    severity: "error",
    message: "the place of `{name}` depends on itself",
    help: "give one of the places in this ring without naming the others, for example by a tape from the mark",
    page: "Places may be given from other places, but somewhere the chain has to end at the mark. A lamp whose tape starts at a face, on a subject that turns to that lamp, has no place to start from.\n\nRight: `facing: left(20 deg)` on the subject, and `distance: 2 m` on the lamp.",
  },
  "point.unknown": {
    severity: "error",
    message: "nothing that has a place is called `{name}`",
    help: "name a light, a subject's face, chest, knee or shin, a piece of the set, a point, the camera or the mark",
    page: "A point can be `mark`, `camera`, the name of a light (the centre of its opening), of a piece of the set, of a `point` block, or a place of a subject such as `face`.\n\nRight: `aim: chest`.",
  },
  "point.beyond": {
    severity: "error",
    message: "a tape of {tape} m does not fit between two points that are {apart} m apart",
    help: "shorten the tape, or use `offset` for a point beyond",
    page: "`between(a, b, 40 cm from b)` is a place on the line from a to b, so its tape is at most as long as that line.\n\nRight: `between(face, back, 20 cm from face)` when the two are 60 cm apart.",
  },
  "direction.none": {
    severity: "error",
    message: "`{name}` cannot look at a point that lies straight above or below it",
    help: "name a point to one side, or a bearing",
    page: "What stands upright turns only about the vertical, so the point it looks at has to lie to one side of it. A lamp, a card or a panel may tilt, but it needs a point that is not its own centre.\n\nRight: `faces: left(30 deg)`.",
  },
  "placement.too-near": {
    severity: "error",
    message:
      "`{name}` cannot be at {height} m: its tape of {slant} m starts at {zero} m, {gap} m away in height alone",
    help: "if the tape ran along the floor, it is a `floor_distance`; a slant `distance` is more than {gap} m here",
    page: "`distance` is a slant tape, from the face (or the aim, or what `from` names) to the lamp; a tape along the floor is `floor_distance`. When the difference in height alone is longer than the tape, no place on the floor fits.\n\nRight: `distance: 2 m` with `height: 2.4 m` for a face at 1.6 m.",
  },
  "placement.on-aim": {
    severity: "error",
    message: "`{name}` stands exactly at the point it is aimed at",
    help: "move it, or aim it at another point",
    page: "The direction of a lamp or a camera runs from its own centre to its aim. Where both are the same point there is no direction.\n\nRight: `distance: 1.5 m` and `aim: face`.",
  },
  "scene.incomplete": {
    severity: "error",
    message: "`{name}` does not say {what}",
    help: "say it, here or in what it is like or with",
    page: "Some properties have no sensible default: the shape of a lit opening, where a lamp stands, how its output is known, the size of a flat.\n\nRight: `light key { shape: disc(20 cm)  output: 900 lm s  distance: 2 m  height: 2.2 m }`.",
  },
  "light.over-full": {
    severity: "error",
    message: "`{name}` is set {over} stop above its full power",
    help: "lower the setting, or correct what full power is",
    page: "Full power is the most a head gives. A fraction above 1, more watt-seconds than `full_power`, or a dial number above the one named full asks for more.\n\nRight: `power: 1/2`.",
  },
  "light.meter-inside": {
    severity: "error",
    message: "the calibration of `{name}` was metered inside the lamp itself",
    help: "give the distance from the centre of the lit opening to the meter",
    page: "The distance of a calibration runs from the centre of the lit opening to the meter, and has to end outside of the bulb.\n\nRight: `calibration: metered(f/8, at: 2 m, ISO 100)`.",
  },
  "light.beam-of-bulb": {
    severity: "note",
    message: "`{name}` is a bare bulb, so its {what} does nothing",
    help: "use a disc or a rectangle for the lit opening of a head with a dish or grid",
    page: "A sphere and a capsule shine the same to all sides. A beam or a grid belongs to a flat opening.\n\nRight: `shape: disc(18 cm)` with `grid: 40 deg`.",
  },
  "light.grid-and-beam": {
    severity: "note",
    message: "`{name}` has a grid, so its own beam is not used",
    help: "leave out the beam, or the grid",
    page: "A grid is computed on an even opening. How a narrow dish looks through a grid depends on both in ways that a recipe does not hold.\n\nRight: `grid: 40 deg` alone.",
  },
  "light.misses": {
    severity: "error",
    message: "`{name}` gives no light to `{surface}`",
    help: "aim it at {surface}, or move one of the two",
    page: "A light with `through` or `into` is the lit part of that cloth, wall or card, so its head has to shine at it. A flat opening shines to its front only.\n\nRight: a head that stands behind its scrim and leaves `aim` to its default, the middle of the cloth.",
  },
  "room.mark-outside": {
    severity: "error",
    message: "the mark lies {tape} m from a wall, but the room measures {size} m there",
    help: "make the room larger, or move the mark",
    page: "`mark: from(left: 1.2 m, back: 70 cm)` counts from the walls into the room, so both have to be smaller than the room.\n\nRight: `size: 5 x 7 x 2.8 m` with `mark: from(left: 2.5 m)`.",
  },
  "room.mark-twice": {
    severity: "error",
    message:
      "the mark is {one} m from one wall and {other} m from the wall across, but the room measures {size} m there",
    help: "give one of the two",
    page: "The distance from the opposite wall follows from the size of the room. Where both are written they have to agree.\n\nRight: `mark: from(left: 1.2 m, back: 70 cm)`.",
  },
  "opening.outside": {
    severity: "error",
    message: "the opening `{name}` does not lie within the wall {wall}",
    help: "make it smaller, or move it",
    page: "A window or a door has to fit into its wall. `at` is the middle of its bottom edge.\n\nRight: an opening of 1.2 x 1.5 m at 90 cm above the floor of a room 2.8 m high.",
  },
  "flat.hinge": {
    severity: "error",
    message: "`{name}` is hinged to `{other}`, which is no flat",
    help: "name another flat of this set",
    page: "A hinge joins the upright edges of two flats.\n\nRight: `hinge: left_edge(back)` where `back` is a flat.",
  },
  "flat.opening": {
    severity: "note",
    message: "`{name}` is not hinged, so its `opening` does nothing",
    help: "say what it is hinged to, or turn it with `faces`",
    page: "The opening is the inside angle between two flats that share a hinge. A flat that stands by itself has none.\n\nRight: `hinge: left_edge(back)` with `opening: 100 deg`.",
  },
  "capsule.low": {
    severity: "error",
    message: "`{name}` is {height} m high and {width} m wide, too low for a post with round ends",
    help: "make it at least as high as it is wide, or take a `sphere` or a `box`",
    page: "A capsule is an upright post that ends in half balls above and below; its height counts both, so it is never less than the diameter. What is lower is a `sphere`, which is as high as it is wide, or a `box`.\n\nRight: `capsule post { diameter: 20 cm  height: 1.2 m  at: offset(left: 1 m) }`.",
  },
  "paper.short": {
    severity: "error",
    message: "the sweep of `{name}` has a radius of {radius} m, but only {length} m of paper {part}",
    help: "make the radius smaller, or that part of the paper longer",
    page: "The sweep is a quarter of a circle between the hanging part and the floor; it takes up its radius of both.\n\nRight: `hangs: 2.6 m`, `run: 3 m` and `curve: 40 cm`.",
  },
} as const satisfies Record<string, CatalogueRow>;
