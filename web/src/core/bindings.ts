// Made from the Rust types by `UPDATE=1 cargo test -p app --features bindings`. Not to be changed by hand.

/**
 * Which point of a text its position is.
 */
export type Anchor = "start" | "middle" | "end";

/**
 * The card of a piece.
 */
export type Card = { 
/**
 * The mark of the piece.
 */
piece: string, 
/**
 * The timber that was asked for.
 */
mark: string, 
/**
 * What it is: `Jack rafter`.
 */
kind: string, 
/**
 * Its section as shown.
 */
size: string, 
/**
 * The timbers to be cut from it, with how far each is.
 */
members: Array<[string, Done]>, 
/**
 * The piece that it is the mirror image of.
 */
mirror_of: string | null, 
/**
 * The figures that are read first: stock, cut length, true length.
 */
figures: Array<Figure>, 
/**
 * The piece as it lies on the trestles, from its right side, and its top edge.
 */
picture: Picture, 
/**
 * The marks in the order in which the tape is pulled.
 */
steps: Array<Step>, 
/**
 * Every cut with its settings.
 */
cuts: Array<CutRow>, 
/**
 * What to mind of this piece.
 */
notices: Array<string>, };

/**
 * Asks for the card of a piece.
 */
export type CardAsk = { 
/**
 * The mark of a timber, or of its pattern piece.
 */
mark: string, 
/**
 * Width that its picture may take, px.
 */
width: number, };

/**
 * A corner.
 */
export type Corner = { 
/**
 * Its name: `corner 2`.
 */
name: string, 
/**
 * Where, px.
 */
at: [number, number], };

/**
 * A cut with its settings.
 */
export type CutRow = { 
/**
 * Its name: `plumb cut`.
 */
name: string, 
/**
 * `head`, `foot` or `tail` in words.
 */
at: string, 
/**
 * The timber it lies against.
 */
against: string | null, 
/**
 * Its settings.
 */
ways: Ways, };

/**
 * A diagonal.
 */
export type Diagonal = { 
/**
 * From this corner, from 0.
 */
from: number, 
/**
 * To this corner.
 */
to: number, 
/**
 * Length as typed, empty until then.
 */
tape: string, };

/**
 * Whose words for timbers and cuts.
 */
export type Dialect = "uk" | "us";

/**
 * How far a timber is.
 */
export type Done = "no" | "cut" | "fixed";

/**
 * One change of the job. Each gives the whole new text, to be kept.
 */
export type Edit = { "do": "set", 
/**
 * Its path.
 */
path: string, 
/**
 * Its value, as written in a file; texts need no quotes.
 */
value: string, } | { "do": "remove", 
/**
 * Its path.
 */
path: string, } | { "do": "wall", 
/**
 * Its letter.
 */
wall: string, 
/**
 * What it does.
 */
form: WallForm, } | { "do": "pitch", 
/**
 * Its letter.
 */
wall: string | null, 
/**
 * Degrees.
 */
pitch_deg: number, } | { "do": "ridge_height", 
/**
 * Which: the `id` of a ridge of the overview.
 */
ridge: string, 
/**
 * Height above the datum of the plates, mm.
 */
height_mm: number, } | { "do": "tick" } & Tick;

/**
 * Something of the job that can be changed.
 */
export type Entry = { 
/**
 * Its path in the job file.
 */
path: string, 
/**
 * The group it is shown in: `Rafters`, `Eaves`.
 */
group: string, 
/**
 * What it is, a phrase.
 */
label: string, 
/**
 * Its value now, as it may be typed.
 */
value: string, 
/**
 * The words to choose from, if it is a choice.
 */
choices: Array<string>, 
/**
 * Whether the job says it; otherwise the default holds.
 */
said: boolean, };

/**
 * One fault in a job file.
 */
export type FaultLine = { 
/**
 * Line of the file, from 1.
 */
line: number, 
/**
 * Column of the line, from 1.
 */
column: number, 
/**
 * What is wrong.
 */
what: string, 
/**
 * Why it matters.
 */
why: string, 
/**
 * What to do.
 */
remedy: string, };

