// Made from the Rust types by `UPDATE=1 cargo test -p app --features bindings`. Not to be changed by hand.
import type { Done } from "./asks";
import type { Figure, Ways } from "./bench";
import type { Picture } from "./picture";

/** A slope as it is covered. */
export type CoveredSlope = {
/** Which, with its pitch. */
title: string,
/** Courses and gauge. */
main: Array<Figure>,
/** The rest. */
figures: Array<Figure>, };

/** Asks how to cut what is bought. */
export type CuttingAsk = {
/** Width that a picture may take, px. */
width: number, };

/** How the timber of one section and class is cut. */
export type CuttingGroup = {
/** Its name in other calls. */
id: string,
/** Section and class. */
title: string,
/** Lengths that are cut alike together. */
layouts: Array<LayoutRow>,
/** Offcuts that are kept. */
left: Array<Offcut>,
/** The same in words; empty when there are none. */
left_words: string, };

/** The price of anything else, as typed. */
export type ItemPriceGiven = {
/** What it is a price of: the `item` of an [`OrderLine`]. */
item: string,
/** Empty takes it out. */
price: string,
/** What it is a price of. */
per: string,
/** When it was asked. */
dated: string, };

/** A timber in its length. */
export type LaidRow = {
/** What to write on it: its mark in each of the lengths that are cut alike. */
marks: Array<string>,
/** Mark of its card. */
card: string,
/** How it lies, in words. */
lies: string,
/** How far it is: the least of them. */
done: Done, };

/** Asks how some lengths are cut. */
export type LayoutAsk = {
/** Which: the `id` of a [`LayoutRow`]. */
id: string,
/** Width that its picture may take, px. */
width: number, };

/** Lengths that are cut alike. */
export type LayoutRow = {
/** Its name in other calls. */
id: string,
/** How many. */
times: string,
/** Length of the stock. */
length: string,
/** It is from the yard. */
yard: boolean,
/** What is left at its end, and whether that is kept. */
left: string,
/** How far its timbers are: the least of them. */
done: Done,
/** The length with its timbers, to scale. */
picture: Picture, };

/** How lengths that are cut alike are cut. */
export type LayoutView = {
/** The lengths. */
row: LayoutRow,
/** Section and class. */
title: string,
/** The cuts in their order. */
steps: Array<SawStep>,
/** The timbers, from the left. */
pieces: Array<LaidRow>,
/** What to mind. */
cautions: Array<string>, };

/** Offcuts of one section, class and length. */
export type Offcut = {
/** Thickness, mm. */
thickness_mm: number,
/** Depth, mm. */
depth_mm: number,
/** Strength class, when it is known. */
class: string | null,
/** Length, mm. */
length_mm: number,
/** How many. */
count: number, };

/** Offcuts, as typed. */
export type OffcutGiven = {
/** Thickness. */
thickness: string,
/** Depth. */
depth: string,
/** Length. */
length: string,
/** How many. */
count: string,
/** Strength class; empty when it is not known. */
class: string, };

/** Lengths of one kind. */
export type OrderBuy = {
/** How many. */
count: string,
/** Of which length. */
length: string,
/** What one costs. */
each: string | null, };

/** What covers the slopes. */
export type OrderCovering = {
/** The word of the covering that is chosen; empty when none is. */
chosen: string,
/** What can be chosen: the word of the job file, and what is shown for it. */
choices: Array<[string, string]>,
/** Why it can't be laid on this roof, and what to do. */
refused: string | null,
/** Area, weight, battens, underlay. */
figures: Array<Figure>,
/** Its slopes. */
slopes: Array<CoveredSlope>,
/** What to order for it. */
lines: Array<OrderLine>,
/** How the roof is aired, a sentence each. */
air: Array<string>,
/** What the roofer must know. */
notices: Array<OrderNotice>,
/** Where its figures are from. */
sources: Array<string>, };

/** Something that is bought. */
export type OrderLine = {
/** Its word: what its price goes by. */
item: string,
/** What it is, with its size. */
what: string,
/** How much, with its unit. */
quantity: string,
/** How it was counted. */
counted: string,
/** Where the rule is from. */
source: string,
/** How sure it is, in a word or two; empty when it is counted. */
remark: string,
/** Weight; empty when it is not known. */
weight: string,
/** What it comes to. */
cost: string | null,
/** Its price as written; empty when none is. */
price: string,
/** What that is a price of: the word of the job file. */
per: string,
/** What it may be a price of: the word of the job file, and what is shown for it. */
pers: Array<[string, string]>,
/** When it was asked; empty when that is not written. */
dated: string, };

