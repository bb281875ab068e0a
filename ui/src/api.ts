// Written from the Go types of internal/server/api by `go generate ./internal/server/api`.
// Change those and run it again; a test refuses a stale file.
//
// Numbers are SI: m, kg, N, N·m, J, s, rad; x forward, y up, seen from the
// person's right, counter-clockwise positive.

/** Arm is a moment arm: from an axis square to the line a force acts along. */
export interface Arm {
  kind: ArmKind;
  /** of the load, the contact or the cam */
  name: string;
  axis: Place;
  /** of the perpendicular */
  foot: Place;
  /** where the force acts, on the same line as the foot */
  acts: Place;
  length: number;
}

/** ArmKind tells what a moment arm belongs to. */
export type ArmKind = "load" | "contact" | "rope";

/** Ask evaluates a machine without storing anything: the text given, or a stored sheet as it stands; with edits made to it first. */
export interface Ask {
  text?: string;
  /** id, if text is left out */
  sheet?: string;
  edits?: Edit[];
  look: Look;
}

/** AskPerson reads a person's sheet without storing anything: the text given, or a stored sheet as it stands; with the edits made to it first, and then with what is new put in. */
export interface AskPerson {
  text?: string;
  /** id, if text is left out */
  sheet?: string;
  edits?: Edit[];
  strength?: NewStrength;
  limit?: NewLimit;
}

/** Backdrop is a photo laid behind a machine's drawing. */
export interface Backdrop {
  photo: Photo;
  survey: Survey;
  plane: [number, number, number, number, number, number, number, number, number];
  inverse: [number, number, number, number, number, number, number, number, number];
}

/** Band is how unsure the curve is. */
export interface Band {
  phase: Phase;
  /** else first order, which is quick and wrong near a dead point */
  sampled: boolean;
  low: (number | null)[];
  high: (number | null)[];
  /** by name of a reading */
  ranges: Record<string, Range>;
  draws: number;
  failed: number;
  /** the measurement to take again first */
  narrow: Narrowing | null;
}

/** Body is the person at one position, seen square to the plane of motion. */
export interface Body {
  segments: Segment[];
  joints: BodyJoint[];
}

/** BodyJoint is a joint centre. */
export interface BodyJoint {
  name: string;
  at: Place;
}

/** Build makes a sheet from answers. What is not answered has its usual value. */
export interface Build {
  name: string;
  points: NamedPlace[];
  values: NamedNumber[];
  /** outline, ground frame */
  cam?: Measured[];
  /** how, for the sheet */
  measured?: string;
  look: Look;
}

/** Cam is a traced cam and the points it was traced through, at the measured pose. */
export interface Cam {
  name: string;
  axis: Place;
  points: Place[];
}

/** CamDrag takes one traced point of a cam, counted from 1, somewhere else. */
export interface CamDrag {
  cam: string;
  vertex: number;
  to: Place;
  driver?: number;
}

/** Change edits single values of a stored sheet. If the sheet has moved on since the revision but the values to be changed have not, the change is made to the sheet as it now stands, and Saved says so. */
export interface Change {
  revision: number;
  edits: Edit[];
  look?: Look;
}

/** Changes is what was changed on a sheet, latest first: the latest 200 steps. */
export interface Changes {
  steps: PastStep[];
  /** there are steps before these; they are kept */
  older: boolean;
}

/** Choice is the value a setting has. */
export interface Choice {
  setting: string;
  value: string;
}

/** Code tells what kind of thing went wrong. */
export type Code = "bad request" | "unusable" | "conflict" | "not found" | "too large" | "refused" | "store failed" | "internal";

/** Compare sets up to six machines or settings beside each other; the first is what the others are compared with. */
export interface Compare {
  items: Compared[];
  /** left out, lifting */
  phase?: Phase;
  imperial?: boolean;
  /** id of a person's sheet, to be put on each */
  person?: string;
}

/** Compared is one machine as set. */
export interface Compared {
  /** id */
  sheet?: string;
  /** if no id is given */
  text?: string;
  settings?: Choice[];
  /** left out, the machine's name and what differs from its defaults */
  label?: string;
}

/** ComparedCurve is one of them. */
export interface ComparedCurve {
  label: string;
  sheet: string;
  settings: Choice[];
  /** N */
  byShare: (number | null)[];
  /** N; null beyond its travel */
  byTravel: (number | null)[];
  /** whose its force is, as in Preview */
  side: string;
  readings: Readings | null;
  /** why there is no curve */
  trouble: string;
  /** there is none because the sheet is not stored any more */
  gone: boolean;
  /** of the person, lifting, by share; empty without one */
  effort: (number | null)[];
  /** of the person, by share */
  joints: ComparedJoint[];
  /** why the person is not on it */
  personGap: string;
}

