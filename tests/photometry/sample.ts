/** The parts of a made-up LM-63 file that a test wants to be its own. */
export interface Sample {
  readonly head?: readonly string[];
  readonly tilt?: string;
  readonly lumens?: number;
  readonly multiplier?: number;
  readonly type?: number;
  readonly units?: number;
  readonly factors?: string;
  readonly vertical?: readonly number[];
  readonly horizontal?: readonly number[];
  readonly candela?: (vertical: number, horizontal: number) => number;
  readonly counts?: string;
}

/** The angles from a first to a last by a step. */
export function angles(first: number, last: number, step: number): readonly number[] {
  return Array.from({ length: Math.round((last - first) / step) + 1 }, (_, i) => first + i * step);
}

/** The text of an LM-63 file. */
export function sampleFile(sample: Sample = {}): string {
  const vertical = sample.vertical ?? angles(0, 90, 10);
  const horizontal = sample.horizontal ?? [0];
  const candela = sample.candela ?? ((v) => 1000 * Math.max(0, Math.cos((v * Math.PI) / 180)));
  const counts = sample.counts ?? `${vertical.length} ${horizontal.length}`;
  return [
    ...(sample.head ?? ["IESNA:LM-63-2002", "[TEST] made up", "[MANUFAC] nobody"]),
    `TILT=${sample.tilt ?? "NONE"}`,
    `1 ${sample.lumens ?? -1} ${sample.multiplier ?? 1} ${counts} ${sample.type ?? 1} ${sample.units ?? 2} 0.3 0.4 0`,
    sample.factors ?? "1 1 100",
    vertical.join(" "),
    horizontal.join(" "),
    ...horizontal.map((h) => vertical.map((v) => candela(v, h)).join(" ")),
    "",
  ].join("\r\n");
}
