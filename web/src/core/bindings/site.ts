// Made from the Rust types by `UPDATE=1 cargo test -p app --features bindings`. Not to be changed by hand.
import type { Picture } from "./picture";

/** Writes what people on site say in place of a statement, or answers a question. An empty text takes it out. */
export type RecordGiven = {
/** The name of the statement. */
name: string,
/** The text. */
text: string, };

/** The access. */
export type SiteAccess = {
/** What the roof is put up from, and who says so. */
kind: string,
/** Figures of the whole. */
figures: Array<SiteFigure>,
/** Wall by wall. */
walls: Array<SiteWall>,
/** One bay with people and a stack on it; nothing for a roof without rafters. */
bay: SiteBay | null,
/** The ladder. */
ladder: Array<SiteFigure>,
/** What is known of the site. */
fields: Array<SiteField>,
/** What is said, by subject. */
sections: Array<SiteSection>,
/** Who decides. */
cautions: Array<string>, };

/** Asks for something with a picture in it. */
export type SiteAsk = {
/** Width that the picture may take, px. */
width: number, };

/** A prop, a brace, or bracing that stays. */
export type SiteBar = {
/** Its name, `P1`. */
name: string,
/** What it is and where it stands. */
what: string,
/** Its figures. */
figures: Array<SiteFigure>,
/** What to mind; may be empty. */
note: string, };

/** The check of a bay. */
export type SiteBay = {
/** How it came out. */
verdict: SiteVerdict,
/** The same in words. */
word: string,
/** What was put on it. */
what: string,
/** The sum. */
figures: Array<SiteFigure>, };

/** A key of the job that is typed in. */
export type SiteField = {
/** Its path in the job file. */
path: string,
/** What it is, with its unit. */
label: string,
/** Where its value is from while the job does not say it; may be empty. */
hint: string,
/** What is in force; empty when nothing is. */
value: string,
/** The job says it. */
said: boolean,
/** How it is typed. */
form: SiteForm,
/** What can be chosen: the word of the job file, and what is shown for it. */
choices: Array<[string, string]>, };

/** A figure with what it is. */
export type SiteFigure = {
/** What it is. */
label: string,
/** The figure with its unit. */
value: string, };

/** How a field is typed. */
export type SiteForm = "choice" | "date" | "number" | "text";

/** A course that the hire may take. */
export type SiteHire = {
/** Which. */
name: string,
/** Weeks that are paid for. */
weeks: string,
/** What it costs, or that there is no price. */
cost: string, };

/** What is checked before going on. */
export type SiteHold = {
/** Its number. */
number: number,
/** What to check. */
what: string,
/** Where. */
at: string,
/** What it must be, where it is a figure. */
figure: string | null,
/** By how much it may be out. */
tolerance: string,
/** How the tolerance was come by. */
basis: string, };

/** Timbers of one kind as they are lifted, by the heaviest of them. */
export type SiteLift = {
/** What they are. */
kind: string,
/** How many. */
pieces: number,
/** Weight of the heaviest, damp. */
heaviest: string,
/** Its mark. */
mark: string,
/** Who carries it. */
carried: string,
/** Who lifts it above the shoulder; empty when it is not lifted so high. */
overhead: string,
/** It wants more than hands. */
aid: boolean,
/** How it is lifted, stage by stage. */
stages: Array<string>,
/** More figures: weight dry, balance, the longest, all together, lifts with the hoist. */
figures: Array<SiteFigure>, };

/** What is lifted. */
export type SiteLifts = {
/** By kind, the heaviest first. */
kinds: Array<SiteLift>,
/** What the figures are, and who decides. */
cautions: Array<string>, };

/** A paper. */
export type SitePaper = {
/** What it is called. */
title: string,
/** Who decides. */
cautions: Array<string>,
/** Its parts. */
sections: Array<SiteSection>, };

