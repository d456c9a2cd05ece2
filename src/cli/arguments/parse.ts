import { near } from "./near.js";
import { type CommandRow, commands, findCommand, type OptionRow } from "./table.js";

/** Arguments after reading: which command, what it works on, and its options by name. */
export interface Parsed {
  readonly command: CommandRow;
  readonly operands: readonly string[];
  /** The value of each option that was given; an option without a value has an empty one. */
  readonly options: ReadonlyMap<string, string>;
  /** The values of options that may be given several times, in their order. */
  readonly lists: ReadonlyMap<string, readonly string[]>;
}

/** Arguments, or a sentence on what is wrong with them and the command they were for, if that is known. */
export type ParseResult =
  | { readonly parsed: Parsed; readonly problem?: never }
  | { readonly parsed?: never; readonly problem: string; readonly command: CommandRow | null };

/** A file by its look, so that `halfshade plan.light` needs no command. */
const looksLikeFile = (word: string): boolean => word === "-" || /[./\\]/.test(word);

/** Which command is meant, and where its own arguments start. */
function chooseCommand(args: readonly string[]): { command: CommandRow; rest: readonly string[] } | string {
  const at = args.findIndex((arg) => arg === "-" || !arg.startsWith("-"));
  const word = args[at];
  const report = findCommand("report") as CommandRow;
  if (word === undefined) {
    const isHelp = args.some((arg) => arg === "--help" || arg === "-h");
    return { command: isHelp ? (findCommand("help") as CommandRow) : report, rest: isHelp ? [] : args };
  }
  const command = at === 0 ? findCommand(word) : undefined;
  if (command !== undefined) return { command, rest: args.slice(1) };
  if (at > 0 || looksLikeFile(word)) return { command: report, rest: args };
  const names = commands.map((row) => row.name);
  return `There is no command "${word}".${near(word, names)} A file is named with its ending: ${word}.light.`;
}

/** Reads one value and checks it against the words allowed. */
function wrongValue(option: OptionRow, value: string): string | null {
  if (option.words !== undefined && !option.words.includes(value)) {
    return `--${option.name} takes ${option.words.join(", ")}, not "${value}".${near(value, option.words)}`;
  }
  return null;
}

/** Reads the arguments behind `halfshade`. */
export function parseArguments(args: readonly string[]): ParseResult {
  const chosen = chooseCommand(args);
  if (typeof chosen === "string") return { problem: chosen, command: null };
  const { command, rest } = chosen;
  const fail = (problem: string): ParseResult => ({ problem, command });
  const operands: string[] = [];
  const options = new Map<string, string>();
  const lists = new Map<string, string[]>();
  for (let i = 0; i < rest.length; i++) {
    const arg = rest[i] ?? "";
    if (arg === "--") {
      operands.push(...rest.slice(i + 1));
      break;
    }
    if (arg === "-" || !arg.startsWith("-")) {
      operands.push(arg);
      continue;
    }
    const equals = arg.startsWith("--") ? arg.indexOf("=") : -1;
    const written = equals < 0 ? arg : arg.slice(0, equals);
    const option = command.options.find(
      (row) => written === `--${row.name}` || (row.short !== undefined && written === `-${row.short}`),
    );
    if (option === undefined) return fail(unknownOption(command, written));
    let value = "";
    if (option.value === undefined) {
      if (equals >= 0) return fail(`--${option.name} takes no value.`);
    } else {
      const next = equals < 0 ? rest[++i] : arg.slice(equals + 1);
      if (next === undefined || next === "") return fail(`--${option.name} needs a value: ${option.help}.`);
      const wrong = wrongValue(option, next);
      if (wrong !== null) return fail(wrong);
      value = next;
    }
    if (option.several === true) lists.set(option.name, [...(lists.get(option.name) ?? []), value]);
    options.set(option.name, value);
  }
  if (!options.has("help")) {
    const [least, most] = command.count;
    if (operands.length < least) {
      return fail(`halfshade ${command.name} needs ${command.operands}; - stands for standard input.`);
    }
    if (operands.length > most) {
      return fail(
        `halfshade ${command.name} takes ${command.operands} and no more: "${operands[most] ?? ""}".`,
      );
    }
  }
  return { parsed: { command, operands, options, lists } };
}

/** A sentence on an option that the command does not have. */
function unknownOption(command: CommandRow, written: string): string {
  const elsewhere = commands.filter((row) => row.options.some((option) => `--${option.name}` === written));
  const names = command.options.map((row) => `--${row.name}`);
  const hint =
    elsewhere.length > 0
      ? ` It belongs to ${elsewhere.map((row) => `\`halfshade ${row.name}\``).join(", ")}.`
      : near(written, names);
  return `halfshade ${command.name} has no option "${written}".${hint}`;
}
