/**
 * A bearing in words, from the direction towards the camera's side: `28.7 deg to camera-left`, `straight in front`, and
 * `straight overhead` without one. Whoever says it says as well from where: the mark, or a face.
 *
 * @param bearing - deg, + to camera-right; null where the place stands straight above or below.
 * @param angle - Rounds an angle and says it with its unit.
 * @param side - What stands before `left` and `right`: none of it on a tape, where room is short.
 */
export function sayBearing(
  bearing: number | null,
  angle: (degrees: number) => string,
  side: "to camera-" | "" = "to camera-",
): string {
  if (bearing === null) return "straight overhead";
  const text = angle(Math.abs(bearing));
  if (text === angle(0)) return "straight in front";
  if (text === angle(180)) return "straight behind";
  return `${text} ${side}${bearing < 0 ? "left" : "right"}`;
}