/** ComparedJoint is the moment asked of one joint axis along the travel. */
export interface ComparedJoint {
  joint: string;
  /** N·m, by share */
  moment: (number | null)[];
  effort: (number | null)[];
}

/** Comparison is the curves on one axis. */
export interface Comparison {
  /** of each one's own travel, the axis of Item.ByShare */
  share: number[];
  /** m, the axis of Item.ByTravel */
  travel: number[];
  items: ComparedCurve[];
  /** of each after the first against the first */
  words: ComparisonWords[];
}

/** ComparisonWords says how one differs from the first. */
export interface ComparisonWords {
  label: string;
  words: string[];
  /** N, mean force in each third beyond the first one's */
  more: [number, number, number];
}

/** Curve is the force along the travel and what goes with it, in columns. */
export interface Curve {
  /** m along the contact's path, from 0, ascending */
  travel: number[];
  /** rad or m from the measured pose */
  driver: number[];
  driverUnit: string;
  contact: Place[];
  /** unit; the ribbon's edge is Contact + Normal·force·scale */
  normal: Place[];
  hold: (number | null)[];
  lift: (number | null)[];
  lower: (number | null)[];
  loadTravel: number[];
  liftRatio: (number | null)[];
  /** kg, effective at the contact */
  mass: (number | null)[];
  /** why there is no force */
  gap: (string | null)[];
  /** lifting and lowering differ */
  rubs: boolean;
}

/** Demo is asked for to bring the demo room back or to take it away. */
export interface Demo {
  present: boolean;
}

/** Drawing is what of a machine's picture keeps its shape. Everything is given at the measured pose, and moves with its link by that link's entry in Frame.Poses. */
export interface Drawing {
  /** the first is the ground */
  links: LinkShape[];
  pins: Pin[];
  guides: Guide[];
  wheels: Wheel[];
  weights: Weight[];
  /** ropes first, as in Frame.Lines */
  lines: Line[];
  contact: Place;
  /** the contact's link */
  on: number;
  /** rad, of the plane of the picture from upright; π/2 is level, seen from above */
  lean: number;
  /** corners of all that is drawn in any frame */
  low: Place;
  high: Place;
}

/** Edit is one change of a sheet: exactly one of its fields is given. */
export interface Edit {
  value?: ValueEdit;
  point?: PointDrag;
  cam?: CamDrag;
}

/** ExplainStep is one picture with its caption. */
export interface ExplainStep {
  title: string;
  caption: string;
  /** of the curve: where the machine stands */
  position: number;
  /** it moves on to here; equal to Position if it stands still */
  until: number;
  show: Shown[];
}

/** Explanation presents one stroke, step by step. */
export interface Explanation {
  steps: ExplainStep[];
  /** ready to be copied and sent */
  message: string;
  /** with all frames */
  preview: Preview;
}

/** Families is what a machine can be built from, point by point. */
export interface Families {
  families: Family[];
}

/** Family is a kind of machine with the questions that build one. */
export interface Family {
  id: string;
  name: string;
  about: string;
  /** in the order to be tapped */
  points: PointAsk[];
  values: ValueAsk[];
  /** null if the family has no cam */
  cam: OutlineAsk | null;
}

/** Fit is how a machine suits a person, for the board. */
export interface Fit {
  exercise: string;
  /** share of the travel that the body reaches */
  reached: number;
  /** share of it within every joint's range */
  inRange: number;
  /** the greatest, lifting */
  effort: number | null;
  limiting: string;
  /** without their columns */
  muscles: MuscleRange[];
  /** why the person cannot be put on it */
  trouble: string;
}

/** Force is a force to be drawn as an arrow, N. */
export interface Force {
  kind: ForceKind;
  name: string;
  at: Place;
  vector: Place;
}

/** ForceKind tells where a force comes from. */
export type ForceKind = "contact" | "weight" | "rope" | "reaction";

/** ForceReading is one of them. */
export interface ForceReading {
  /** m along the contact's path from the start */
  travel: number;
  /** N along the path */
  force: number;
  /** N, ±; 0 if none is known */
  plus: number;
  /** it was read with */
  settings: Choice[];
  note: string;
}

/** ForceReadings are forces read off a scale at a machine, to be set beside the computed curve. */
export interface ForceReadings {
  readings: ForceReading[];
}

/** Frame is the machine at one place of its travel. */
export interface Frame {
  /** of the curve */
  position: number;
  travel: number;
  /** by link */
  poses: Pose[];
  /** by line */
  lines: LineCourse[];
  chains: Hanging[];
  contact: Place;
  /** unit, towards the end of the travel */
  tangent: Place;
  arms: Arm[];
  forces: Force[];
  /** null without a person, or where the body is not there */
  body: Body | null;
  /** what each source asks of the contact */
  shares: Share[];
  /** why the force is what it is here */
  because: string;
  /** why there is no force here; empty if there is one */
  gap: string;
}

