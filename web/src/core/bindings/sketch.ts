// Made from the Rust types by `UPDATE=1 cargo test -p app --features bindings`. Not to be changed by hand.
import type { Figure } from "./bench";
import type { Picture } from "./picture";
import type { NoticeRow } from "./standing";

/** A corner. */
export type Corner = {
/** Its name: `corner 2`. */
name: string,
/** Where, px. */
at: [number, number], };

/** A diagonal. */
export type Diagonal = {
/** From this corner, from 0. */
from: number,
/** To this corner. */
to: number,
/** Length as typed, empty until then. */
tape: string, };

/** A wall or a diagonal. */
export type ReadingLine = {
/** Its name in the picture. */
name: string,
/** What it is, for a list: `Wall A, corner 1 to 2`. */
label: string,
/** From, to, px. */
line: [[number, number], [number, number]],
/** Its length as shown; with a mark when it is drawn and not measured. */
length: string,
/** The tape has been read. */
measured: boolean,
/** What is wrong with what was typed. */
fault: string | null,
/** By how much the plan reads more or less than the tape, as shown. */
moved: string | null, };

/** What was drawn and measured so far. The device keeps it as it is. */
export type Sketch = {
/** What the job will be called. */
title: string,
/** Where corner 1 lies on the ground of the picture, mm east and north. */
start: [number, number] | null,
/** The walls in the order in which they were drawn; anticlockwise seen from above once they are closed. */
walls: Array<SketchWall>,
/** Diagonals from corner to corner. */
diagonals: Array<Diagonal>,
/** The last wall comes back to the first corner. */
closed: boolean,
/** The pitch of the roof, as typed. */
pitch: string,
/** What the tape may be out by, mm, if that is not the usual 5. */
tolerance_mm: number | null, };

/** Asks how a sketch stands, and may take it one step further. */
export type SketchAsk = {
/** The sketch. */
sketch: Sketch,
/** Width that its picture may take, px. */
width: number,
/** Height that its picture may take, px. */
height: number,
/** What is done to it first, if anything. */
step: SketchStep | null, };

/** A kind of part of a sketch. */
export type SketchPart = "corner" | "wall" | "diagonal";

/** One step of drawing. */
export type SketchStep = { "do": "touch",
/** Where, px of the picture. */
at: [number, number],
/** Which directions a new wall may have. */
snap: Snap, } | { "do": "drag",
/** Where to, px of the picture. */
at: [number, number],
/** Which directions the wall may have. */
snap: Snap, } | { "do": "ahead",
/** Turn from the wall before, degrees: 0 straight on, 90 to the left, -90 to the right. */
turn_deg: number,
/** Its length as typed. */
tape: string, } | { "do": "close" } | { "do": "back" } | { "do": "diagonal",
/** From this corner, from 0. */
from: number,
/** To this corner. */
to: number, } | { "do": "drop_diagonal",
/** Its number, from 0. */
number: number, };

/** How a sketch stands. */
export type SketchView = {
/** The sketch after the step, set right where it could be: to be kept in place of the one that was sent. */
sketch: Sketch,
/** The plan. Parts that can be touched are named as in `touched`. */
picture: Picture,
/** What the touch met, or the wall or diagonal that the step put in. */
touched: Touched | null,
/** The corners. */
corners: Array<Corner>,
/** The walls. */
walls: Array<ReadingLine>,
/** The diagonals. */
diagonals: Array<ReadingLine>,
/** Closing error, diagonals, size of the plan: as far as they can be told. */
figures: Array<Figure>,
/** How well the plan closes, a sentence; empty while that can't be told. */
closing: string,
/** What is wrong, and which reading it is likely to be. */
notices: Array<NoticeRow>,
/** What to measure or draw next, a sentence. */
next: string,
/** The wall or diagonal that `next` is about. */
next_part: Touched | null,
/** The corners of a diagonal that `next` asks for and that is not in the sketch yet. */
next_diagonal: [number, number] | null,
/** The pitch can't be read: why. */
pitch_fault: string | null,
/** Lengths are typed in feet and inches. */
feet: boolean,
/** The job file, once the plan is whole. */
text: string | null, };

/** One wall of a sketch. */
export type SketchWall = {
/** Direction, degrees anticlockwise from the right of the picture. */
heading_deg: number,
/** Its direction is known, typed or from a job, and not only drawn by eye. Square to wall A or at 45° to it needs
 * no saying.
 */
known: boolean,
/** Length as drawn, mm; stands in until the tape is read. */
drawn_mm: number,
/** Length as typed, empty until then. A bare number is mm. */
tape: string,
/** Inside angle at the corner where it starts, degrees as read with a bevel; empty when it was not. */
turn: string, };

/** Which directions a wall that is drawn may have. */
export type Snap = "square" | "half" | "free";

/** A part of the sketch. */
export type Touched = {
/** Which kind. */
part: SketchPart,
/** Its number of this kind, from 0. */
number: number,
/** Its name in the picture: `wall A`, `corner 2`, `diagonal 0`. */
name: string, };
