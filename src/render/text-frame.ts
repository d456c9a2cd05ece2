import { visibleLine } from "../diagnostics/print-visible.js";
import type { Report } from "../report/schema/report.js";
import * as n from "./number.js";
import type { TableColumn } from "./table.js";

type Frame = NonNullable<Report["frame"]>;
type Sharpness = NonNullable<Report["sharpness"]>;

/** A share in per cent: whole from 2 % on, a decimal below, `less than 0.1 %` for next to nothing. */
function share(value: number): string {
  if (value > 0 && value < 0.001) return "less than 0.1 %";
  return value < 0.02 ? `${n.fixed(value * 100, 1)} %` : n.perCent(value);
}

const list = (items: readonly string[]): string =>
  items.length < 2 ? items.join("") : `${items.slice(0, -1).join(", ")} and ${items[items.length - 1]}`;

const sideWords: Readonly<Record<Frame["sides"][number]["side"], string>> = {
  left: "on the left",
  right: "on the right",
  top: "at the top",
  bottom: "at the bottom",
  within: "within the set",
};

function surfaceWords(surface: string): string {
  if (surface === "open") return "nothing of the room";
  const wall = /^wall (\w+)$/.exec(surface);
  return wall === null ? `the ${surface}` : `the ${wall[1]} wall`;
}

function bareSentences(frame: Frame): readonly string[] {
  const { coverage, sides } = frame;
  if (coverage === null) return frame.reason === null ? [] : [`Coverage is not told: ${frame.reason}.`];
  if (coverage === 1) return ["All of the picture is set or subject."];
  const parts = sides.map(({ side, share: bare, depth, pixels }) => {
    const reach =
      side === "within" ? "" : `, up to ${pixels === null ? share(depth) : `${n.fixed(pixels, 0)} px`} in`;
    return `${share(bare)} ${sideWords[side]}${reach}`;
  });
  const seen = frame.behind.map((row) => `${surfaceWords(row.surface)} (${share(row.share)})`);
  const said = [
    `${share(coverage)} of the picture is set or subject; bare is ${share(1 - coverage)}: ${parts.join("; ")}.`,
  ];
  if (seen.length > 0) said.push(`There the picture shows ${list(seen)}.`);
  if (frame.closings.length > 0)
    said.push(`Each of these alone closes it: ${frame.closings.map(({ text }) => text).join("; ")}.`);
  return said;
}

function subjectSentences({ subject }: Frame): readonly string[] {
  if (subject === null) return [];
  const who = subject.name ?? "the subject";
  const parts: string[] = [];
  if (subject.framing !== null) parts.push(subject.framing);
  if (subject.height !== null)
    parts.push(`${who} takes ${n.perCent(subject.height)} of the picture's height`);
  if (subject.above_head !== null)
    parts.push(
      subject.above_head < 0
        ? `the top of the head is cut by ${n.centimetres(-subject.above_head)}`
        : `${n.centimetres(subject.above_head)} of it are free above the head`,
    );
  const said = parts.length === 0 ? [] : [`Framing: ${parts.join(", ")}.`];
  if (subject.hand_limit !== null)
    said.push(
      `Hands stay in the picture${subject.hand_limit_by === "frame" ? "" : ` and before ${subject.hand_limit_by}`} up to ${n.metres(subject.hand_limit)} above the floor.`,
    );
  return said;
}

/** What is in the picture besides set and people, each with its place. */
function thingSentences({ things }: Frame): readonly string[] {
  return things.map(({ kind, name, box }) => {
    const what =
      kind === "lamp"
        ? name
        : kind === "stand" || kind === "boom"
          ? `the ${kind} of ${name}`
          : `${kind} ${name}`;
    const span = (a: number, b: number): string => `${n.fixed(a * 100, 0)} to ${n.perCent(b)}`;
    return `In the picture: ${what}, ${span(box.left, box.right)} from the left, ${span(box.top, box.bottom)} from the top.`;
  });
}

/** What the picture shows, in sentences. */
export function frameSentences(frame: Frame): readonly string[] {
  return [...bareSentences(frame), ...subjectSentences(frame), ...thingSentences(frame)];
}

