// Made from the Rust types by `UPDATE=1 cargo test -p app --features bindings`. Not to be changed by hand.

/** Which point of a text its position is. */
export type Anchor = "start" | "middle" | "end";

/** What a part is, never how it looks: the theme says that. */
export type Ink = "wood" | "sawn" | "edge" | "hidden" | "centre" | "dimension" | "chosen" | "faint" | "ground" | "wrong";

/** One thing in a picture. */
export type Part = {
/** What it is drawn with. */
ink: Ink,
/** Its name, if it can be pointed at: a wall's letter, a timber's mark, a step's number. */
name?: string,
/** What it is. */
shape: Shape, };

/** A picture, ready to be drawn. */
export type Picture = {
/** Width, px. */
width: number,
/** Height, px. */
height: number,
/** What it shows, in words, for those who can't see it. */
spoken: string,
/** What is drawn, in this order. */
parts: Array<Part>, };

/** What is drawn. */
export type Shape = { "is": "line",
/** Two points or more. */
points: Array<[number, number]>, } | { "is": "area",
/** Three points or more. */
points: Array<[number, number]>, } | { "is": "dot",
/** Its middle. */
at: [number, number],
/** Its radius, px. */
radius: number, } | { "is": "arc",
/** Its middle. */
at: [number, number],
/** Its radius, px. */
radius: number,
/** Where it starts, degrees clockwise from the right. */
from_deg: number,
/** Where it ends, degrees clockwise from the right; greater than `from_deg`. */
to_deg: number, } | { "is": "text",
/** The point that `anchor` names, on the base line. */
at: [number, number],
/** Height of the type, px. */
size: number,
/** Which point of the text is at `at`. */
anchor: Anchor,
/** Degrees clockwise that the base line is turned about `at`. */
turn_deg: number,
/** The text. */
text: string, };
