import { statSync } from "node:fs";
import { dirname, join } from "node:path";
import type { CompileOptions } from "../compile.js";
import { visibleLine } from "../diagnostics/print-visible.js";
import type { Session } from "./session.js";
import type { Language } from "./stages/load.js";

/** What is wrong with the folder that `--root` names, or null. */
export function rootProblem(root: string | undefined): string | null {
  if (root === undefined || statSync(root, { throwIfNoEntry: false })?.isDirectory() === true) return null;
  return `--root takes a folder, and "${visibleLine(root)}" is none.`;
}

/** What a command says about the texts besides their names: plain data, so that it can be handed to a thread. */
export interface Besides {
  /** The folder that kits are read from; null where it is to be found. */
  readonly root: string | null;
  /** The values of `--set`, one a line. */
  readonly settings: string | null;
}

/** What the options of a command say about its texts. */
export function besidesOf(session: Session): Besides {
  const settings = session.lists.get("set");
  return { root: session.options.get("root") ?? null, settings: settings?.join("\n") ?? null };
}

/** The name under which findings about the values of `--set` stand. */
export const SETTINGS = "--set";

/** How a file is compiled: its kits are read inside the root, and nothing is read for standard input. */
export function compileOptions(
  { root, settings }: Besides,
  language: Language,
  name: string,
): CompileOptions {
  return {
    ...(name === "-" ? {} : readersOf(root ?? language.projectRoot(name), language, name)),
    ...(settings === null ? {} : { settings: { name: SETTINGS, text: settings } }),
  };
}

/** What reads kits and photographs inside a folder. */
const readersOf = (root: string, language: Language, name: string): CompileOptions => ({
  read: language.kitReader(root, name),
  readPhoto: language.photoReader(root, name),
});

/** The same by the options of a command. */
export function kitsOf(session: Session, language: Language, name: string): CompileOptions {
  const options = compileOptions(besidesOf(session), language, name);
  const { reading } = session;
  const { read, readPhoto } = options;
  if (reading === undefined || read === undefined || readPhoto === undefined) return options;
  const told = (path: string, from: string): void => reading(join(dirname(from), path));
  return {
    ...options,
    read: (path, from) => {
      told(path, from);
      return read(path, from);
    },
    readPhoto: (path, from) => {
      told(path, from);
      return readPhoto(path, from);
    },
  };
}
