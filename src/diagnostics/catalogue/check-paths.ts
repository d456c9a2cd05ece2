import type { CatalogueRow } from "./row.js";

/** Findings about paths that change a value of the recipe. */
export const pathFindings = {
  "path.unknown": {
    severity: "error",
    message: "Nothing in the recipe is called `{name}`, so `{path}` changes nothing",
    help: "{known}",
    page: "A path starts with the name of a block, or with its kind where it has no name: `key.distance`, `camera.aperture`, `back.opening`, `walls.reflectance`, `wall.left.reflectance`. A `let` is changed by its name alone. A path that leads nowhere is never skipped, since the variant would then show the recipe itself.",
  },
  "path.setting": {
    severity: "error",
    message: "This is not a path with a value",
    help: "Write one value, as in `key.distance=3 m`.",
    page: "A value given from outside the recipe, such as by `--set` of the command, is a path, an equals sign and what a recipe would write behind the colon. It is one line and one value; blocks stand in the recipe itself, or in a `variant`.",
  },
  "path.short": {
    severity: "error",
    message: "`{path}` is a whole block, and a value belongs to one of its properties",
    help: "Write for example `{example}`.",
    page: "A variant changes one value at a time: `key.distance: 3 m`. A block as a whole is taken out by `remove fill`, and a new one is written out: `light rim { ... }`.",
  },
  "path.long": {
    severity: "error",
    message: "`{path}` goes on behind the property `{name}`",
    help: "A path ends with a property.",
    page: "A path leads from a block to one of its properties, and a property has no parts: `key.distance: 3 m`. A value is always given as a whole.",
  },
  "path.inherited": {
    severity: "error",
    message: "`{path}` comes from a definition and is not written here, so it cannot be taken out",
    help: "Give it another value, or write the block without `like`.",
    page: "`remove` takes out what stands in the recipe itself. What a light takes over by `like` or `with` belongs to the definition. Another value replaces it: `key.gel: warm(30 mired)`.",
  },
  "path.absent": {
    severity: "error",
    message: "`{path}` is not written in the recipe, so there is nothing to take out",
    help: "Leave this line out.",
    page: "`remove` takes out a block or a property that the recipe has: `remove fill`, `remove key.gel`. What was never written is there with its default, or not at all.",
  },
  "path.let": {
    severity: "error",
    message: "`{name}` is a `let`, which holds one quantity and is never taken out",
    help: "Give it another value: `{name}: ...`.",
    page: "A variant may give a `let` another value, `throw: 4 m`, and everything that names it follows. Taking it out would leave those places without a value.",
  },
} as const satisfies Record<string, CatalogueRow>;
