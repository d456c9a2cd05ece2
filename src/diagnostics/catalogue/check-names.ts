import type { CatalogueRow } from "./row.js";

/** Findings about names, definitions and what refers to them. */
export const nameFindings = {
  "name.twice": {
    severity: "error",
    message: "The name `{name}` is used twice",
    help: "Give one of the two another name.",
    page: "Whatever has a name can be referred to, so a name belongs to one thing. Order never matters: a later one does not replace an earlier one.",
  },
  "name.point": {
    severity: "error",
    message: "The name `{name}` has a point in it",
    help: "Join its words by a low line.",
    page: "A point between two names makes a path, such as `ana.face`, so a name itself has none: `light window_left { ... }`. Blanks and other signs may be in a name between backticks.",
  },
  "name.taken": {
    severity: "error",
    message: "`{name}` already means something in every recipe",
    help: "Choose another name.",
    page: "`camera`, `mark`, `floor`, `ceiling`, the four walls (`wall_back` ...), `face`, `chest`, `knee`, `shin`, `hair`, `feet`, the two cheeks and the words `up` and `down` and the results without a subject (`headroom`, `no_warnings`) always mean the same, so nothing else may be called that. A point of a subject is also not called `disc`, `dome` or like a result of a reading, since `ana.disc` asks for a reading at `ana`.",
  },
  "name.unknown": {
    severity: "error",
    message: "There is no `{name}` here",
    help: "{known}",
    page: "A name must belong to a light, a subject, a piece of the set, a point, a `let`, or to the fixed points: `face`, `chest`, `knee`, `shin`, `hair`, `feet`, `camera`, `mark`, `floor`.",
  },
  "name.part": {
    severity: "error",
    message: "`{owner}` has no point `{part}`",
    help: "It has: {parts}.",
    page: "Points of a subject are `face`, `chest`, `knee`, `shin`, `hair`, `feet`, the two cheeks, and the points you name yourself. A flat or paper has `left`, `right` and `top` besides its middle.",
  },
  "name.whose": {
    severity: "error",
    message: "`{name}` could be anybody's: there are several subjects",
    help: "Say whose: {owners}.",
    page: "With one subject `face` is enough. With several, each has a name, and its points are `ana.face`, `ben.face`.",
  },
  "name.not-a-point": {
    severity: "error",
    message: "`{name}` is not a place",
    help: "Write a point: a name such as `face`, `(x, y, z)`, or `offset(left: 40 cm, up: 1 m)`.",
    page: "Points may be named (`face`, `key`, `back.left`), given by coordinates, by `offset(...)`, by `between(a, b, 40 cm from b)` or by `midpoint(a, b)`.",
  },
  "name.kind": {
    severity: "error",
    message: "`{name}` is a {kind}, and `{property}` takes {wanted}",
    help: "Name another, or leave `{property}` out.",
    page: "`through` names the scrim that a light shines through. `into` names what it shines at: a flat, a card, a paper, a panel, a disc, a scrim or a table of the set, or `ceiling`, `floor`, `wall_left`, `wall_right`, `wall_back`, `wall_front`.",
  },
  "let.twice": {
    severity: "error",
    message: "`{name}` is set by two `let`s",
    help: "Keep one of them.",
    page: "A `let` gives one value one name for the whole file. It is not a variable: a second `let` does not change it.",
  },
  "let.circle": {
    severity: "error",
    message: "`{name}` is worked out from itself",
    help: "Give one of the values on the way as a number.",
    page: "`let a = b * 2` and `let b = a / 2` have no beginning. One of them must be written as a quantity.",
  },
  "let.unused": {
    severity: "note",
    message: "`{name}` is never used",
    help: "Use it or take it out.",
    page: "A `let` that nothing refers to is often a misspelt name elsewhere.",
  },
  "define.twice": {
    severity: "error",
    message: "`{name}` is defined twice",
    help: "Keep one of them.",
    page: "A definition gives one thing one name. To change some of its properties write `define light b like a { ... }`.",
  },
  "define.unused": {
    severity: "note",
    message: "`{name}` is defined and never used",
    help: "Use it with `like` or take it out.",
    page: "A definition places nothing by itself. It is used by `light key like NAME { ... }`, `with NAME` or, for a gel, by its name.",
  },
  "define.kind": {
    severity: "error",
    message: "{kind} cannot be defined",
    help: "Definitions may be of: {kinds}.",
    page: "What is bought, built or kept can be defined once and used often: lights, modifiers, gels, cameras, rooms, pieces of the set.",
  },
  "like.unknown": {
    severity: "error",
    message: "Nothing called `{name}` is defined",
    help: "{known}",
    page: "`like NAME` takes over the properties of `define KIND NAME { ... }` in the same file, or of one that `use NAME` brings in from a kit. What the block says itself comes first.",
  },
  "like.kind": {
    severity: "error",
    message: "`{name}` is a {other}, not a {kind}",
    help: "A block can only be like a definition of its own kind.",
    page: "`light key like strobe` needs `define light strobe`. A modifier goes on a head with `with`: `light key like strobe with octa { ... }`.",
  },
  "like.circle": {
    severity: "error",
    message: "`{name}` is like itself in the end",
    help: "Break the circle.",
    page: "Definitions may be like other definitions, as long as the chain ends.",
  },
  "like.placed": {
    severity: "error",
    message: "`{name}` stands in the room; only definitions can be copied",
    help: "Write `define {kind} ...` for what they share, and let both be `like` it.",
    page: "`like` takes over a definition, not something that is placed, so that moving one lamp never moves another.",
  },
} as const satisfies Record<string, CatalogueRow>;