/** Frames says which poses to draw. */
export type Frames = "none" | "one" | "all";

/** Guide is the straight guide of a slider, on the link that carries it. */
export interface Guide {
  name: string;
  from: Place;
  to: Place;
  on: number;
}

/** Hanging is a chain: from its point to its foot, and whether part of it lies on the floor. */
export interface Hanging {
  name: string;
  top: Place;
  foot: Place;
  heap: boolean;
}

/** History is the way a sheet came to be, latest first. */
export interface History {
  revisions: Revision[];
}

/** JointColumn is one joint axis along the travel, lifting. */
export interface JointColumn {
  /** the axis */
  joint: string;
  /** the joint a coach would name */
  body: string;
  /** rad */
  angle: (number | null)[];
  /** N·m, internal */
  moment: (number | null)[];
  /** N·m; null where nobody published any */
  available: (number | null)[];
  effort: (number | null)[];
  /** the strength is taken where nobody was tested: it counts nowhere */
  guess: boolean[];
  /** effort of somebody stronger within the band of the strength */
  low: (number | null)[];
  /** of somebody weaker */
  high: (number | null)[];
  source: string;
  /** how far the source was followed back */
  mark: string;
  /** not far enough to lean on */
  weak: boolean;
  /** a measurement of this person sets the level */
  rescaled: boolean;
}

/** Kind tells what a sheet describes. */
export type Kind = "machine" | "person" | "room" | "plan";

/** Line is a rope, or an element that acts along one. */
export interface Line {
  name: string;
  kind: LineKind;
}

/** LineCourse is a line where it now runs: the whole way in points, and in it the straight pieces. */
export interface LineCourse {
  course: Place[];
  straight: [Place, Place][];
  /** N, while lifting; of an element its pull */
  tension: number;
  slack: boolean;
}

/** LineKind tells what acts along a line. */
export type LineKind = "rope" | "spring" | "gas spring" | "band" | "steady force" | "damper";

/** Link is a rigid member. */
export interface Link {
  /** "ground" is the one that does not move */
  name: string;
  points: string[];
  mass: number;
  center: Place;
}

/** LinkShape is a link's simplest body: straight pieces between its joints, and from there out to whatever else acts on it. */
export interface LinkShape {
  name: string;
  places: Place[];
  pieces: [Place, Place][];
  /** a weight stack, drawn as a load */
  stack: boolean;
}

/** Load is what the machine lifts, stretches or turns. */
export interface Load {
  name: string;
  /** as in the sheet: plates, weight stack, spring, … */
  kind: string;
}

/** Look is how a machine is set and what is wanted of it. Left out, a field has its zero value. */
export interface Look {
  /** those that differ from the default */
  settings?: Choice[];
  /** along the travel, 11 to 401; 0 means 101 */
  positions?: number;
  /** "" means none */
  frames?: Frames;
  /** of the travel, 0 to 1: the pose of the one frame */
  share?: number;
  tempo?: Tempo;
  /** also take the sheet apart */
  structure?: boolean;
  /** of words */
  imperial?: boolean;
  /** leave the error band out */
  noBand?: boolean;
  /** id of a person's sheet */
  person?: string;
}

/** MachineCard is a machine in the room: its sign and what decides. */
export interface MachineCard extends SheetCard {
  notes: string;
  /** grip, pad, foot plate, … */
  contact: string;
  settings: Choice[];
  /** where it loads, in words */
  loads: string;
  /** null if the machine cannot be computed */
  sign: Sign | null;
  /** why not, in one sentence */
  trouble: string;
  /** that its station serves */
  exercises: string[];
  /** that these train */
  muscles: string[];
  /** null unless a person was named */
  fit: Fit | null;
}

/** Mark is a place on a curve. */
export interface Mark {
  share: number;
  travel: number;
  force: number;
}

/** Maximum is the load at which the greatest effort of the stroke becomes 1. A prediction is no target. */
export interface Maximum {
  /** kg; 0 where the machine has no load */
  load: number;
  low: number;
  high: number;
  /** the same as a multiple of the present force */
  factor: number;
  /** the load is not what limits */
  capped: boolean;
  /** a joint may give out sooner, at angles nobody was tested at */
  atMost: boolean;
  /** even the empty machine asks for more */
  empty: boolean;
}

/** Measured is a place with the error it may have. */
export interface Measured {
  at: Place;
  /** ± along x and y, m */
  plus: Place;
}

/** MuscleRange is how long a muscle group is along the travel, and how hard it works in its own lengthened, middle and shortened third. */
export interface MuscleRange {
  name: string;
  /** 0 shortest, 1 longest within the person's ranges */
  length: (number | null)[];
  effort: (number | null)[];
  /** of the travel spent in each third */
  share: [number, number, number];
  /** effort there; null where the travel does not come */
  mean: [(number | null), (number | null), (number | null)];
  /** it rests in part on angles nobody was tested at */
  guess: [boolean, boolean, boolean];
}

