import type { Span } from "../../core/span.js";
import type { Diagnostic, Sink } from "../../diagnostics/diagnostic.js";
import type { Variant } from "../../syntax/ast.js";

const within = (place: Span, outer: Span): boolean => outer.start <= place.start && place.end <= outer.end;

/**
 * Where findings about a variant's set-up go. One at its own lines stays as it is. An error elsewhere was made by what
 * the variant changes, so it is told there, with the other place beside it. Notes about other lines are not repeated.
 * @param kept - Places of the expectations that it keeps from what it comes from.
 */
export function variantSink(variant: Variant, kept: readonly Span[], file: string, sink: Sink): Sink {
  return (diagnostic: Diagnostic) => {
    const { place } = diagnostic;
    if (place.file === file && within(place, variant.span)) return sink(diagnostic);
    if (diagnostic.severity === "note") return;
    const gone = removedIn(variant, diagnostic);
    const isKept = place.file === file && kept.some((span) => within(place, span));
    const cause = causeIn(variant, isKept);
    const help = gone === null ? diagnostic.help : `The variant removes \`${gone}\`, and this asks for it.`;
    const label = isKept ? "it stands here, and is kept" : "with the variant, this is wrong";
    sink({
      ...diagnostic,
      help,
      place: { file, start: cause.start, end: cause.end },
      related: [{ place, text: label }, ...diagnostic.related],
      fixes: [],
    });
  };
}

/** What a variant removes where a finding says that there is no such name; null for any other finding. */
function removedIn(variant: Variant, { code, args }: Diagnostic): string | null {
  if (code !== "name.unknown") return null;
  const [missing] = String(args.name).split(".");
  const gone = variant.lines.flatMap((line) =>
    line.kind === "remove" ? [line.path.parts.at(-1)?.text] : [],
  );
  return missing !== undefined && gone.includes(missing) ? missing : null;
}

/** The line of a variant to which an error elsewhere belongs: what keeps an expectation, else its only `remove`. */
function causeIn(variant: Variant, isKept: boolean): Span {
  const keep = variant.lines.find((line) => line.kind === "keep");
  if (isKept && keep !== undefined) return keep.span;
  const removes = variant.lines.filter((line) => line.kind === "remove");
  return removes.length === 1 && removes[0] !== undefined ? removes[0].span : variant.title.span;
}