/**
 * A figure that is shown.
 */
export type Figure = { 
/**
 * What it is: `True length`.
 */
label: string, 
/**
 * As shown, with its unit.
 */
value: string, 
/**
 * The key to ask why with.
 */
why?: string, };

/**
 * What a part is, never how it looks: the theme says that.
 */
export type Ink = "wood" | "sawn" | "edge" | "hidden" | "centre" | "dimension" | "chosen" | "faint" | "ground" | "wrong";

/**
 * How lengths are written.
 */
export type LengthStyle = "as-job" | "mm" | "feet-inches";

/**
 * One line of a working.
 */
export type Line = { 
/**
 * What this line finds, in words.
 */
words: string, 
/**
 * The sum: `2600 ÷ cos 40°`. Empty for a line that only takes a figure over.
 */
sum: string, 
/**
 * What it comes to, with its unit.
 */
result: string, 
/**
 * The key of this figure, if it can be asked about in turn.
 */
why?: string, };

/**
 * A timber in the list.
 */
export type MemberRow = { 
/**
 * Its mark.
 */
mark: string, 
/**
 * The mark of its pattern piece.
 */
piece: string, 
/**
 * What it is, in words.
 */
kind: string, 
/**
 * Name for a screen reader: `jack rafter J3, wall A, 2318 mm, cut`.
 */
spoken: string, 
/**
 * How far it is.
 */
done: Done, 
/**
 * It was ticked, and has changed since: it may have to be cut again.
 */
changed: boolean, };

/**
 * Asks for the text of a new job.
 */
export type NewJob = { 
/**
 * A shape of `shapes`.
 */
shape: string, 
/**
 * What the job is called.
 */
title: string, 
/**
 * Sizes that differ from the shape's own.
 */
sizes: Array<SizeGiven>, 
/**
 * Whether its ends are gables.
 */
gables: boolean, };

/**
 * A notice.
 */
export type NoticeRow = { 
/**
 * `stop`, `warn` or `note`.
 */
level: string, 
/**
 * Short stable name.
 */
code: string, 
/**
 * What it says.
 */
text: string, 
/**
 * Where: a wall, a timber's mark, a place in words.
 */
place: string, 
/**
 * The timber it is about, if it is about one.
 */
mark: string | null, };

/**
 * A change that is shown while a finger drags, and not kept: the reply shows
 * the roof as it would be, and the job on the desk stays as it was.
 */
export type Nudge = { "do": "pitch", 
/**
 * Its letter.
 */
wall: string | null, 
/**
 * Degrees.
 */
pitch_deg: number, } | { "do": "ridge_height", 
/**
 * Which.
 */
ridge: string, 
/**
 * Height above the datum of the plates, mm.
 */
height_mm: number, };

/**
 * The text of a job.
 */
export type Opened = { 
/**
 * As in the job file.
 */
text: string, };

/**
 * The roof at a glance.
 */
export type Overview = { 
/**
 * The figures that say most about the roof: pitch, rise, upstand, ridge, timber.
 */
figures: Array<Figure>, 
/**
 * What the carpenter should know.
 */
notices: Array<NoticeRow>, 
/**
 * The walls, in lettering order.
 */
walls: Array<WallRow>, 
/**
 * The ridges.
 */
ridges: Array<RidgeRow>, 
/**
 * Every timber, in the order of their marks.
 */
members: Array<MemberRow>, 
/**
 * Every pattern piece, in the order in which the bench takes them.
 */
pieces: Array<PieceRow>, 
/**
 * What can be changed of timbers, eaves and verges, by group.
 */
entries: Array<Entry>, 
/**
 * How much is done.
 */
tally: Tally, 
/**
 * What the 3-D view needs besides its buffers.
 */
scene: Scene, };

/**
 * One thing in a picture.
 */