/** NamedNumber answers a ValueAsk in the unit it asked for. */
export interface NamedNumber {
  name: string;
  value: number;
  plus: number;
}

/** NamedPlace answers a PointAsk. */
export interface NamedPlace {
  name: string;
  at: Place;
  /** ±; 0 for none */
  plus: Place;
}

/** Narrowing names the measurement that would narrow the band most. */
export interface Narrowing {
  name: string;
  path: string;
  /** of the variance */
  share: number;
  /** N, half width of the band now */
  half: number;
  /** N, if it were exact */
  without: number;
}

/** NewLimit is how far a joint goes in a motion. */
export interface NewLimit {
  motion: string;
  angle: string;
}

/** NewSheet stores a text of any kind under a new id. */
export interface NewSheet {
  text: string;
  look?: Look;
}

/** NewStrength is a strength that was measured, as a sheet's list has it: a moment, or a force at a distance from the joint. Numbers are texts with their unit and ±, as they are typed. */
export interface NewStrength {
  motion: string;
  angle: string;
  moment?: string;
  force?: string;
  at?: string;
  how?: string;
}

/** OutlineAsk asks for the outline of a cam. */
export interface OutlineAsk {
  name: string;
  ask: string;
  hint: string;
  picture: string;
  /** number of points */
  least: number;
  usual: Place[];
}

/** PastStep is one change of a sheet and the state it led to. */
export interface PastStep {
  revision: number;
  /** RFC 3339, UTC */
  saved: string;
  /** as in Revision, or "gone back": the text of an earlier step was stored again */
  what: string;
  /** "horn, up: 40 → 55 mm"; empty if no value was changed */
  changes: string[];
  /** the sheet stands like this now */
  now: boolean;
}

/** PersonOnMachine is a person put through the machine's travel. Columns have one entry for each position of the curve; null where the body is not there or the strength has no figure. */
export interface PersonOnMachine {
  name: string;
  exercise: string;
  posture: string;
  words: string[];
  /** on the person's own figures */
  warnings: string[];
  /** settings that would mend what is out of reach or range */
  helps: SettingHelp[];
  /** N at the contact that this person can produce in a slow lift; null where nothing limits it and where nobody was tested */
  can: (number | null)[];
  /** N, where a joint nobody was tested at may be the limit: the most it can be; null elsewhere */
  canMost: (number | null)[];
  /** lifting: moment asked over moment available, of the hardest joint; null where a guess is the greatest */
  effort: (number | null)[];
  /** the same, lowering */
  lowering: (number | null)[];
  /** the hardest joint, lifting */
  limiter: (string | null)[];
  /** why there is nobody, or nothing known */
  gap: (string | null)[];
  /** position of the greatest effort */
  sticking: number | null;
  /** the joint there */
  limiting: string;
  joints: JointColumn[];
  muscles: MuscleRange[];
  maximum: Maximum | null;
  cautions: string[];
}

/** PersonSheet is what a person's sheet says. If it cannot be used, Problems says why and the rest is empty. */
export interface PersonSheet {
  /** after the edits */
  text: string;
  problems: SheetProblem[];
  name: string;
  /** m */
  height: number;
  /** kg */
  mass: number;
  sex: string;
  /** years */
  age: number | null;
  entries: SheetEntry[];
  avoid: string[];
  /** that a strength or a limit can be of; also if there are problems */
  motions: string[];
  /** what is unusual */
  warnings: string[];
  /** in plain words */
  understood: string[];
  /** filled in from a survey */
  assumed: string[];
  /** what would make results closer */
  missing: string[];
}

/** Phase is what the person does with the load; friction makes them differ. */
export type Phase = "holding" | "lifting" | "lowering";

/** Photo is a stored photo: upright, at most 2048 pixels a side, without its metadata. */
export interface Photo {
  /** SHA-256 of what is stored */
  id: string;
  width: number;
  height: number;
  /** image/jpeg or image/png */
  type: string;
  bytes: number;
  /** focal length over the longer side as the camera noted it, for Survey.Lens; told when the photo is stored, 0 if it noted none or the photo was cropped or zoomed */
  lens?: number;
}

/** PhotoSide is a side of a photo. */
export type PhotoSide = "left" | "right" | "top" | "bottom";

/** Pin is a revolute joint. */
export interface Pin {
  name: string;
  at: Place;
  /** link it moves with */
  on: number;
  ground: boolean;
}

/** Pixel is [right, down] in pixels of the stored photo. */
export type Pixel = [number, number];

/** Place is [x, y] in m, ground frame, unless something else is said. */
export type Place = [number, number];

