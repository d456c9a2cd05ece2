import type { Vec3 } from "../core/vector.js";
import type { BeamTable } from "../physics/beam-table.js";

/**
 * The set-up in metres, in one right-handed frame: origin on the floor under the subject's mark, x to the camera's
 * right, y away from the camera's side, z up. Angles are in radians unless a name says degrees.
 * Nothing from here on knows that there was a text.
 */
export interface Scene {
  readonly room: SceneRoom | null;
  readonly polygons: readonly ScenePolygon[];
  readonly bodies: readonly Body[];
  readonly subjects: readonly SceneSubject[];
  /** In file order, lamps that are off included (their energy is 0). */
  readonly sources: readonly Source[];
  /** The standard stations in a fixed order, then named points in file order. */
  readonly stations: readonly Station[];
  readonly camera: SceneCamera | null;
  readonly meter: { readonly flat: number; readonly dome: number; readonly reflected: number };
  /** Index into `sources`: the light with the role, else the one called key, else the one that gives the first face most; null if there is none. */
  readonly key: number | null;
  /** Every place that has a name: `mark`, `face`, `ana.chest`, `back.left`, `key`, `camera` ... */
  readonly landmarks: ReadonlyMap<string, Landmark>;
  readonly assumed: readonly Assumption[];
}

/** A place with a name. */
export interface Landmark {
  readonly at: Vec3;
  /** For the places of a subject, the unit vector along the floor that it faces: `ahead` runs along it; else null. */
  readonly ahead: Vec3 | null;
}

/** The room as a box; lengths in m. */
export interface SceneRoom {
  readonly width: number;
  readonly depth: number;
  readonly height: number;
  /** Least and greatest x and y of the room in the scene's frame. */
  readonly left: number;
  readonly right: number;
  readonly front: number;
  readonly back: number;
  /** Illuminance of the room's own light at the mark, lx. */
  readonly ambient: number;
}

/** A flat surface; `normal` by the right-hand rule of its vertices points out of its front. */
export interface ScenePolygon {
  /** `floor`, `wall left`, `back`, `roll.1` ...; unique. */
  readonly name: string;
  readonly kind:
    | "floor"
    | "ceiling"
    | "wall"
    | "flat"
    | "paper"
    | "card"
    | "scrim"
    | "table"
    | "box"
    | "disc"
    | "panel";
  readonly vertices: readonly Vec3[];
  readonly normal: Vec3;
  readonly frontReflectance: number;
  readonly backReflectance: number;
  /** Thickness of a leaf behind this front, m; light takes it as a sheet. */
  readonly thickness?: number | undefined;
  /** Its colour in a word, where the recipe gives one; light takes it as grey. */
  readonly tint?: string | undefined;
  /** True for a surface of the room that the recipe counts as set. */
  readonly asSet?: true | undefined;
}

/** What a rounded solid belongs to, where it is no piece of the set. */
export interface BodyOwner {
  /** A person, or what carries a lamp. */
  readonly of?: "subject" | "stand" | undefined;
}

/** A rounded solid: part of a figure, a stand, or a prop. */
export type Body = BodyOwner &
  (
    | {
        readonly kind: "ellipsoid";
        readonly name: string;
        readonly centre: Vec3;
        /** Semi-axes as vectors, at right angles to each other. */
        readonly axes: readonly [Vec3, Vec3, Vec3];
        readonly reflectance: number;
      }
    | {
        readonly kind: "capsule";
        readonly name: string;
        /** Centres of the two end spheres. */
        readonly from: Vec3;
        readonly to: Vec3;
        readonly radius: number;
        readonly reflectance: number;
      }
    | {
        readonly kind: "sphere";
        readonly name: string;
        readonly centre: Vec3;
        readonly radius: number;
        readonly reflectance: number;
      }
  );

/** A person of the scene, as far as places and looks go; its bodies are in `bodies`. */
export interface SceneSubject {
  /** Empty for the only, unnamed subject. */
  readonly name: string;
  /** The point on the floor under the body. */
  readonly place: Vec3;
  /** Unit vector along the floor: where the body faces; the feet of one who lies. */
  readonly facing: Vec3;
  /** Unit vector the nose points along: `facing`, or up when lying. */
  readonly nose: Vec3;
  /** Unit vector to the camera's right of a subject that faces the camera: its own left-hand side. */
  readonly across: Vec3;
  /** How far flat spectacles lean forward at the top, deg; null for one who wears none. */
  readonly spectacles: number | null;
  /** Reflectance of the hair; no body of its own carries it. */
  readonly hair: number;
  readonly stature: number;
  readonly heels: number;
  readonly pose: "standing" | "seated" | "kneeling" | "lying";
  readonly face: Vec3;
  readonly head: Vec3;
  /** Height of the highest point of head and trunk above the floor. */
  readonly top: number;
  /** How fast it moves, m/s; 0 for one who keeps still. */
  readonly speed: number;
  /** Highest fingertip above the floor, at the highest pose. */
  readonly reachTop: number;
}

