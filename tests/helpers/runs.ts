const long = Number(process.env.FC_RUNS ?? "0");

/** How often a property is tried: so many times, or as FC_RUNS says where that is more. */
export function runs(few: number): { readonly numRuns: number } {
  return { numRuns: Number.isFinite(long) && long > few ? long : few };
}