/** Plate is a round plate of known diameter in, or parallel to, the plane of motion, by at least five places on its rim. */
export interface Plate {
  rim: Pixel[];
  /** m; 0.45 for competition plates */
  diameter: number;
  plus: number;
  /** m, how far the rim is in front of the plane of motion: plates stand out from the arm they hang on */
  nearer?: number;
}

/** Point is a named place at the measured pose, with settings as chosen. */
export interface Point {
  name: string;
  at: Place;
  /** ± in m along x and y; 0 where none is given */
  plus: Place;
  /** that carry it; several make it a pin */
  links: string[];
  pin: boolean;
  /** on the ground */
  fixed: boolean;
}

/** PointAsk asks where something is. */
export interface PointAsk {
  /** in the sheet */
  name: string;
  /** "Where does the arm turn?" */
  ask: string;
  hint: string;
  /** kind of part to show, such as axle, pin, horn, grip */
  picture: string;
  /** left out of the sheet if not answered */
  optional: boolean;
  /** m, in the template before anything is tapped */
  usual: Place;
}

/** PointDrag takes a point somewhere else. The written unit and ± stay. */
export interface PointDrag {
  point: string;
  to: Place;
  /** pose in which it is held; left out, the measured pose */
  driver?: number;
}

/** Pose takes places of the measured pose to where they are now: turn by Turn about the origin, then shift by (X, Y). */
export interface Pose {
  x: number;
  y: number;
  /** rad */
  turn: number;
}

/** Preview is what a machine does. If the sheet cannot be used, Problems says why and the rest is empty. */
export interface Preview {
  /** of the sheet, after the edits */
  text: string;
  problems: SheetProblem[];
  structure: Structure | null;
  name: string;
  /** every one */
  settings: Choice[];
  /** 2 if mirrored; forces are of one */
  sides: number;
  /** whose each force then is: "one arm", "one leg" or "one side"; else empty */
  side: string;
  curve: Curve | null;
  /** null without any ± */
  band: Band | null;
  /** holding, lifting, lowering */
  readings: Readings[];
  words: string[];
  /** null if no frames were asked for */
  drawing: Drawing | null;
  frames: Frame[];
  stroke: Stroke | null;
  /** why there is no stroke though a tempo was given */
  strokeGap: string;
  /** null without one */
  person: PersonOnMachine | null;
  /** why the person of the look is not on it */
  personGap: string;
  /** PersonHelps are settings that would let the person on it. */
  personHelps: SettingHelp[];
  cautions: string[];
}

/** Problem is the answer when a request fails. */
export interface Problem {
  code: Code;
  /** one sentence with a cure, for the person */
  message: string;
  problems?: SheetProblem[];
  /** in a conflict, the sheet as it now stands */
  current?: Sheet;
  /** in a conflict, the text that was not written */
  yours?: string;
}

/** Progress is told while long work goes on. */
export interface Progress {
  done: number;
  total: number;
}

/** Range is an interval. */
export interface Range {
  low: number;
  high: number;
}

/** Readings is what is read from the curve in one phase. */
export interface Readings {
  phase: Phase;
  /** where, in words */
  loads: string;
  length: number;
  /** share of the travel that has a force */
  covered: number;
  start: Mark;
  end: Mark;
  peak: Mark;
  least: Mark;
  mean: number;
  /** 1 is even */
  flatness: number;
  peakToStart: number;
  liftRatio: number;
  workUp: number;
  workDown: number;
  lost: number;
  thirds: [Third, Third, Third];
}

/** Rectangle is a known rectangle in, or parallel to, the plane of motion: its corners in order round it, the first side of length Width. */
export interface Rectangle {
  corners: [Pixel, Pixel, Pixel, Pixel];
  /** m, from the first corner to the second */
  width: number;
  height: number;
  /** m, ± of both */
  plus: number;
  /** m, how far it is in front of the plane of motion */
  nearer?: number;
}

/** Reply answers a question asked over a line: with one of both. */
export interface Reply {
  preview: Preview | null;
  problem: Problem | null;
}

/** Revision is one state a sheet has had. */
export interface Revision {
  revision: number;
  /** RFC 3339, UTC */
  saved: string;
  /** "saved", "changed", "undone", "redone", "created", "removed", "brought back" */
  what: string;
  text: string;
}

/** Room is the board of everything stored. */
export interface Room {
  /** by name */
  machines: MachineCard[];
  people: SheetCard[];
  rooms: SheetCard[];
  plans: SheetCard[];
  /** latest first; each can be brought back */
  removed: SheetCard[];
  /** a sheet of the demo room is there */
  demo: boolean;
  /** where the data lies */
  folder: string;
  /** version of the computation */
  engine: string;
}

