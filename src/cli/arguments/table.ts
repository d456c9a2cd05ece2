/** One option of a command. */
export interface OptionRow {
  /** Without the dashes: `max-warnings`. */
  readonly name: string;
  /** One letter: `o`. */
  readonly short?: string;
  /** How help calls the value; absent where the option has none. */
  readonly value?: string;
  /** True where it may be given several times. */
  readonly several?: true;
  /** The values allowed, where only some are. */
  readonly words?: readonly string[];
  readonly help: string;
}

/** One command. */
export interface CommandRow {
  readonly name: string;
  /** What stands behind the command, as help shows it. */
  readonly operands: string;
  /** How many operands may stand there. */
  readonly count: readonly [least: number, most: number];
  readonly help: string;
  readonly options: readonly OptionRow[];
  readonly examples: readonly string[];
}

const color: OptionRow = {
  name: "color",
  value: "WHEN",
  words: ["auto", "always", "never"],
  help: "Colour the output: auto (only on a terminal, and not where NO_COLOR is set), always, never",
};
const width: OptionRow = { name: "width", value: "CELLS", help: "Length of a line, 40 or more" };
const help: OptionRow = { name: "help", short: "h", help: "Say what this command does" };
const output: OptionRow = { name: "output", short: "o", value: "FILE", help: "Write to a new file instead" };
const force: OptionRow = { name: "force", help: "Let --output replace a file that is there" };
const maxWarnings: OptionRow = {
  name: "max-warnings",
  value: "N",
  help: "Exit with 1 when there are more warnings than this (notes are not counted)",
};
const format = (...words: readonly string[]): OptionRow => ({
  name: "format",
  value: "FORM",
  words,
  help: `One of ${words.join(", ")}`,
});
const root: OptionRow = {
  name: "root",
  value: "DIR",
  help: "Read kits from this folder and those in it (usual: the nearest folder with .git or package.json, else the recipe's own)",
};
const all: OptionRow = { name: "all", help: "Show also what differs by no more than noise" };
const variant: OptionRow = { name: "variant", value: "TITLE", help: "Take this variant of the recipe" };
const settings: OptionRow = {
  name: "set",
  value: "PATH=VALUE",
  several: true,
  help: "Work with another value, as in --set key.distance=3m; may be given several times",
};
const theme: OptionRow = {
  name: "theme",
  value: "THEME",
  words: ["light", "dark"],
  help: "Dark lines on light, or light on dark",
};
const pixels: OptionRow = {
  name: "pixels",
  value: "N",
  help: "Width of the figure, 200 to 8000 (usual: 960)",
};
const watch: OptionRow = {
  name: "watch",
  help: "Do it again whenever the recipe, or a file that it uses, changes; Ctrl-C ends it",
};
const everywhere = [width, color, help];
const MANY = 1000;

