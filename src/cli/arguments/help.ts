import { padEnd, wrap } from "../../diagnostics/print-width.js";
import { type CommandRow, commands } from "./table.js";

const rows = (pairs: readonly (readonly [string, string])[], width: number): readonly string[] => {
  const room = pairs.reduce((most, [left]) => Math.max(most, left.length), 0) + 2;
  return pairs.flatMap(([left, right]) =>
    wrap(right, width - room - 2).map((line, index) => `  ${padEnd(index === 0 ? left : "", room)}${line}`),
  );
};

/** What the whole program does. */
export function generalHelp(width: number): string {
  const lines = [
    ...wrap(
      "halfshade works out a lighting set-up that a recipe describes: how hard each light is, how wide its shadow edges are, what the meter reads.",
      width,
    ),
    "",
    "  halfshade FILE                report a recipe",
    "  halfshade COMMAND [OPTIONS]   do something else; - stands for standard input",
    "",
    ...rows(
      commands.map((command) => [command.name, command.help]),
      width,
    ),
    "",
    ...wrap("`halfshade help COMMAND` says more, `halfshade --version` which version this is.", width),
    ...wrap(
      "Exit: 0 all is well; 1 an error in a file, or an expectation that does not hold; 2 wrong use, or a file that cannot be read.",
      width,
    ),
  ];
  return lines.map((line) => `${line}\n`).join("");
}

/** What one command does. */
export function commandHelp(command: CommandRow, width: number): string {
  const options = command.options.map((option): readonly [string, string] => {
    const short = option.short === undefined ? "" : `-${option.short}, `;
    const value = option.value === undefined ? "" : ` ${option.value}`;
    return [`${short}--${option.name}${value}`, option.help];
  });
  const lines = [
    `halfshade ${command.name} ${command.operands}`,
    "",
    ...wrap(command.help, width),
    "",
    ...rows(options, width),
    "",
    ...command.examples.map((example) => `  ${example}`),
  ];
  return lines.map((line) => `${line}\n`).join("");
}