/** Saved is the sheet after a write, and what it now does if a look was asked for. */
export interface Saved {
  sheet: Sheet;
  /** says so if somebody else's change was kept beside this one */
  merged: string;
  /** null unless asked for */
  preview: Preview | null;
}

/** ScaleLine is a known length between two places in the plane of motion. By itself it tells no perspective: the camera must have looked square at that plane. */
export interface ScaleLine {
  from: Pixel;
  to: Pixel;
  /** m */
  length: number;
  /** m, ± */
  plus: number;
  /** m, how far it is in front of the plane of motion */
  nearer?: number;
}

/** Segment is a body segment as a capsule. */
export interface Segment {
  name: string;
  from: Place;
  to: Place;
  /** m, half thickness at From, for the eye only */
  near: number;
  /** m, at To */
  far: number;
  /** belongs to the limb that works */
  works: boolean;
}

/** Session trades the token from the address the program printed for a cookie. */
export interface Session {
  token: string;
}

/** SetBackdrop puts a photo behind a machine's drawing; without a photo it takes it away. */
export interface SetBackdrop {
  /** id; empty takes it away */
  photo: string;
  survey?: Survey;
}

/** Setting is something adjustable. */
export interface Setting {
  name: string;
  notes: string;
  /** all allowed values in order, ranges written out */
  values: string[];
  default: string;
  chosen: string;
  /** the values are even steps, fit for a slider */
  ranged: boolean;
}

/** SettingHelp is a setting that would mend what is out of reach or range. */
export interface SettingHelp {
  setting: string;
  value: string;
  words: string;
}

/** Share is what one source asks of the contact by itself, frictionless. */
export interface Share {
  name: string;
  force: number;
  /** m risen or lengthened for each m of travel */
  rise: number;
}

/** Sheet is a stored sheet. */
export interface Sheet extends SheetCard {
  /** YAML, as written */
  text: string;
  /** steps that can be undone */
  undo: number;
  /** steps that can be done again */
  redo: number;
  /** photo behind the drawing; null without one */
  backdrop: Backdrop | null;
}

/** SheetCard is a stored sheet in a list. */
export interface SheetCard {
  id: string;
  kind: Kind;
  name: string;
  revision: number;
  /** RFC 3339, UTC */
  saved: string;
  /** belongs to the demo room */
  demo: boolean;
  removed: boolean;
}

/** SheetEntry is one value of a sheet that a ValueEdit can change. */
export interface SheetEntry {
  path: string;
  text: string;
  line: number;
}

/** SheetProblem is one thing in a sheet that cannot be used. */
export interface SheetProblem {
  /** from 1; 0 if the whole sheet is meant */
  line: number;
  column: number;
  /** to the value, such as links.arm.mass; may be empty */
  path: string;
  what: string;
  limit: string;
  cure: string;
  /** all of it as one sentence */
  message: string;
}

/** Shown names something a step of an explanation points at. */
export type Shown = "machine" | "axis" | "gravity" | "load arm" | "contact arm" | "rope" | "cam radius" | "travels" | "ribbon" | "curve";

/** Sign is the small ribbon that stands for a machine, and its numbers. */
export interface Sign {
  /** m, of the contact */
  path: Place[];
  /** unit, on the side of the path where a resisting force stands */
  normal: Place[];
  /** N, lifting */
  force: (number | null)[];
  /** N */
  peak: number;
  /** N */
  mean: number;
  /** m */
  travel: number;
  /** N, mean in the lengthened, middle and shortened third */
  thirds: [number, number, number];
  /** lift ratio; 0 if nothing counts as the load */
  ratio: number;
}

/** Step undoes or redoes. */
export interface Step {
  revision: number;
  look?: Look;
}

/** Stroke is one repetition at a tempo, in columns. */
export interface Stroke {
  time: number[];
  travel: number[];
  force: number[];
  /** N, at rest at the same place */
  still: number[];
  /** the load flies on by itself */
  leaves: boolean[];
  /** the rope that goes slack, or "" */
  slack: string[];
  /** row of the greatest force */
  peak: number;
  /** row of the least */
  dip: number;
}

/** Structure is what a machine sheet says, taken apart for the page. */
export interface Structure {
  name: string;
  notes: string;
  measured: string;
  /** of the sheet itself */
  cautions: string[];
  /** kind */
  contact: string;
  points: Point[];
  links: Link[];
  loads: Load[];
  settings: Setting[];
  /** every number, in the sheet's order */
  values: Value[];
  /** traced ones, whose points can be dragged */
  cams: Cam[];
  /** in plain words */
  understood: string[];
  assumed: string[];
  missing: string[];
}

