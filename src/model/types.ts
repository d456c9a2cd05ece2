import type { Place } from "../core/span.js";
import type { BlockKind, blocks } from "../vocabulary/index.js";
import type { WarningCode } from "../vocabulary/warnings.js";
import type { TableModel } from "./tables/types.js";
import type { ClaimModel, Expr, ValueShapes } from "./values.js";

type Blocks = typeof blocks;
type Rows<K extends BlockKind> = Blocks[K]["properties"][number];
type RowNamed<K extends BlockKind, N> = Extract<Rows<K>, { name: N }>;

/** The properties of a kind of block, by name, as the vocabulary types them. What was left out is absent. */
export type Properties<K extends BlockKind> = {
  readonly [N in Rows<K>["name"]]?: ValueShapes[RowNamed<K, N>["type"]];
};

/** Where a block and its properties were written; absent in models made by code, and never compared. */
export interface Origins {
  readonly block: Place;
  readonly properties: ReadonlyMap<string, Place>;
}

/** One checked block: its kind in `block`, its name, its properties by their names, and the blocks inside it. */
export type BlockModel<K extends BlockKind = BlockKind> = {
  readonly [Kind in K]: {
    readonly block: Kind;
    readonly name: string | null;
    readonly parts: readonly PartModel<Kind>[];
    readonly origins?: Origins;
  } & Properties<Kind>;
}[K];

/** The kinds of block that may stand inside another. */
export type PartModel<K extends BlockKind> = Blocks[K]["parts"][number] extends infer P
  ? P extends BlockKind
    ? BlockModel<P>
    : never
  : never;

/** The checked room, with its surfaces and windows as parts. */
export type RoomModel = BlockModel<"room">;
/** The checked set; its pieces are parts. */
export type SetModel = BlockModel<"set">;
/** One checked person, with the points that belong to it as parts. */
export type SubjectModel = BlockModel<"subject">;
/** One checked place to hold a meter. */
export type PointModel = BlockModel<"point">;
/** One checked lamp, with its stand as a part. */
export type LightModel = BlockModel<"light">;
/** The checked camera. */
export type CameraModel = BlockModel<"camera">;
/** What the picture should look like, checked. */
export type IntentModel = BlockModel<"intent">;
/** The meter's constants, checked. */
export type MeterModel = BlockModel<"meter">;

/** A value of a table block (`thresholds`, `tolerances`) that the recipe sets, in its base unit. */
export interface Setting {
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  readonly written: string;
}

/** One `expect`. `written` is the whole statement as a recipe says it. */
export interface Expectation {
  readonly written: string;
  readonly surely: boolean;
  readonly claims: readonly ClaimModel[];
  readonly because: string | null;
  readonly origin?: Place;
}

/** A warning that is known and accepted. */
export interface Silence {
  readonly code: WarningCode;
  readonly because: string;
  readonly origin?: Place;
}

/** A statement that is read and kept, and that a later version evaluates. `written` is its canonical text. */
export interface LaterStatement {
  readonly statement: "solve" | "measured";
  readonly title: string | null;
  readonly written: string;
  readonly origin?: Place;
}

/** What a `hold` may turn or move, and of which light. */
export interface HoldDial {
  readonly light: string;
  readonly property: "power" | "distance" | "floor_distance" | "height" | "elevation";
}

/** One `hold`: a result that is brought back to its target before set-ups are compared. */
export interface HoldModel {
  readonly written: string;
  readonly reading: Expr;
  /** Null: what it is in the set-up that this one comes from. */
  readonly target: Expr | null;
  /** One dial; or the powers of several lights, which change by the same number of stops. */
  readonly by: readonly HoldDial[];
  readonly origin?: Place;
}

/** One `variant`: a whole set-up of its own, which says what it has in common with another. */
export interface VariantModel {
  readonly title: string;
  /** The variant it is a variant of; null for the recipe itself. */
  readonly from: string | null;
  /** Whether the expectations of what it comes from hold for it too; they stand before its own. */
  readonly keeps: boolean;
  /** The set-up with everything changed: without `use`s, definitions, variants and statements of later versions. */
  readonly recipe: Recipe;
  readonly origin?: Place;
}

/** A `use`, `let` or `define`, kept so that statements of later versions and the printed text still find it. */
export interface KeptText {
  readonly name: string;
  readonly written: string;
}

/** A recipe after checking: plain data, complete, with every name resolved. */
export interface Recipe {
  readonly format: 1;
  readonly kind: "recipe" | "kit" | "session";
  readonly title: string;
  /** The recipe a session belongs to. */
  readonly of: string | null;
  /** The variant of that recipe to which a session was built; left out for the recipe itself. */
  readonly ofVariant?: string;
  /** Each `use`, by the path of its kit. What it brings in is written out where it is used. */
  readonly uses: readonly KeptText[];
  readonly lets: readonly KeptText[];
  readonly definitions: readonly KeptText[];
  readonly about: BlockModel<"about"> | null;
  readonly room: RoomModel | null;
  readonly set: SetModel | null;
  readonly subjects: readonly SubjectModel[];
  readonly points: readonly PointModel[];
  readonly lights: readonly LightModel[];
  readonly camera: CameraModel | null;
  readonly meter: MeterModel | null;
  readonly intent: IntentModel | null;
  readonly tolerances: readonly Setting[];
  readonly thresholds: readonly Setting[];
  readonly silence: readonly Silence[];
  readonly expectations: readonly Expectation[];
  /** What is held in every variant, and where set-ups are compared. */
  readonly holds: readonly HoldModel[];
  readonly variants: readonly VariantModel[];
  readonly tables: readonly TableModel[];
  readonly later: readonly LaterStatement[];
}