export type Part = { 
/**
 * What it is drawn with.
 */
ink: Ink, 
/**
 * Its name, if it can be pointed at: a wall's letter, a timber's mark, a step's number.
 */
name?: string, 
/**
 * What it is.
 */
shape: Shape, };

/**
 * A picture, ready to be drawn.
 */
export type Picture = { 
/**
 * Width, px.
 */
width: number, 
/**
 * Height, px.
 */
height: number, 
/**
 * What it shows, in words, for those who can't see it.
 */
spoken: string, 
/**
 * What is drawn, in this order.
 */
parts: Array<Part>, };

/**
 * A pattern piece in the list.
 */
export type PieceRow = { 
/**
 * Its mark.
 */
mark: string, 
/**
 * What it is, in words.
 */
kind: string, 
/**
 * How many are to be cut.
 */
count: number, 
/**
 * How many of them are cut.
 */
cut: number, 
/**
 * How many of them are fixed.
 */
fixed: number, 
/**
 * Its section as shown.
 */
size: string, 
/**
 * Long point to long point, as shown.
 */
length: string, 
/**
 * The piece that it is the mirror image of.
 */
mirror_of: string | null, 
/**
 * Some timber of it was ticked and has changed since.
 */
changed: boolean, };

/**
 * A wall or a diagonal.
 */
export type ReadingLine = { 
/**
 * Its name in the picture.
 */
name: string, 
/**
 * What it is, for a list: `Wall A, corner 1 to 2`.
 */
label: string, 
/**
 * From, to, px.
 */
line: [[number, number], [number, number]], 
/**
 * Its length as shown; with a mark when it is drawn and not measured.
 */
length: string, 
/**
 * The tape has been read.
 */
measured: boolean, 
/**
 * What is wrong with what was typed.
 */
fault: string | null, 
/**
 * By how much the plan reads more or less than the tape, as shown.
 */
moved: string | null, };

/**
 * Why a call was not done: what is wrong and what to do about it. The job on
 * the desk is as it was before.
 */
export type Refusal = { 
/**
 * Short name of the rule that is broken, for other programs.
 */
code: string, 
/**
 * What is wrong, a sentence.
 */
what: string, 
/**
 * What to do, a sentence.
 */
remedy: string, 
/**
 * The faults of a job file, if that is what is wrong.
 */
faults: Array<FaultLine>, };

/**
 * A ridge whose height can be set.
 */
export type RidgeRow = { 
/**
 * Which; stays the same while the roof keeps its form.
 */
id: string, 
/**
 * From, to, mm.
 */
line: [[number, number, number], [number, number, number]], 
/**
 * Height above the datum of the plates, mm.
 */
height_mm: number, 
/**
 * As shown.
 */
height: string, };

/**
 * Points of a buffer: three numbers each, one after the other.
 */
export type Run = { 
/**
 * The first point.
 */
first: number, 
/**
 * How many.
 */
count: number, };

/**
 * What the 3-D view draws, in mm, x east, y north, z up.
 */
export type Scene = { 
/**
 * The least of all coordinates, mm.
 */
low: [number, number, number], 
/**
 * The greatest of all coordinates, mm.
 */
high: [number, number, number], 
/**
 * The timbers, in the order of the overview's members.
 */
members: Array<SceneMember>, 
/**
 * The slopes.
 */
slopes: Array<SceneSlope>, };

/**
 * A timber in the view.
 */
export type SceneMember = { 
/**
 * Its mark.
 */
mark: string, 
/**
 * What it is shown or hidden with: `rafters`, `ridges`, `plates`, `inside`, `edges`.
 */
layer: string, 
/**
 * Its triangles, in the buffer of timbers.
 */
triangles: Run, 
/**
 * Its arrises, pairs of points in the buffer of arrises.
 */
arrises: Run, 
/**
 * Where its mark is written, mm.
 */
label: [number, number, number], 
/**
 * Timbers that touch it.
 */
neighbours: Array<string>, };

/**
 * A slope in the view.
 */
