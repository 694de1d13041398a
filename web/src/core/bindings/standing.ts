// Made from the Rust types by `UPDATE=1 cargo test -p app --features bindings`. Not to be changed by hand.
import type { Done } from "./asks";
import type { Figure } from "./bench";
import type { Refusal } from "./refusal";
import type { Scene } from "./scene";

/** Something of the job that can be changed. */
export type Entry = {
/** Its path in the job file. */
path: string,
/** The group it is shown in: `Rafters`, `Eaves`. */
group: string,
/** What it is, a phrase. */
label: string,
/** Its value now, as it may be typed. */
value: string,
/** The words to choose from, if it is a choice. */
choices: Array<string>,
/** Whether the job says it; otherwise the default holds. */
said: boolean, };

/** A timber in the list. */
export type MemberRow = {
/** Its mark. */
mark: string,
/** The mark of its pattern piece. */
piece: string,
/** What it is, in words. */
kind: string,
/** Name for a screen reader: `jack rafter J3, wall A, 2318 mm, cut`. */
spoken: string,
/** How far it is. */
done: Done,
/** It was ticked, and has changed since: it may have to be cut again. */
changed: boolean, };

/** A notice. */
export type NoticeRow = {
/** `stop`, `warn` or `note`. */
level: string,
/** Short stable name. */
code: string,
/** What it says. */
text: string,
/** Where: a wall, a timber's mark, a place in words. */
place: string,
/** The timber it is about, if it is about one. */
mark: string | null, };

/** The roof at a glance. */
export type Overview = {
/** The figures that say most about the roof: pitch, rise, upstand, ridge, timber. */
figures: Array<Figure>,
/** What the carpenter should know. */
notices: Array<NoticeRow>,
/** The job says what the roof carries, so that its strength can be asked. */
loads: boolean,
/** The walls, in lettering order. */
walls: Array<WallRow>,
/** The ridges. */
ridges: Array<RidgeRow>,
/** Every timber, in the order of their marks. */
members: Array<MemberRow>,
/** Every pattern piece, in the order in which the bench takes them. */
pieces: Array<PieceRow>,
/** What can be changed of timbers, eaves and verges, by group. */
entries: Array<Entry>,
/** How much is done. */
tally: Tally,
/** What the 3-D view needs besides its buffers. */
scene: Scene, };

/** A pattern piece in the list. */
export type PieceRow = {
/** Its mark. */
mark: string,
/** What it is, in words. */
kind: string,
/** How many are to be cut. */
count: number,
/** How many of them are cut. */
cut: number,
/** How many of them are fixed. */
fixed: number,
/** Its section as shown. */
size: string,
/** Long point to long point, as shown. */
length: string,
/** The piece that it is the mirror image of. */
mirror_of: string | null,
/** Some timber of it was ticked and has changed since. */
changed: boolean, };

/** A ridge whose height can be set. */
export type RidgeRow = {
/** Which; stays the same while the roof keeps its form. */
id: string,
/** From, to, mm. */
line: [[number, number, number], [number, number, number]],
/** Height above the datum of the plates, mm. */
height_mm: number,
/** As shown. */
height: string, };

/** How the job on the desk stands after a call. */
export type Standing = {
/** The whole text of the job. What is kept, exported, sent and merged. */
text: string,
/** What was done, a phrase for undo and redo: `Pitch of wall B 45°`. Empty when nothing changed. */
said: string,
/** What the job is called. */
title: string,
/** The roof, unless it can't be built as asked. */
overview: Overview | null,
/** Why there is no roof. */
refusal: Refusal | null, };

/** How much is done. */
export type Tally = {
/** Timbers in all. */
timbers: number,
/** Of these cut, fixed ones among them. */
cut: number,
/** Of these fixed. */
fixed: number,
/** Ticked, and changed since. */
changed: number, };

/** A wall. */
export type WallRow = {
/** Its letter. */
wall: string,
/** From, to in plan, mm. */
line: [[number, number], [number, number]],
/** Its length as shown. */
length: string,
/** Whether it is carried up as a gable. */
gable: boolean,
/** Its pitch, degrees; nothing for gables. */
pitch_deg: number | null,
/** Its pitch as shown, or the word for a gable. */
form: string, };