/** The lines of set and room in the picture; places from the left and from the top. */
export function seamTable(frame: Frame): {
  readonly columns: readonly TableColumn[];
  readonly rows: readonly (readonly string[])[];
} {
  const withPixels = frame.pixels !== null;
  const titles = ["Line", "Of", "From", "To", ...(withPixels ? ["From, px", "To, px"] : [])];
  const columns = titles.map((title): TableColumn => ({ title, align: "left" }));
  const at = ([left, top]: readonly [number, number]): string => `${n.perCent(left)}, ${n.perCent(top)}`;
  const pixel = (place: readonly [number, number] | null): string =>
    place === null ? n.NOTHING : `${n.fixed(place[0], 0)}, ${n.fixed(place[1], 0)}`;
  const rows = frame.seams.map((seam) => [
    seam.side === null ? seam.kind : `${seam.side} ${seam.kind}`,
    visibleLine(seam.name),
    at(seam.from),
    at(seam.to),
    ...(withPixels ? [pixel(seam.from_pixel), pixel(seam.to_pixel)] : []),
  ]);
  return { columns, rows };
}

/** What the table of lines says. */
export const seamWords =
  "Places from the left and from the top of the picture: the first and the last that is seen of a line.";

/** A length on the sensor in mm: two digits. */
const onSensor = (value: number): string => `${n.significant(value, 2)} mm`;

function rangeWords({ circle, near, far }: Sharpness["circle"]): string {
  const end = far === null ? "without end" : `to ${n.metres(far)}`;
  return `from ${n.metres(near)} ${end} for a blur of ${onSensor(circle)}`;
}

/** What is sharp, in sentences. */
export function sharpSentences(sharpness: Sharpness): readonly string[] {
  const { circle, two_pixels: fine, airy, airy_pixels: pixels } = sharpness;
  const more = fine === null ? "" : `, ${rangeWords(fine)} (two pixels)`;
  const said = [
    `Sharp ${rangeWords(circle)}${more}, along the lens axis. Hyperfocal distance ${n.metres(circle.hyperfocal)}.`,
    `Diffraction draws a point as a disc of ${onSensor(airy)}${pixels === null ? "" : ` (${n.fixed(pixels, 1)} px)`}.`,
  ];
  const soft = sharpness.points.filter(({ sharp }) => sharp === "no");
  for (const { name, depth, blur, pixels: wide } of soft) {
    const size = wide === null ? "" : ` (${n.fixed(wide, 1)} px)`;
    said.push(`${name}, ${n.metres(depth)} away, blurs to ${onSensor(blur)}${size}.`);
  }
  return said;
}

/** What the times of flashes, bursts and movements do, in sentences. */
export function timingSentences({ flashes, recycling, motion }: Report["timing"]): readonly string[] {
  return [
    ...flashes.map(({ light, lasts, lasts_half: half, open, tail_lost: lost }) => {
      const cut =
        open === null
          ? ""
          : lost === null
            ? "; the whole frame is never open to it"
            : `; the frame is open for ${n.shutterTime(open)}, which loses ${lost < 0.005 ? "nothing" : `${n.fixed(lost, 2)} stop`} of it`;
      return `${light} lasts ${n.shutterTime(lasts)} (t0.1), ${n.shutterTime(half)} (t0.5)${cut}.`;
    }),
    ...recycling.map(({ light, recycle, under }) => {
      const next =
        under === null || under < 0.05 ? "" : `; the next frame of the burst is ${n.stops(under)} under`;
      return `${light} fills up in ${n.significant(recycle, 2)} s at this power${next}.`;
    }),
    ...motion.map(({ subject, speed, acts, path, blur, pixels }) => {
      const wide = pixels === null ? "" : ` (${n.fixed(pixels, 1)} px)`;
      return `In ${n.shutterTime(acts)} ${subject ?? "the subject"} moves ${n.significant(path, 2)} mm at ${n.shortest(speed, 2)} m/s: ${onSensor(blur)} on the sensor${wide}.`;
    }),
  ];
}
