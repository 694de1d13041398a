// Made from the Rust types by `UPDATE=1 cargo test -p app --features bindings`. Not to be changed by hand.
import type { ItemPriceGiven, Offcut, OffcutGiven, StockPriceGiven } from "./order";
import type { Picture } from "./picture";
import type { RecordGiven } from "./site";

/** Asks for the card of a piece. */
export type CardAsk = {
/** The mark of a timber, or of its pattern piece. */
mark: string,
/** Width that its picture may take, px. */
width: number, };

/** Whose words for timbers and cuts. */
export type Dialect = "uk" | "us";

/** How far a timber is. */
export type Done = "no" | "cut" | "fixed";

/** One change of the job. Each gives the whole new text, to be kept. */
export type Edit = { "do": "set",
/** Its path. */
path: string,
/** Its value, as written in a file; texts need no quotes. */
value: string, } | { "do": "remove",
/** Its path. */
path: string, } | { "do": "wall",
/** Its letter. */
wall: string,
/** What it does. */
form: WallForm, } | { "do": "pitch",
/** Its letter. */
wall: string | null,
/** Degrees. */
pitch_deg: number, } | { "do": "ridge_height",
/** Which: the `id` of a ridge of the overview. */
ridge: string,
/** Height above the datum of the plates, mm. */
height_mm: number, } | { "do": "tick" } & Tick | { "do": "carries",
/** The keys. An empty value takes its key out. */
values: Array<KeyGiven>, } | { "do": "stock_price" } & StockPriceGiven | { "do": "item_price" } & ItemPriceGiven | { "do": "price_list",
/** Its text. */
text: string, } | { "do": "yard",
/** The offcuts. */
offcuts: Array<Offcut>, } | { "do": "yard_one" } & OffcutGiven | { "do": "record" } & RecordGiven | { "do": "covering",
/** Its word. */
of: string, };

/** A key as typed. */
export type KeyGiven = {
/** Its path: `loads.wind`. */
path: string,
/** Its value, as written in a file; texts need no quotes. */
value: string, };

/** How lengths are written. */
export type LengthStyle = "as-job" | "mm" | "feet-inches";

/** Asks for the text of a new job. */
export type NewJob = {
/** A shape of `shapes`. */
shape: string,
/** What the job is called. */
title: string,
/** Sizes that differ from the shape's own. */
sizes: Array<SizeGiven>,
/** Whether its ends are gables. */
gables: boolean, };

/** A change that is shown while a finger drags, and not kept: the reply shows
 * the roof as it would be, and the job on the desk stays as it was.
 */
export type Nudge = { "do": "pitch",
/** Its letter. */
wall: string | null,
/** Degrees. */
pitch_deg: number, } | { "do": "ridge_height",
/** Which. */
ridge: string,
/** Height above the datum of the plates, mm. */
height_mm: number, };

/** How figures and words are shown; a matter of the device, not of the job. */
export type Settings = {
/** How lengths are written. */
lengths: LengthStyle,
/** Whose words. */
words: Dialect, };

/** A shape that a new job can have. */
export type ShapeChoice = {
/** Its name. */
name: string,
/** What it is, in one line. */
description: string,
/** Its sizes. */
sizes: Array<ShapeSize>,
/** Whether its ends may be gables or hips. */
gables: boolean,
/** Its outline in a square of 100 px. */
picture: Picture, };

/** A size of a shape. */
export type ShapeSize = {
/** Its name. */
name: string,
/** What it measures, a phrase. */
meaning: string,
/** What it is when nothing is said, as the user writes lengths. */
value: string, };

/** A size as typed. */
export type SizeGiven = {
/** Its name. */
name: string,
/** As typed: `8400`, `8.4 m`, `27' 6 1/2"`. */
value: string, };

/** Ticks timbers as cut, as fixed, or as neither. */
export type Tick = {
/** Their marks. */
marks: Array<string>,
/** How far they are. */
done: Done, };

/** What a wall does above its plate. */
export type WallForm = "hip" | "gable";

/** Asks for the working of a figure. */
export type WhyAsk = {
/** The key of the figure, from its `why`. */
figure: string,
/** Width that its picture may take, px. */
width: number, };
