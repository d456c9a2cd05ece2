import { type CommandRow, commands } from "../../src/cli/arguments/table.js";
import { table } from "./regions.js";

/** Every command in a table. */
export function commandsDocs(): string {
  return table(
    ["command", "what it does"],
    commands.map((row) => [`\`halfshade ${row.name} ${row.operands}\``, row.help]),
  );
}

/** The options of a command in a table. */
export function commandDocs(name: string): string {
  const row: CommandRow | undefined = commands.find((one) => one.name === name);
  if (row === undefined) throw new Error(`there is no command "${name}"`);
  const options = row.options.map((option) => {
    const short = option.short === undefined ? "" : `\`-${option.short}\`, `;
    const value = option.value === undefined ? "" : ` ${option.value}`;
    return [`${short}\`--${option.name}${value}\``, option.help];
  });
  return [
    `\`halfshade ${row.name} ${row.operands}\``,
    "",
    row.help,
    "",
    table(["option", "meaning"], options),
  ].join("\n");
}