/** A phase of the work. */
export type SitePhase = {
/** What it is. */
name: string,
/** From when to when. */
when: string,
/** Who, how many, for how long. */
who: string,
/** What the end of the whole has to do with it. */
float: string, };

/** Asks for the picture of a step. */
export type SitePictureAsk = {
/** The number of the step. */
step: number,
/** Width that it may take, px. */
width: number,
/** Quarter turns by which one has walked round the roof. */
turn: number, };

/** The programme. */
export type SiteProgramme = {
/** The last day. */
last: string,
/** Working days. */
days: string,
/** It has dates. */
dated: boolean,
/** A bar for each phase. */
bars: Picture,
/** The phases in words. */
phases: Array<SitePhase>,
/** When it is done, as chance has it. */
spread: Array<SiteFigure>,
/** Crew, start, hours a day, weather. */
fields: Array<SiteField>,
/** Hours of one of each item. */
hours: Array<SiteField>,
/** From when to when the access is hired. */
hired: string,
/** The hire as planned, late, and with two more wet weeks. */
hire: Array<SiteHire>,
/** Prices of the hire. */
hire_fields: Array<SiteField>,
/** Days on which the access is inspected. */
inspections: Array<string>,
/** Whether the work would have to be notified. */
notice: string,
/** What it does not say. */
cautions: Array<string>, };

/** The papers. */
export type SiteRecords = {
/** How many questions are answered. */
answered: string,
/** The brief, the record of the access, risks and method. */
papers: Array<SitePaper>,
/** Names of texts that no paper has. */
unused: Array<string>, };

/** A statement, or a question. */
export type SiteRow = {
/** Its name in the job file. */
name: string,
/** What is said of its own; nothing of a question. */
said: string | null,
/** The question; empty of a statement. */
question: string,
/** Who answers it, or where the statement is from and how far it can be relied upon. */
from: string,
/** How a check came out, if it is one. */
verdict: SiteVerdict | null,
/** The same in words. */
word: string,
/** What people on site wrote in its place. */
written: string | null, };

/** A part of a paper. */
export type SiteSection = {
/** Its heading. */
heading: string,
/** Its rows. */
rows: Array<SiteRow>, };

/** A step. */
export type SiteStep = {
/** From 1. */
number: number,
/** What is done. */
title: string,
/** Least number of people. */
hands: string,
/** What is special about lifting its timbers. */
lifting: Array<string>,
/** What is fixed, kind by kind. */
timbers: Array<SiteTimbers>,
/** Marks in the order of fixing. */
order: Array<string>,
/** How many of them are ticked as fixed; nothing when none is fixed in this step. */
ticked: string | null,
/** All of them are. */
all_ticked: boolean,
/** Setting-out strips to mark first. */
strips: Array<string>,
/** Props and braces that are set, bracing that stays. */
set: Array<SiteBar>,
/** What is taken out. */
out: Array<string>,
/** Why now. */
why: string,
/** What may hurt here. */
hazard: string,
/** What is checked before going on. */
holds: Array<SiteHold>,
/** Where nothing may be stacked meanwhile. */
no_stack: Array<string>, };

/** The order of the work. */
export type SiteSteps = {
/** Why there is no order of work, with what to do. */
refused: string | null,
/** The steps. */
steps: Array<SiteStep>,
/** Straps, line by line. */
straps: Array<SiteStrap>,
/** Cautions with who decides. */
cautions: Array<string>, };

/** Straps along one line. */
export type SiteStrap = {
/** What they do, and where. */
what: string,
/** Where the tape hooks on, and the marks on it. */
marks: string,
/** Section and how the spacing was come by. */
about: string, };

/** Timbers of one kind. */
export type SiteTimbers = {
/** What they are. */
kind: string,
/** Their marks: `C1 to C8, C10`. */
marks: string, };

/** How a check came out. */
export type SiteVerdict = "within" | "ask" | "over";

/** What stands along a wall. */
export type SiteWall = {
/** The wall. */
wall: string,
/** Its figures. */
figures: Array<SiteFigure>, };