/** Survey measures places on a photo. One to five lines, rectangles and plates in all give the scale; the latter two also take out perspective, and several together do so better. */
export interface Survey {
  /** of the photo, pixels */
  width: number;
  height: number;
  lines?: ScaleLine[];
  rectangles?: Rectangle[];
  plates?: Plate[];
  /** side of the photo on which the machine was nearer to the camera; a plate alone needs it, see Surveyed.Ambiguous */
  near?: PhotoSide;
  /** two places, the upper one first, on a line that hangs straight down */
  plumb?: [Pixel, Pixel];
  /** instead: two places equally high. With neither the photo counts as held level */
  level?: [Pixel, Pixel];
  /** where x and y are 0; left out, the middle of the photo */
  origin?: Pixel;
  /** the photo was taken from the person's left, so forward is to the left */
  mirror?: boolean;
  /** pixels, ± of a tap; 0 means 3 */
  tap?: number;
  /** focal length over the longer side; 0 means a phone's main lens */
  lens?: number;
  /** the photo was cropped or zoomed, so lens and middle are not known */
  cropped?: boolean;
  /** to be measured */
  points: Pixel[];
  /** taps round a cam's edge, to be traced smoothly */
  outline?: Pixel[];
}

/** Surveyed is the places measured. */
export interface Surveyed {
  places: Measured[];
  /** the cam, counter-clockwise, evened out */
  outline: Measured[];
  /** row by row: takes (right, down, 1) in pixels to w·(x, y, 1) in m */
  plane: [number, number, number, number, number, number, number, number, number];
  /** takes (x, y, 1) in m to w·(right, down, 1) in pixels */
  inverse: [number, number, number, number, number, number, number, number, number];
  /** m for each pixel in the middle of the references */
  perPixel: number;
  /** m, of the camera; null if it cannot be told */
  distance: number | null;
  /** rad, of the camera off square */
  tilt: number;
  /** two planes explain the references alike */
  ambiguous: boolean;
  /** the two between which Survey.Near then decides; empty if neither would */
  sides: PhotoSide[];
  /** of the plates as the plane explains them, to be drawn over the photo */
  rims: Pixel[][];
  /** smooth curve through Outline, to be drawn over the photo */
  edge: Pixel[];
  /** how good it is and what would make it better */
  words: string[];
}

/** Tempo is how long each part of a repetition takes, s. */
export interface Tempo {
  up: number;
  top: number;
  down: number;
  bottom: number;
}

/** Third is one third of the travel. */
export interface Third {
  /** N */
  mean: number;
  /** of the work */
  share: number;
  covered: number;
}

/** Value is one number of the sheet that can be changed. */
export interface Value {
  /** as a ValueEdit wants it */
  path: string;
  /** "horn, forward" */
  name: string;
  /** as written, unit and ± included */
  text: string;
  value: number;
  /** ±; 0 if none is given */
  plus: number;
  /** as printed: "mm", "kg", "°" */
  unit: string;
  /** Value·PerSI is the number of those units */
  perSI: number;
  /** "length", "mass", … */
  quantity: string;
  how: string;
  line: number;
  /** name of the setting that puts it there; empty if it stands in the sheet itself */
  setting: string;
}

/** ValueAsk asks for a number. */
export interface ValueAsk {
  name: string;
  ask: string;
  hint: string;
  /** "mass", "length", "angle", "ratio" */
  quantity: string;
  /** in which it is asked for */
  unit: string;
  /** in that unit */
  low: number;
  high: number;
  step: number;
  usual: number;
}

/** ValueEdit writes one value: path as in Value, text as it is to stand there. */
export interface ValueEdit {
  path: string;
  text: string;
}

/** Weight is plates, a weight stack or another mass fixed to a link. */
export interface Weight {
  name: string;
  on: number;
  at: Place;
  mass: number;
  /** m, of its picture as a disc; as stated, or for the eye only */
  radius: number;
  /** the sheet gives the diameter */
  stated: boolean;
  /** counts as the load */
  load: boolean;
  stack: boolean;
}

/** Wheel is a sheave or cam. */
export interface Wheel {
  name: string;
  on: number;
  axis: Place;
  /** m; 0 if it is no circle about its axis */
  radius: number;
  /** closed, not repeating the first */
  outline: Place[];
  cam: boolean;
}

/** Write replaces a sheet's text. */
export interface Write {
  /** it was made from */
  revision: number;
  text: string;
  /** also evaluate it */
  look?: Look;
}