export type SceneSlope = { 
/**
 * The wall that a touch of the slope means.
 */
wall: string, 
/**
 * All walls in one line that share the slope, that one among them.
 */
walls: Array<string>, 
/**
 * Its triangles, in the buffer of slopes.
 */
triangles: Run, 
/**
 * Middle of the slope, where a finger takes hold of it, mm.
 */
handle: [number, number, number], 
/**
 * Pitch, degrees.
 */
pitch_deg: number, };

/**
 * How figures and words are shown; a matter of the device, not of the job.
 */
export type Settings = { 
/**
 * How lengths are written.
 */
lengths: LengthStyle, 
/**
 * Whose words.
 */
words: Dialect, };

/**
 * What is drawn.
 */
export type Shape = { "is": "line", 
/**
 * Two points or more.
 */
points: Array<[number, number]>, } | { "is": "area", 
/**
 * Three points or more.
 */
points: Array<[number, number]>, } | { "is": "dot", 
/**
 * Its middle.
 */
at: [number, number], 
/**
 * Its radius, px.
 */
radius: number, } | { "is": "arc", 
/**
 * Its middle.
 */
at: [number, number], 
/**
 * Its radius, px.
 */
radius: number, 
/**
 * Where it starts, degrees clockwise from the right.
 */
from_deg: number, 
/**
 * Where it ends, degrees clockwise from the right; greater than `from_deg`.
 */
to_deg: number, } | { "is": "text", 
/**
 * The point that `anchor` names, on the base line.
 */
at: [number, number], 
/**
 * Height of the type, px.
 */
size: number, 
/**
 * Which point of the text is at `at`.
 */
anchor: Anchor, 
/**
 * Degrees clockwise that the base line is turned about `at`.
 */
turn_deg: number, 
/**
 * The text.
 */
text: string, };

/**
 * A shape that a new job can have.
 */
export type ShapeChoice = { 
/**
 * Its name.
 */
name: string, 
/**
 * What it is, in one line.
 */
description: string, 
/**
 * Its sizes.
 */
sizes: Array<ShapeSize>, 
/**
 * Whether its ends may be gables or hips.
 */
gables: boolean, 
/**
 * Its outline in a square of 100 px.
 */
picture: Picture, };

/**
 * A size of a shape.
 */
export type ShapeSize = { 
/**
 * Its name.
 */
name: string, 
/**
 * What it measures, a phrase.
 */
meaning: string, 
/**
 * What it is when nothing is said, as the user writes lengths.
 */
value: string, };

/**
 * A size as typed.
 */
export type SizeGiven = { 
/**
 * Its name.
 */
name: string, 
/**
 * As typed: `8400`, `8.4 m`, `27' 6 1/2"`.
 */
value: string, };

/**
 * What was drawn and measured so far. The device keeps it as it is.
 */
export type Sketch = { 
/**
 * What the job will be called.
 */
title: string, 
/**
 * Where corner 1 lies on the ground of the picture, mm east and north.
 */
start: [number, number] | null, 
/**
 * The walls in the order in which they were drawn; anticlockwise seen from above once they are closed.
 */
walls: Array<SketchWall>, 
/**
 * Diagonals from corner to corner.
 */
diagonals: Array<Diagonal>, 
/**
 * The last wall comes back to the first corner.
 */
closed: boolean, 
/**
 * The pitch of the roof, as typed.
 */
pitch: string, 
/**
 * What the tape may be out by, mm, if that is not the usual 5.
 */
tolerance_mm: number | null, };

/**
 * Asks how a sketch stands, and may take it one step further.
 */
export type SketchAsk = { 
/**
 * The sketch.
 */
sketch: Sketch, 
/**
 * Width that its picture may take, px.
 */
width: number, 
/**
 * Height that its picture may take, px.
 */
height: number, 
/**
 * What is done to it first, if anything.
 */
step: SketchStep | null, };

/**
 * A kind of part of a sketch.
 */
