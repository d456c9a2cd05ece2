import type { CatalogueRow } from "./row.js";

/** Findings about `use` and other files that a recipe names. */
export const kitFindings = {
  "beam.file": {
    severity: "error",
    message: "`{path}` cannot be read as a measured beam: in its line {line}, {problem}",
    help: "Take the file as its maker gives it, or describe the beam with `cosine_power`.",
    page: "A measured beam comes from a file after IES LM-63, in the editions of 1986, 1991, 1995, 2002 and 2019, with photometry of type B or C. Nothing of a file is guessed at: a number that is missing, negative where it cannot be, or out of order refuses the whole file.",
  },
  "beam.note": {
    severity: "note",
    message: "`{path}`: {note}",
    help: "The rest of the file is used as it stands.",
    page: "Some things in a file after IES LM-63 are read and not used, such as a table of how the output changes with tilt. They are named, so that a difference to another program has an explanation.",
  },
  "photo.alone": {
    severity: "note",
    message: "The settings of `{path}` are not read here",
    help: "Give the recipe as a file, or write the settings into it.",
    page: "The path in `photo(...)` is taken from the folder of the file that says it. A text that came through a pipe, or that a program handed over without a way to read photographs, has no folder; the settings that are written still count.",
  },
  "photo.missing": {
    severity: "error",
    message: "The photograph `{path}` does not say its {what}",
    help: "Write it into the camera, for example `{example}`.",
    page: "A camera writes its settings into the picture; editing programs and senders of pictures often take them out again. What is missing is written as usual; what is written counts before what the photograph says.",
  },
  "photo.none": {
    severity: "error",
    message: "There are no settings to read in `{path}`",
    help: "Name the picture as the camera stored it, or write the settings.",
    page: "Settings are read from the tags of the exchangeable image file format (JEITA CP-3451) in JPEG, TIFF, PNG, WebP, HEIC and AVIF files. A screenshot, a scan, or a picture that was stripped has none.",
  },
  "use.unknown": {
    severity: "error",
    message: "`{path}` does not define `{name}`",
    help: "{known}",
    page: "`use` brings in what a kit defines itself by `define`. What the kit takes from another kit is used from that one, so that every name says where it comes from; a `let` of a kit stays in the kit.",
  },
  "use.twice": {
    severity: "error",
    message: "`{name}` stands for two definitions here",
    help: "Leave it out of one `use`, or give your own definition another name.",
    page: "A name belongs to one definition in each file. Two kits may define the same name; a recipe uses it from one of them.",
  },
  "use.unused": {
    severity: "note",
    message: "`{name}` is brought in and never used",
    help: "Use it or take it out of the list.",
    page: "A name in a `use` that nothing refers to is often a left-over, or a misspelt name elsewhere.",
  },
  "use.no-kit": {
    severity: "error",
    message: "`{path}` is not a kit",
    help: "Name a file that starts with `kit` and its title.",
    page: 'Only kits are used: files whose title line says `kit "..."`, and which hold definitions and nothing that stands in a room. To share a lamp of a recipe, move its definition into a kit. Of a file that is no kit nothing is shown.',
  },
  "use.circle": {
    severity: "error",
    message: "`{path}` uses itself in the end",
    help: "Take one `use` out of the circle. The way round: {way}.",
    page: "A kit may use another, as long as the chain ends. What two kits need from each other belongs into a third.",
  },
  "use.alone": {
    severity: "error",
    message: "There is no folder in which to look for `{path}`",
    help: "Give the recipe as a file, or copy the definitions into it.",
    page: "The path in a `use` is taken from the folder of the file that says it. A text that came through a pipe, or that a program handed over without a way to read files, has no folder; and nothing on the disk is read for it.",
  },
  "use.limit": {
    severity: "error",
    message: "`{path}` is not read: there are more than {what}",
    help: "Put definitions that belong together into one kit.",
    page: "The caps are far above what a cupboard of lamps needs: 64 kits for one recipe, 2 MiB of text in all, 16 kits that use one another in a row. They keep a mistaken or hostile file from filling the memory.",
  },
} as const satisfies Record<string, CatalogueRow>;
