// Made from the Rust types by `UPDATE=1 cargo test -p app --features bindings`. Not to be changed by hand.
import type { Picture } from "./picture";

/** One line of a working. */
export type Line = {
/** What this line finds, in words. */
words: string,
/** The sum: `2600 ÷ cos 40°`. Empty for a line that only takes a figure over. */
sum: string,
/** What it comes to, with its unit. */
result: string,
/** The key of this figure, if it can be asked about in turn. */
why?: string, };

/** The working of one figure. */
export type Working = {
/** What is asked, a phrase: `True length of jack rafter J3`. */
title: string,
/** The figure as the card shows it. */
value: string,
/** The idea in a sentence or two, before any sum. */
idea: string,
/** The drawing that goes with it. */
picture: Picture,
/** The working, in order. */
lines: Array<Line>,
/** How to try it with square, tape or string, where that can be done. */
by_hand?: string,
/** Where the rule comes from: a source, or `common practice`, or first principles. */
rule: string, };
