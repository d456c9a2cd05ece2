/**
 * Describe a photographic lighting set-up and work out what it does: how hard each light is, how wide its shadow edges
 * are, what the meter will read.
 *
 * @packageDocumentation
 */

export type { PhotoRead, PhotoSettings, ReadPhoto } from "./check/kits/files.js";
export { isKitPath } from "./check/kits/path.js";
export type { KitText, ReadKit } from "./check/kits/read.js";
export { kitsAmong } from "./check/kits/texts.js";
export { type Compiled, type CompileOptions, compile } from "./compile.js";
export type { Theme } from "./core/paper.js";
export type { Position, Source } from "./core/source.js";
export type { Place, Span } from "./core/span.js";
export type { Vec3 } from "./core/vector.js";
export { sentence } from "./diagnostics/create.js";
export type { Diagnostic, Edit, Fix, Label, Severity } from "./diagnostics/diagnostic.js";
export { printDiagnostics } from "./diagnostics/print.js";
export { diagnosticJson } from "./diagnostics/print-json.js";
export { daySheet, drawFigure, lookOf, naturalLookOf } from "./figures.js";
export { type Difference, differences } from "./model/differences.js";
export {
  block,
  camera,
  intent,
  light,
  point,
  type RecipeParts,
  recipe,
  room,
  set,
  subject,
} from "./model/make/blocks.js";
export {
  type Claim,
  expectation,
  hold,
  isAtLeast,
  isAtMost,
  isBetween,
  isLess,
  isMore,
  isOver,
  isTrue,
  isUnder,
  isWithin,
  type ToleranceOf,
} from "./model/make/claims.js";
export {
  arms,
  belowFull,
  capsule,
  cosinePower,
  dial,
  dialNumber,
  disc,
  efficacy,
  fractionOfFull,
  full,
  gel,
  gels,
  guideNumber,
  lambertian,
  metered,
  off,
  output,
  rectangle,
  setTo,
  sphere,
} from "./model/make/lamps.js";
export {
  along,
  at,
  between,
  left,
  midpoint,
  named,
  type OffsetSteps,
  offset,
  right,
  straight,
  tape,
  towards,
} from "./model/make/points.js";
export {
  type ArgumentsOf,
  type Beside,
  dividedBy,
  type LightResultName,
  type MeterHeld,
  minus,
  negative,
  plus,
  proportion,
  quotient,
  type ResultName,
  reading,
  result,
  resultOf,
  type Said,
  type TypeOfUnit,
  times,
  type ValueOf,
} from "./model/make/results.js";
export { pixels, size, volume } from "./model/make/sizes.js";
export {
  define,
  kit,
  type Let,
  letValue,
  like,
  measuredReading,
  measuredSetting,
  type SilenceableCode,
  session,
  silence,
  thresholds,
  tolerances,
  use,
} from "./model/make/statements.js";
export {
  contrast,
  edgeOf,
  markFrom,
  overcast,
  overcastSky,
  ratio,
  reflecting,
  sunlight,
  surface,
  window,
} from "./model/make/surroundings.js";
export {
  type Column,
  column,
  type Sweep,
  sweepCamera,
  sweepLet,
  sweepLight,
  sweepLike,
  sweepProperty,
  sweepVariants,
  type TableOptions,
  type Through,
  table,
} from "./model/make/tables.js";
export {
  addBlock,
  type Change,
  change,
  changeLet,
  removeBlock,
  removeProperty,
  type VariantOptions,
  withVariant,
} from "./model/make/variants.js";
export { withoutOrigins } from "./model/plain.js";
export { printRecipe } from "./model/print.js";
export type { MeasuredReading, SessionModel } from "./model/session.js";
export type {
  ColumnModel,
  ListedValue,
  Steps,
  SweepModel,
  SweepTarget,
  TableModel,
} from "./model/tables/types.js";
export type {
  BlockModel,
  CameraModel,
  Expectation,
  HoldDial,
  HoldModel,
  IntentModel,
  KeptText,
  LaterStatement,
  LightModel,
  MeterModel,
  Origins,
  PartModel,
  PointModel,
  Properties,
  Recipe,
  RoomModel,
  SetModel,
  Setting,
  Silence,
  SubjectModel,
  VariantModel,
} from "./model/types.js";
export type {
  ArmsValue,
  BeamValue,
  BearingValue,
  CalibrationValue,
  ClaimModel,
  ContrastValue,
  DialValue,
  DirectionValue,
  Expr,
  GelsValue,
  GelValue,
  HingeValue,
  LevelValue,
  MarkValue,
  NaturalLightValue,
  OutputValue,
  OvercastValue,
  PixelsValue,
  PointValue,
  PowerValue,
  RectangleValue,
  ResultType,
  ShapeValue,
  SunValue,
  SurfaceValue,
  TapeValue,
  ValueShapes,
  VolumeValue,
} from "./model/values.js";
export { checkRecipe, type Evaluated, evaluate, type Outcome, run, tablesOf } from "./pipeline.js";
export { tenCentimetres } from "./preview/bar.js";
export { type GreyOptions, greysOf } from "./preview/grey.js";
export type { Look } from "./preview/look.js";
export { type NaturalLook, type NaturalName, naturalNames } from "./preview/natural.js";
export type { View } from "./preview/view.js";
export {
  type ComparisonView,
  renderComparisonCsv,
  renderComparisonMarkdown,
  renderComparisonText,
} from "./render/comparison.js";
export { figurePart } from "./render/figures/in-page.js";
export { usualWidth } from "./render/figures/page.js";
export { renderSvg, type SvgOptions } from "./render/figures/svg.js";
export { partsHtml } from "./render/html.js";
export { renderJson } from "./render/json.js";
export { partsMarkdown, renderMarkdown } from "./render/markdown.js";
export { type PageNode, partsTree } from "./render/page-tree.js";
export type { ViewColumn, ViewPart, ViewWords } from "./render/parts.js";
export { renderReportCsv } from "./render/report-csv.js";
export { reportParts } from "./render/report-parts.js";
export {
  renderSessionCsv,
  renderSessionMarkdown,
  renderSessionText,
  sessionParts,
} from "./render/session.js";
export { renderSheet } from "./render/sheet-html.js";
export type { Paper } from "./render/sheet-scale.js";
export { inForm as renderTables } from "./render/tables/form.js";
export { tablesJson as renderTablesJson } from "./render/tables/json.js";
export { tableParts } from "./render/tables/parts.js";
export { renderText } from "./render/text.js";
export {
  type ComparedHold,
  type ComparedValue,
  type Comparison,
  compare,
  type Side,
} from "./report/compare/compare.js";
export type { Scale } from "./report/compare/measured.js";
export type {
  AreaMark,
  Drawing,
  Ink,
  LabelMark,
  LineMark,
  Mark,
  Place as PlaceOnFigure,
  TapeMark,
} from "./report/figures/drawing.js";
export { gapOf } from "./report/figures/edge.js";
export { type FigureName, type FigureOptions, figureTable } from "./report/figures/figures.js";
export type { Held } from "./report/hold/held.js";
export type {
  Report,
  ReportExpectation,
  ReportLight,
  ReportResult,
  ReportShadow,
  ReportStation,
  ReportWarning,
} from "./report/schema/report.js";
export type { SessionCause, SessionPair, SessionReading, SessionReport } from "./report/schema/session.js";
export type { BothWays, DaySheet, LampMark, SheetReading } from "./report/sheet/sheet.js";
export { type SceneJson, sceneToJson } from "./scene/export.js";
export type { Scene } from "./scene/types.js";
export { evaluateSession, evaluateSetUps, type SetUp, type SetUpOptions } from "./set-ups.js";
export { tableChart } from "./tables/chart.js";
export type { Table, TableCell, TableColumn, TableHead, TableRow } from "./tables/types.js";
export {
  type Hole,
  type HoleValue,
  halfshade,
  halfshadeText,
  isRecipeError,
  type RecipeError,
  recipeFrom,
} from "./tagged.js";
export type { LightField } from "./transport/light-field.js";
export type { BaseUnit } from "./units/dimension.js";
export {
  cd,
  cdSeconds,
  cm,
  deg,
  fNumber,
  ft,
  inch,
  iso,
  kelvin,
  kg,
  lm,
  lmPerWatt,
  lmSeconds,
  lx,
  m,
  mired,
  mm,
  ms,
  number,
  percent,
  plusMinus,
  s,
  say,
  shutterOneOver,
  stops,
  thirdStops,
  ws,
} from "./units/make.js";
export type { Quantity, Spread } from "./units/quantity.js";
