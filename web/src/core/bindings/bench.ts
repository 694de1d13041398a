// Made from the Rust types by `UPDATE=1 cargo test -p app --features bindings`. Not to be changed by hand.
import type { Done } from "./asks";
import type { Picture } from "./picture";

/** The card of a piece. */
export type Card = {
/** The mark of the piece. */
piece: string,
/** The timber that was asked for. */
mark: string,
/** What it is: `Jack rafter`. */
kind: string,
/** Its section as shown. */
size: string,
/** The timbers to be cut from it, with how far each is. */
members: Array<[string, Done]>,
/** The piece that it is the mirror image of. */
mirror_of: string | null,
/** The figures that are read first: stock, cut length, true length. */
figures: Array<Figure>,
/** The piece as it lies on the trestles, from its right side, and its top edge. */
picture: Picture,
/** The marks in the order in which the tape is pulled. */
steps: Array<Step>,
/** Every cut with its settings. */
cuts: Array<CutRow>,
/** What to mind of this piece. */
notices: Array<string>, };

/** A cut with its settings. */
export type CutRow = {
/** Its name: `plumb cut`. */
name: string,
/** `head`, `foot` or `tail` in words. */
at: string,
/** The timber it lies against. */
against: string | null,
/** Its settings. */
ways: Ways, };

/** A figure that is shown. */
export type Figure = {
/** What it is: `True length`. */
label: string,
/** As shown, with its unit. */
value: string,
/** The key to ask why with. */
why?: string, };

/** One mark to set out. */
export type Step = {
/** The name that parts of the picture have that belong to it. */
name: string,
/** Where on the tape, from the end that was marked first, as shown. */
tape: Figure,
/** What to do there, a sentence. */
words: string,
/** The settings to mark it with; nothing when it is square across. */
ways: Ways | null, };

/** The settings of one cut, four ways. */
export type Ways = {
/** In degrees, from square across: face and edge. */
degrees: Array<Figure>,
/** On a roofing square: what to hold on blade and tongue, and which to mark. */
square: Array<Figure>,
/** On a bevel gauge: mm in 100. */
gauge: Array<Figure>,
/** On a saw: mitre and tilt. */
saw: Array<Figure>, };
