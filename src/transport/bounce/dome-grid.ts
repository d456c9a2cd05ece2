/**
 * Directions of the half space before a receptor, in equal cells of a square that is wrapped on a disc without tearing
 * (Shirley and Chiu, J. Graphics Tools 2 (1997) 45). Seen from a flat receptor equal cells count alike; a dome's
 * response (1 + cos) / 2 is spread over all directions in the same way.
 */
export interface DomeGrid {
  /** Cells along a side at the first step; each further step halves them. */
  readonly side: number;
  /** For each step three numbers a cell: along two axes square to the receptor's, and along it for a disc. */
  readonly steps: readonly Float64Array[];
}

/** Directions through the middle of the cells at each step. */
export function domeGrid(side: number, steps: number): DomeGrid {
  return { side, steps: Array.from({ length: steps }, (_, step) => directions(side << step)) };
}

function directions(side: number): Float64Array {
  const out = new Float64Array(3 * side * side);
  for (let j = 0; j < side; j++) {
    const b = (2 * j + 1) / side - 1;
    for (let i = 0; i < side; i++) {
      const a = (2 * i + 1) / side - 1;
      const wide = Math.abs(a) > Math.abs(b);
      const r = wide ? a : b;
      const turn = wide ? (Math.PI / 4) * (b / a) : Math.PI / 2 - (Math.PI / 4) * (a / b);
      const at = 3 * (j * side + i);
      out[at] = r * Math.cos(turn);
      out[at + 1] = r * Math.sin(turn);
      out[at + 2] = Math.sqrt(Math.max(0, 1 - r * r));
    }
  }
  return out;
}
