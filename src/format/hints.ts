import type { File, Unit } from "../syntax/ast.js";
import { type Node, walk } from "../syntax/walk.js";

/** What the layout of tokens cannot see from the tokens alone. */
export interface Hints {
  /** Ends of paths that have arguments: the bracket behind them is glued. */
  readonly callEnds: ReadonlySet<number>;
  /** Starts of negations: the minus there belongs to what follows it. */
  readonly negations: ReadonlySet<number>;
  /** Units by the offset of their first character. */
  readonly units: ReadonlyMap<number, Unit>;
  /** Starts and ends of statements that may go on over a line end, rising. */
  readonly spans: readonly (readonly [start: number, end: number])[];
}

/** Gathers the hints of a tree. */
export function hintsOf(file: File): Hints {
  const callEnds = new Set<number>();
  const negations = new Set<number>();
  const units = new Map<number, Unit>();
  const spans: [number, number][] = [];
  const addUnit = (unit: Unit | null): void => {
    if (unit !== null) units.set(unit.span.start, unit);
  };
  walk(file, (node: Node) => {
    switch (node.kind) {
      case "reference":
        if (node.args !== null) callEnds.add(node.path.span.end);
        break;
      case "negation":
        negations.add(node.span.start);
        break;
      case "quantity":
        for (const amount of node.amounts) addUnit(amount.unit);
        break;
      case "show":
        for (const column of node.columns) addUnit(column.as);
        spans.push([node.span.start, node.span.end]);
        break;
      case "expect":
        spans.push([node.span.start, node.span.end]);
        break;
    }
  });
  return { callEnds, negations, units, spans: spans.sort((a, b) => a[0] - b[0]) };
}