/** Every command, in the order in which help lists them. */
export const commands: readonly CommandRow[] = [
  {
    name: "report",
    operands: "FILE...",
    count: [1, MANY],
    help: "Work out recipes and report them. `halfshade FILE` means the same. Of a folder every recipe is reported.",
    options: [
      variant,
      format("text", "json", "markdown", "csv"),
      {
        name: "brief",
        help: "Only what decides: headline, readings, wishes, expectations and warnings",
      },
      output,
      force,
      maxWarnings,
      root,
      watch,
      settings,
      ...everywhere,
    ],
    examples: [
      "halfshade report plan.light",
      "halfshade plan.light --format json -o plan.json",
      "halfshade report plan.light --brief",
    ],
  },
  {
    name: "table",
    operands: "FILE [TITLE]",
    count: [1, 2],
    help: "Work out the lesson tables of a recipe, or the one with that title; as svg, png or pdf it is drawn as a chart.",
    options: [
      format("text", "markdown", "html", "csv", "json", "svg", "png", "pdf"),
      { name: "worksheet", help: "Leave the columns blank that the table names under `worksheet`" },
      { name: "blank", value: "COLUMN", help: "Leave this column blank, or several with commas between" },
      { name: "answers", help: "Give the answers to the worksheet instead" },
      theme,
      pixels,
      output,
      force,
      root,
      settings,
      ...everywhere,
    ],
    examples: [
      'halfshade table lesson.light "Walk the lamp in"',
      "halfshade table lesson.light --blank Size,Edge --format html -o sheet.html",
      'halfshade table lesson.light "Walk the lamp in" -o walk.svg',
    ],
  },
  {
    name: "check",
    operands: "FILE...",
    count: [1, MANY],
    help: "Say what is wrong: mistakes, expectations that do not hold, warnings. Of a folder every .light file is checked.",
    options: [
      { name: "no-light", help: "Check the language only, and work out no light" },
      format("text", "json", "sarif", "annotations"),
      { name: "jobs", value: "N", help: "Threads that share the files (usual: up to 4 from 9 files on)" },
      maxWarnings,
      root,
      settings,
      ...everywhere,
    ],
    examples: [
      "halfshade check plan.light",
      "halfshade check book/ --format sarif",
      "halfshade check --no-light - < plan.light",
    ],
  },
  {
    name: "compare",
    operands: "FILE [VARIANT...]",
    count: [1, MANY],
    help: "Say what variants change in a recipe, and what that does to the light. Without a title: all variants.",
    options: [all, format("text", "json", "markdown", "csv"), output, force, root, settings, ...everywhere],
    examples: ["halfshade compare plan.light", 'halfshade compare plan.light "Key farther out"'],
  },
  {
    name: "diff",
    operands: "FILE FILE",
    count: [2, 2],
    help: "Say what a second recipe has different from a first, and what that does to the light.",
    options: [all, format("text", "json", "markdown", "csv"), output, force, root, settings, ...everywhere],
    examples: ["halfshade diff monday.light tuesday.light"],
  },
  {
    name: "draw",
    operands: "FILE [FIGURE]",
    count: [1, 2],
    help: "Draw a figure of a set-up: plan, side, throw, frame, edge, readings, ratio or falloff. The usual one is the plan.",
    options: [
      variant,
      format("svg", "png", "pdf"),
      output,
      force,
      theme,
      pixels,
      {
        name: "light",
        value: "NAME",
        help: "The light whose throw, fall-off or edge is drawn (usual: the key, edges of all)",
      },
      { name: "gap", value: "LENGTH", help: "From the edge to the surface behind it (usual: 50cm)" },
      root,
      watch,
      settings,
      ...everywhere,
    ],
    examples: [
      "halfshade draw plan.light -o plan.svg",
      "halfshade draw plan.light throw --light key -o throw.png",
      "halfshade draw plan.light falloff -o falloff.svg",
    ],
  },
  {
    name: "preview",
    operands: "FILE",
    count: [1, 1],
    help: "Work out what the camera would record, as a small grey picture in PNG with a bar of 50 cm.",
    options: [
      variant,
      output,
      force,
      { name: "pixels", value: "N", help: "Width of the picture, 40 to 2000 (usual: 360)" },
      { name: "contours", help: "Draw lines where the picture passes whole stops" },
      {
        name: "beside",
        value: "LIGHT",
        words: ["intent", "sun", "overcast", "window"],
        help: "Put the same beside it in natural light from where the key is: a clear sun, an overcast sky, the window of the intent, or what it is to pass for (intent)",
      },
      root,
      watch,
      settings,
      ...everywhere,
    ],
    examples: [
      "halfshade preview plan.light -o look.png",
      "halfshade preview plan.light --beside sun -o look.png",
    ],
  },
  {
    name: "sheet",
    operands: "FILE",
    count: [1, 1],
    help: "Make the sheet for the day: a page to print, with tapes, heights, readings to tick and what to bring.",
    options: [
      variant,
      format("html", "pdf"),
      output,
      force,
      { name: "paper", value: "PAPER", words: ["a4", "letter"], help: "Paper it is printed on (usual: a4)" },
      root,
      watch,
      settings,
      ...everywhere,
    ],
    examples: [
      "halfshade sheet plan.light -o sheet.pdf",
      "halfshade sheet plan.light --paper letter -o sheet.html",
    ],
  },
  {
    name: "format",
    operands: "FILE...",
    count: [1, MANY],
    help: "Print a recipe in its usual form, with the same meaning and every comment.",
    options: [
      { name: "check", help: "Print nothing; exit with 1 where a file is not in its usual form" },
      { name: "write", help: "Change the files themselves" },
      ...everywhere,
    ],
    examples: ["halfshade format plan.light", "halfshade format --write *.light"],
  },
  {
    name: "refresh",
    operands: "PAGE...",
    count: [1, MANY],
    help: "Work out the marked blocks of Markdown pages anew, in place; the rest of a page stays byte for byte.",
    options: [
      {
        name: "check",
        help: "Change nothing; say which blocks are stale, and exit with 1 where there are any",
      },
      root,
      ...everywhere,
    ],
    examples: ["halfshade refresh lesson.md", "halfshade refresh --check docs/*.md"],
  },
  {
    name: "scene",
    operands: "FILE",
    count: [1, 1],
    help: "Give out the set-up in metres, so that another program can check the figures.",
    options: [variant, format("json"), output, force, root, settings, ...everywhere],
    examples: ["halfshade scene plan.light --format json"],
  },
  {
    name: "calc",
    operands: "[QUANTITY [INPUT=VALUE...]]",
    count: [0, MANY],
    help: "Work out one quantity. Without operands: list them all.",
    options: [format("text", "json"), ...everywhere],
    examples: ["halfshade calc angular_diameter_sphere diameter=60cm distance=3m"],
  },
  {
    name: "words",
    operands: "[KIND]",
    count: [0, 1],
    help: "List the words of the language: all kinds of block, the properties of one, or `results`, `units`, `surfaces`.",
    options: [format("text", "json"), ...everywhere],
    examples: ["halfshade words", "halfshade words light", "halfshade words results"],
  },
  {
    name: "explain",
    operands: "[CODE]",
    count: [0, 1],
    help: "Explain the code of a finding or warning. Without a code: list them all.",
    options: everywhere,
    examples: ["halfshade explain unit.unknown"],
  },
  {
    name: "new",
    operands: "[FILE]",
    count: [0, 1],
    help: "Write a commented recipe to start from (setup.light, or - to print it).",
    options: everywhere,
    examples: ["halfshade new plan.light"],
  },
  {
    name: "show",
    operands: "tokens|tree|model FILE",
    count: [2, 2],
    help: "Show how a recipe is read: its tokens, its tree, or the checked model.",
    options: [format("text", "json"), root, settings, ...everywhere],
    examples: ["halfshade show tokens plan.light", "halfshade show model plan.light"],
  },
  {
    name: "help",
    operands: "[COMMAND]",
    count: [0, 1],
    help: "Say what a command does.",
    options: everywhere,
    examples: ["halfshade help report"],
  },
];

/** The command of a name. */
export function findCommand(name: string): CommandRow | undefined {
  return commands.find((command) => command.name === name);
}