/** What each route takes and gives: void for no body, Blob for a raw one. */
export interface Routes {
  /** Trade the token for a cookie. */
  "POST /api/session": { path: {  }; query: {  }; in: Session; out: void };
  /** List everything stored. */
  "GET /api/room": { path: {  }; query: { person?: string }; in: void; out: Room };
  /** Bring the demo room back, or take it away. */
  "POST /api/demo": { path: {  }; query: { person?: string }; in: Demo; out: Room };
  /** Store a new sheet of any kind. */
  "POST /api/sheets": { path: {  }; query: {  }; in: NewSheet; out: Saved };
  /** Get a sheet. */
  "GET /api/sheets/{id}": { path: { id: string }; query: {  }; in: void; out: Sheet };
  /** Replace a sheet's text. */
  "PUT /api/sheets/{id}": { path: { id: string }; query: {  }; in: Write; out: Saved };
  /** Edit single values of a sheet. */
  "PATCH /api/sheets/{id}": { path: { id: string }; query: {  }; in: Change; out: Saved };
  /** Remove a sheet; it can be brought back. */
  "DELETE /api/sheets/{id}": { path: { id: string }; query: { revision?: string; person?: string }; in: void; out: Room };
  /** Bring a removed sheet back. */
  "POST /api/sheets/{id}/recover": { path: { id: string }; query: {  }; in: void; out: Saved };
  /** Erase a removed sheet and its history for good. */
  "POST /api/sheets/{id}/forget": { path: { id: string }; query: {  }; in: void; out: Room };
  /** Undo the last change. */
  "POST /api/sheets/{id}/undo": { path: { id: string }; query: {  }; in: Step; out: Saved };
  /** Do the undone change again. */
  "POST /api/sheets/{id}/redo": { path: { id: string }; query: {  }; in: Step; out: Saved };
  /** List the latest 200 states a sheet has had. */
  "GET /api/sheets/{id}/history": { path: { id: string }; query: {  }; in: void; out: History };
  /** Get the text a sheet had. */
  "GET /api/sheets/{id}/history/{revision}": { path: { id: string; revision: string }; query: {  }; in: void; out: Blob };
  /** List what was changed in the latest 200 steps. */
  "GET /api/sheets/{id}/changes": { path: { id: string }; query: {  }; in: void; out: Changes };
  /** Lay a photo behind a machine's drawing. */
  "PUT /api/sheets/{id}/backdrop": { path: { id: string }; query: {  }; in: SetBackdrop; out: Sheet };
  /** Get the forces read off a scale at a machine. */
  "GET /api/sheets/{id}/readings": { path: { id: string }; query: {  }; in: void; out: ForceReadings };
  /** Replace the forces read off a scale at a machine. */
  "PUT /api/sheets/{id}/readings": { path: { id: string }; query: {  }; in: ForceReadings; out: ForceReadings };
  /** Get a commented example sheet. */
  "GET /api/example/{kind}": { path: { kind: string }; query: {  }; in: void; out: Blob };
  /** Evaluate a machine quickly, storing nothing: for every move of a finger. */
  "POST /api/preview": { path: {  }; query: {  }; in: Ask; out: Preview };
  /** Ask for previews one after the other over a line that stays open. Each message of a WebSocket asks one, and one answers it, in order. */
  "GET /api/line": { path: {  }; query: {  }; in: Ask; out: Reply };
  /** Evaluate a machine with its sampled error band; takes seconds. Answers by server-sent events: progress, then done or failed. */
  "POST /api/evaluate": { path: {  }; query: {  }; in: Ask; out: Preview };
  /** Compare up to six machines or settings. */
  "POST /api/compare": { path: {  }; query: {  }; in: Compare; out: Comparison };
  /** Read a person's sheet, storing nothing. */
  "POST /api/person": { path: {  }; query: {  }; in: AskPerson; out: PersonSheet };
  /** Present one stroke, step by step. */
  "POST /api/explain": { path: {  }; query: {  }; in: Ask; out: Explanation };
  /** List what a machine can be built from. */
  "GET /api/families": { path: {  }; query: {  }; in: void; out: Families };
  /** Make a sheet from tapped points and numbers, storing nothing. */
  "POST /api/families/{id}": { path: { id: string }; query: {  }; in: Build; out: Preview };
  /** Store a photo, up to 25 MB and 50 megapixels. */
  "POST /api/photos": { path: {  }; query: {  }; in: Blob; out: Photo };
  /** Get a photo. */
  "GET /api/photos/{id}": { path: { id: string }; query: {  }; in: void; out: Blob };
  /** Measure places on a photo. */
  "POST /api/survey": { path: {  }; query: {  }; in: Survey; out: Surveyed };
  /** Download a report: html, pdf, svg or png. */
  "GET /api/sheets/{id}/report/{ext}": { path: { id: string; ext: string }; query: { set?: string[]; tempo?: string; units?: string; person?: string }; in: void; out: Blob };
  /** Download every sheet and photo as one archive. */
  "GET /api/export.zip": { path: {  }; query: {  }; in: void; out: Blob };
  /** Read an archive; it is taken as a whole or not at all. */
  "POST /api/import": { path: {  }; query: { person?: string }; in: Blob; out: Room };
  /** Get this list as an OpenAPI document. */
  "GET /api/openapi.json": { path: {  }; query: {  }; in: void; out: Blob };
}