export type SketchPart = "corner" | "wall" | "diagonal";

/**
 * One step of drawing.
 */
export type SketchStep = { "do": "touch", 
/**
 * Where, px of the picture.
 */
at: [number, number], 
/**
 * Which directions a new wall may have.
 */
snap: Snap, } | { "do": "drag", 
/**
 * Where to, px of the picture.
 */
at: [number, number], 
/**
 * Which directions the wall may have.
 */
snap: Snap, } | { "do": "ahead", 
/**
 * Turn from the wall before, degrees: 0 straight on, 90 to the left, -90 to the right.
 */
turn_deg: number, 
/**
 * Its length as typed.
 */
tape: string, } | { "do": "close" } | { "do": "back" } | { "do": "diagonal", 
/**
 * From this corner, from 0.
 */
from: number, 
/**
 * To this corner.
 */
to: number, } | { "do": "drop_diagonal", 
/**
 * Its number, from 0.
 */
number: number, };

/**
 * How a sketch stands.
 */
export type SketchView = { 
/**
 * The sketch after the step, set right where it could be: to be kept in place of the one that was sent.
 */
sketch: Sketch, 
/**
 * The plan. Parts that can be touched are named as in `touched`.
 */
picture: Picture, 
/**
 * What the touch met, or the wall or diagonal that the step put in.
 */
touched: Touched | null, 
/**
 * The corners.
 */
corners: Array<Corner>, 
/**
 * The walls.
 */
walls: Array<ReadingLine>, 
/**
 * The diagonals.
 */
diagonals: Array<ReadingLine>, 
/**
 * Closing error, diagonals, size of the plan: as far as they can be told.
 */
figures: Array<Figure>, 
/**
 * How well the plan closes, a sentence; empty while that can't be told.
 */
closing: string, 
/**
 * What is wrong, and which reading it is likely to be.
 */
notices: Array<NoticeRow>, 
/**
 * What to measure or draw next, a sentence.
 */
next: string, 
/**
 * The wall or diagonal that `next` is about.
 */
next_part: Touched | null, 
/**
 * The corners of a diagonal that `next` asks for and that is not in the sketch yet.
 */
next_diagonal: [number, number] | null, 
/**
 * The pitch can't be read: why.
 */
pitch_fault: string | null, 
/**
 * Lengths are typed in feet and inches.
 */
feet: boolean, 
/**
 * The job file, once the plan is whole.
 */
text: string | null, };

/**
 * One wall of a sketch.
 */
export type SketchWall = { 
/**
 * Direction, degrees anticlockwise from the right of the picture.
 */
heading_deg: number, 
/**
 * Its direction is known, typed or from a job, and not only drawn by eye. Square to wall A or at 45° to it needs
 * no saying.
 */
known: boolean, 
/**
 * Length as drawn, mm; stands in until the tape is read.
 */
drawn_mm: number, 
/**
 * Length as typed, empty until then. A bare number is mm.
 */
tape: string, 
/**
 * Inside angle at the corner where it starts, degrees as read with a bevel; empty when it was not.
 */
turn: string, };

/**
 * Which directions a wall that is drawn may have.
 */
export type Snap = "square" | "half" | "free";

/**
 * How the job on the desk stands after a call.
 */
export type Standing = { 
/**
 * The whole text of the job. What is kept, exported, sent and merged.
 */
text: string, 
/**
 * What was done, a phrase for undo and redo: `Pitch of wall B 45°`. Empty when nothing changed.
 */
said: string, 
/**
 * What the job is called.
 */
title: string, 
/**
 * The roof, unless it can't be built as asked.
 */
overview: Overview | null, 
/**
 * Why there is no roof.
 */
refusal: Refusal | null, };

/**
 * One mark to set out.
 */
export type Step = { 
/**
 * The name that parts of the picture have that belong to it.
 */
name: string, 
/**
 * Where on the tape, from the end that was marked first, as shown.
 */
tape: Figure, 
/**
 * What to do there, a sentence.
 */
words: string, 
/**
 * The settings to mark it with; nothing when it is square across.
 */
ways: Ways | null, };