/** What whoever orders must know. */
export type OrderNotice = {
/** How serious: `stop`, `warn` or `note`. */
level: string,
/** What, and what to do. */
text: string,
/** Where, if it is about one place. */
place: string, };

/** Timber of one section and class. */
export type OrderTimber = {
/** Its name in other calls. */
id: string,
/** Section and class. */
title: string,
/** Which timbers are cut from it. */
kinds: string,
/** How many. */
timbers: string,
/** What to buy, the longest first. */
buy: Array<OrderBuy>,
/** What is taken from the yard. */
yard: Array<OrderBuy>,
/** Metres, weight, cost. */
figures: Array<Figure>,
/** Every length has a price. */
priced: boolean,
/** How far the plan is from the best there can be, a sentence. */
best: string,
/** Nothing better exists. */
proven: boolean,
/** What shared cuts save, a sentence. */
saving: string | null,
/** What becomes sawdust and short ends, a sentence. */
waste: string,
/** Why it can't be cut from the stock there is, and what to do. */
refused: string | null,
/** Its prices, to be written: one for each merchant's stock of the job, or one to start with. */
prices: Array<StockPrice>, };

/** What to buy for the open job. */
export type OrderView = {
/** The sign of the currency. */
currency: string,
/** What is read first: the sum of what is priced, weight, metres. */
figures: Array<Figure>,
/** What the sum is and is not, a sentence each. */
notes: Array<string>,
/** Timber by section and class. */
timber: Array<OrderTimber>,
/** What covers the slopes. */
covering: OrderCovering,
/** Everything else, in the order of a shopping list. */
lines: Array<OrderLine>,
/** What lies in the yard for this job. */
yard: Array<YardRow>,
/** What goes up in how many lifts, a sentence each. */
lifts: Array<string>,
/** What whoever orders must know. */
notices: Array<OrderNotice>,
/** Who decides. */
cautions: Array<string>,
/** Date of the oldest price, as written; nothing when none has one. */
oldest: string | null, };

/** One cut at the saw. */
export type SawStep = {
/** The name that parts of the picture have that belong to it. */
name: string,
/** Where on the tape from the left end, as shown. */
tape: Figure,
/** Where the line crosses the other edges, as far as it is on the stock. */
marks: Array<Figure>,
/** How the line runs and on which side of it the saw goes. */
words: string,
/** Which timbers it makes ends of, a sentence. */
makes: string,
/** The settings; nothing when it is square across and the blade stands upright. */
ways: Ways | null, };

/** The price of a stock of timber, to be written. */
export type StockPrice = {
/** Which: to be given back with an edit. */
of: string,
/** What it is called, when the job has several for the same timber. */
name: string | null,
/** Price of a metre; empty when none is written. */
metre: string,
/** Lengths that may be had, with their prices; empty where none is written. */
lengths: Array<[string, string]>,
/** What a price of a metre is taken to mean, a sentence; empty when it means just that. */
hint: string,
/** It is priced by the length. */
by_length: boolean,
/** When it was asked; empty when that is not written. */
dated: string, };

/** The price of a stock of timber, as typed. */
export type StockPriceGiven = {
/** Which: the `of` of a [`StockPrice`]. */
of: string,
/** By the length, or else by the metre. */
by_length: boolean,
/** Price of a metre; empty takes it out. */
metre: string,
/** Price of each length, in their order; what has none can't be had. */
lengths: Array<string>,
/** When it was asked. */
dated: string, };

/** Asks how offcuts look that are kept on the device. */
export type YardAsk = {
/** The offcuts; those that are alike become one row. */
offcuts: Array<Offcut>, };

/** Offcuts as shown. */
export type YardRow = {
/** Their name in the job; empty when they are not in it. */
name: string,
/** Section, class, length. */
words: string,
/** How many. */
count: string,
/** Some timber of the open job could be cut from them. */
fits: boolean,
/** The offcuts. */
offcut: Offcut, };
