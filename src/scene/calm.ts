import type { Diagnostic, Sink } from "../diagnostics/diagnostic.js";

/** Findings that say that a place is not known. */
const lost: ReadonlySet<string> = new Set(["point.circular", "point.unknown"]);

/** Findings that follow by themselves when something has been put where its default says instead. */
const following: ReadonlySet<string> = new Set([
  "direction.none",
  "placement.too-near",
  "placement.on-aim",
  "point.beyond",
]);

/**
 * A sink that says each thing once, and leaves out what only follows: in a ring every place of it is unknown, and what
 * is measured from an unknown place does not fit either.
 */
export function calm(sink: Sink): Sink {
  const said = new Set<string>();
  const keyOf = ({ code, place, args }: Diagnostic): string =>
    `${code} ${place.file} ${place.start} ${place.end} ${args.name ?? ""}`;
  return (diagnostic) => {
    const { code } = diagnostic;
    if (code === "point.unknown" && said.has("point.circular")) return;
    if (following.has(code) && (said.has("point.circular") || said.has("point.unknown"))) return;
    const key = keyOf(diagnostic);
    if (said.has(key)) return;
    said.add(key);
    if (lost.has(code)) said.add(code);
    sink(diagnostic);
  };
}
