import { statSync } from "node:fs";
import type { CompileOptions } from "../compile.js";
import { visibleLine } from "../diagnostics/print-visible.js";
import type { Session } from "./session.js";
import type { Language } from "./stages/load.js";

/** What is wrong with the folder that `--root` names, or null. */
export function rootProblem(root: string | undefined): string | null {
  if (root === undefined || statSync(root, { throwIfNoEntry: false })?.isDirectory() === true) return null;
  return `--root takes a folder, and "${visibleLine(root)}" is none.`;
}

/** How the kits of a file are read: those inside the root, which is found where none is given. */
export function kitsUnder(language: Language, root: string | null, name: string): CompileOptions {
  return { read: language.kitReader(root ?? language.projectRoot(name), name) };
}

/** The same for what a command was given; nothing is read for standard input. */
export function kitsOf(session: Session, language: Language, name: string): CompileOptions {
  return name === "-" ? {} : kitsUnder(language, session.options.get("root") ?? null, name);
}