/** The lit opening of a lamp. */
export interface Source {
  readonly name: string;
  readonly role: string | null;
  readonly kind: "flash" | "steady";
  readonly shape:
    | { readonly kind: "disc"; readonly radius: number }
    | { readonly kind: "rectangle"; readonly width: number; readonly height: number }
    | { readonly kind: "sphere"; readonly radius: number }
    /** `length` includes the rounded ends. */
    | { readonly kind: "capsule"; readonly length: number; readonly radius: number };
  readonly centre: Vec3;
  /** Unit vector out of the lit front. */
  readonly axis: Vec3;
  /** Unit vector along the width. */
  readonly across: Vec3;
  /** Unit vector along the height; a capsule's own axis. */
  readonly along: Vec3;
  readonly beam:
    | { readonly kind: "lambertian" }
    | { readonly kind: "cosine-power"; readonly exponent: number }
    /** Full angle at which nothing is left, radians. */
    | { readonly kind: "grid"; readonly cutoff: number }
    /** Measured; its file by name. */
    | { readonly kind: "table"; readonly file: string; readonly table: BeamTable };
  /** Area that gives light, m2: one side of a flat shape, the whole surface of a round one. */
  readonly area: number;
  /**
   * Luminous energy that leaves the lamp at its present setting after all losses: lm s for a flash, and for a steady
   * lamp its flux in lm times the shutter time.
   */
  readonly energy: number;
  /** The same at full power. */
  readonly fullEnergy: number;
  /** How far the output may be off, in stops to either side. */
  readonly uncertainty: number;
  /** How the output is known, in words for the report. */
  readonly known: string;
  /** Energy in Ws of the present setting and of full power, where known. */
  readonly wattSeconds: number | null;
  readonly fullWattSeconds: number | null;
  /** Lowest setting in stops below full, where known. */
  readonly lowest: number | null;
  /** The present setting in stops below full; null when it is off. */
  readonly below: number | null;
  /** Colour temperature after gels, K. */
  readonly colour: number;
  /** The point it is aimed at. */
  readonly aim: Vec3;
  readonly headHeight: number;
  readonly hotModellingLamp: boolean;
  readonly stand: Stand | null;
  /** Duration t0.1 of the flash at its setting, s; left out where it is not known. */
  readonly lasts?: number | undefined;
  /** From one full-power flash to the next, s; left out where it is not known. */
  readonly recycles?: number | undefined;
  /** Set where the lit opening is a cloth that the head shines through. */
  readonly cloth?: ClothLight | undefined;
  /** The name of the light whose bare head this is, where a cloth takes its place: what spills past the cloth. */
  readonly spillOf?: string | undefined;
  /** Where the head shines into a surface: the lit patch, which is the light that is seen. */
  readonly patch?: LitPatch | undefined;
}

/** A cloth as a light: its evenly lit equal is the opening of the source. */
export interface ClothLight {
  /** The scrim's name. */
  readonly scrim: string;
  /** The name of the source that is the bare head behind it. */
  readonly spill: string;
  /** Width and height of the whole cloth, m. */
  readonly width: number;
  readonly height: number;
  /** Share of the head's luminous energy that falls on the cloth. */
  readonly caught: number;
  /** Loss on the way through, stops. */
  readonly loses: number;
}

/** The lit patch of a surface: the even rectangle with the same light and the same spread. */
export interface LitPatch {
  /** `ceiling`, `wall left`, or a piece of the set. */
  readonly surface: string;
  readonly centre: Vec3;
  /** Unit vector out of the lit side. */
  readonly normal: Vec3;
  readonly across: Vec3;
  readonly along: Vec3;
  readonly width: number;
  readonly height: number;
  /** Luminous energy that leaves the patch at its first bounce, as a share of the head's. */
  readonly share: number;
  /** The point its shadow edges are taken at: the first subject's face, else the mark. */
  readonly aim: Vec3;
}

/** What carries a lamp; lengths in m, masses in kg. */
export interface Stand {
  readonly highest: number | null;
  readonly feet: number;
  readonly weight: number;
  readonly head: number;
  readonly bag: number;
  readonly boom: number | null;
  readonly tail: number;
  readonly counterweight: number;
}

/** A place of a body, and the unit vector out of it. */
export interface HeldBefore {
  readonly at: Vec3;
  readonly ahead: Vec3;
}

/** A place where a meter is held. */
export interface Station {
  /** `face`, `lit_cheek`, `floor`, `back.left`, `ana.chest`, or a point's own name. */
  readonly name: string;
  readonly subject: string | null;
  readonly at: Vec3;
  /** Unit vector the receptor looks along. */
  readonly facing: Vec3;
  readonly receptor: "disc" | "dome";
  /** Where it looks, in words: `towards key`, `towards camera`, `along its surface`. */
  readonly looks: string;
  /** True for stations that have one natural reading and may be named without a meter. */
  readonly natural: boolean;
  /** For a meter held before a body: the place of the body, on it. */
  readonly before?: HeldBefore | undefined;
}

/** The camera as it stands and is set; lengths in m, times in s. Null where the recipe does not say. */
export interface SceneCamera {
  readonly at: Vec3;
  /** Unit vectors: into the picture, to the picture's right, to its top. */
  readonly forward: Vec3;
  readonly right: Vec3;
  readonly up: Vec3;
  /** Size of the picture area as held, m. */
  readonly frameWidth: number;
  readonly frameHeight: number;
  readonly focalLength: number | null;
  /** How far the lens is raised in the plane of the picture, m; 0 for one that is not. */
  readonly shift: number;
  readonly focus: Vec3 | null;
  readonly aperture: number | null;
  readonly shutter: number | null;
  readonly iso: number | null;
  readonly sync: number | null;
  /** From one frame of a burst to the next, s; null without a burst. */
  readonly interval: number | null;
  readonly balance: number;
  readonly circleOfConfusion: number;
  readonly pixels: { readonly width: number; readonly height: number } | null;
}

/** A default that was used because the recipe did not say. */
export interface Assumption {
  readonly what: string;
  readonly value: string;
  /** True where it may move a result by more than 0.2 stop. */
  readonly matters: boolean;
}
