import type { Vec3 } from "../../core/vector.js";
import { addScaled, dot, subtract } from "../../math/vector.js";
import type { Body, Scene, SceneSubject } from "../../scene/types.js";
import { bodiesOf } from "../frame/coverage.js";
import { type Lens, lensOf, outlineOf, pointInPicture } from "../frame/project.js";
import { boxOf } from "../frame/region.js";
import { foldsOf } from "../frame/seams.js";
import { inFrame } from "../geometry/frame.js";
import { ceilTo } from "../say/number.js";
import { sayCentimetres } from "../say/quantity.js";
import { threshold } from "../settings.js";
import type { Rule, RuleFinding } from "./rule.js";
import { whose } from "./set-top-words.js";

type Head = Extract<Body, { kind: "ellipsoid" }>;

function headOf(scene: Scene, subject: SceneSubject): Head | null {
  const head = bodiesOf(scene, subject).find(({ name }) => name.endsWith("head"));
  return head?.kind === "ellipsoid" ? head : null;
}

/** Free room in the plane of a head between its outline and a fold behind it, + to each side of the picture, m. */
interface Free {
  /** From the right side of the head to the fold; negative where the fold lies farther left. */
  readonly right: number;
  /** From the fold to the left side of the head. */
  readonly left: number;
}

/** Null where the fold is not behind the head, or does not pass it at its height. */
function freeOf(lens: Lens, head: Head, a: Vec3, b: Vec3): Free | null {
  const { camera } = lens;
  const depth = dot(subtract(head.centre, camera.at), camera.forward);
  const behind = dot(subtract(a, camera.at), camera.forward) > depth;
  const [from, to] = [pointInPicture(lens, a), pointInPicture(lens, b)];
  const outline = outlineOf(lens, head);
  const box = outline === null ? null : boxOf([outline]);
  if (!behind || from === null || to === null || box === null) return null;
  const middle = (box.bottom + box.top) / 2;
  const [low, high] = [Math.min(from[1], to[1]), Math.max(from[1], to[1])];
  if (high < box.bottom || low > box.top || high === low) return null;
  const height = Math.min(high, Math.max(low, middle));
  const x = from[0] + ((to[0] - from[0]) * (height - from[1])) / (to[1] - from[1]);
  const metres = depth / lens.across;
  return { right: (x - box.right) * metres, left: (box.left - x) * metres };
}

/** A fold of the set stands at a head. */
export const foldAtHead: Rule = {
  code: "fold-at-head",
  thresholds: ["fold_at_head"],
  safety: false,
  page: {
    when: "The fold between two flats, as the lens sees it, passes behind a head that is in the picture or within `fold_at_head` (8 cm) of its outline, in the plane of the head.",
    means: "The line seems to grow out of the head.",
    todo: "Move the sitter or the camera a little to the side, or turn the flats.",
    source: "Projection through the lens, exact; the threshold is common practice, no source.",
  },
  check: ({ scene, recipe }) => {
    const lens = scene.camera === null ? null : lensOf(scene.camera);
    if (lens === null) return [];
    const least = threshold(recipe, "fold_at_head");
    return scene.subjects.flatMap((subject): readonly RuleFinding[] => {
      const head = headOf(scene, subject);
      if (head === null || !inFrame(lens.camera, subject.face)) return [];
      return foldsOf(scene).flatMap(({ name, a, b }): readonly RuleFinding[] => {
        const free = freeOf(lens, head, a, b);
        if (free === null || Math.max(free.right, free.left) >= least - 1e-9) return [];
        const away = Math.max(free.right, free.left);
        const message =
          away <= 0
            ? `The fold of ${name} grows out of the head of ${whose(subject)}.`
            : `The fold of ${name} stands ${sayCentimetres(away)} beside the head of ${whose(subject)}.`;
        const about = subject.name === "" ? null : subject.name;
        return [{ severity: "note", message, remedy: remedyOf(lens, head, a, b, free, least), about }];
      });
    });
  },
};

/** The shorter way to the side, tried with the head moved. */
function remedyOf(lens: Lens, head: Head, a: Vec3, b: Vec3, free: Free, least: number): string {
  const tries = (["left", "right"] as const).map((side) => {
    const sign = side === "left" ? -1 : 1;
    // To the left there has to be room at the right of the head, and the other way round.
    const key = side === "left" ? "right" : "left";
    let step = ceilTo(least - free[key], 0.01);
    for (let i = 0; i < 5; i++) {
      const moved: Head = { ...head, centre: addScaled(head.centre, lens.camera.right, sign * step) };
      const found = freeOf(lens, moved, a, b);
      if (found === null || found[key] >= least - 1e-9) return { side, step };
      step += 0.01;
    }
    return { side, step: Number.POSITIVE_INFINITY };
  });
  const best = [...tries].sort((one, other) => one.step - other.step)[0];
  return best === undefined || !Number.isFinite(best.step)
    ? "Turn the flats, or move the camera to the side."
    : `Move the sitter ${sayCentimetres(best.step)} to the ${best.side}, as the camera sees it, or the camera or the flats the other way.`;
}