/**
 * How much is done.
 */
export type Tally = { 
/**
 * Timbers in all.
 */
timbers: number, 
/**
 * Of these cut, fixed ones among them.
 */
cut: number, 
/**
 * Of these fixed.
 */
fixed: number, 
/**
 * Ticked, and changed since.
 */
changed: number, };

/**
 * Ticks timbers as cut, as fixed, or as neither.
 */
export type Tick = { 
/**
 * Their marks.
 */
marks: Array<string>, 
/**
 * How far they are.
 */
done: Done, };

/**
 * A part of the sketch.
 */
export type Touched = { 
/**
 * Which kind.
 */
part: SketchPart, 
/**
 * Its number of this kind, from 0.
 */
number: number, 
/**
 * Its name in the picture: `wall A`, `corner 2`, `diagonal 0`.
 */
name: string, };

/**
 * What a wall does above its plate.
 */
export type WallForm = "hip" | "gable";

/**
 * A wall.
 */
export type WallRow = { 
/**
 * Its letter.
 */
wall: string, 
/**
 * From, to in plan, mm.
 */
line: [[number, number], [number, number]], 
/**
 * Its length as shown.
 */
length: string, 
/**
 * Whether it is carried up as a gable.
 */
gable: boolean, 
/**
 * Its pitch, degrees; nothing for gables.
 */
pitch_deg: number | null, 
/**
 * Its pitch as shown, or the word for a gable.
 */
form: string, };

/**
 * The settings of one cut, four ways.
 */
export type Ways = { 
/**
 * In degrees, from square across: face and edge.
 */
degrees: Array<Figure>, 
/**
 * On a roofing square: what to hold on blade and tongue, and which to mark.
 */
square: Array<Figure>, 
/**
 * On a bevel gauge: mm in 100.
 */
gauge: Array<Figure>, 
/**
 * On a saw: mitre and tilt.
 */
saw: Array<Figure>, };

/**
 * Asks for the working of a figure.
 */
export type WhyAsk = { 
/**
 * The key of the figure, from its `why`.
 */
figure: string, 
/**
 * Width that its picture may take, px.
 */
width: number, };

/**
 * The working of one figure.
 */
export type Working = { 
/**
 * What is asked, a phrase: `True length of jack rafter J3`.
 */
title: string, 
/**
 * The figure as the card shows it.
 */
value: string, 
/**
 * The idea in a sentence or two, before any sum.
 */
idea: string, 
/**
 * The drawing that goes with it.
 */
picture: Picture, 
/**
 * The working, in order.
 */
lines: Array<Line>, 
/**
 * How to try it with square, tape or string, where that can be done.
 */
by_hand?: string, 
/**
 * Where the rule comes from: a source, or `common practice`, or first principles.
 */
rule: string, };

/** Every call that the core answers: what it takes and gives. */
export interface Calls {
  /** Opens a job in place of the one on the desk. */
  open: [Opened, Standing];
  /** Changes the job. The text of the reply is to be kept. */
  edit: [Edit, Standing];
  /** Shows the roof as it would be, while a finger drags. The job stays as it was. */
  nudge: [Nudge, Standing];
  /** Sets how figures and words are shown, and shows the open job again. */
  settle: [Settings, Standing | null];
  /** The card of a piece. */
  card: [CardAsk, Card];
  /** The working of a figure. */
  why: [WhyAsk, Working];
  /** The shapes that a new job can have. */
  shapes: [null, Array<ShapeChoice>];
  /** The text of a new job. */
  new_job: [NewJob, string];
  /** How a plan stands that is being measured. */
  sketch: [SketchAsk, SketchView];
  /** The open job's plan as a sketch, to measure it anew. */
  sketch_of_job: [null, Sketch];
  /** The text of the open job with the plan of a sketch in place of its own. */
  sketch_into_job: [Sketch, string];
}
