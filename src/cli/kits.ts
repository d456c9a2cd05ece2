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

/** How the kits of a file are read: none for standard input, else those inside the root. */
export function kitsOf(session: Session, language: Language, name: string): CompileOptions {
  if (name === "-") return {};
  return { read: language.kitReader(session.options.get("root") ?? language.projectRoot(name), name) };
}
