// Made from the Rust types by `UPDATE=1 cargo test -p app --features bindings`. Not to be changed by hand.

/** The strength of a roof. */
export type StrengthChecked = {
/** How many are over and near, the most used, how many matters are for an engineer. */
summary: Array<string>,
/** Every timber that carries, the most used first. */
timbers: Array<StrengthRow>,
/** Joints, the most used first. */
joints: Array<StrengthJoint>,
/** What is for an engineer, each with its reason. */
engineer: Array<StrengthMatter>,
/** What was taken for granted, a sentence each. */
assumed: Array<string>,
/** Cautions. */
cautions: Array<string>, };

/** A figure that is asked for. */
export type StrengthField = {
/** Its path in the job file. */
path: string,
/** What it is, with its unit. */
label: string,
/** Where it is to be had from. */
hint: string,
/** What stands there now; empty when nothing does. */
value: string,
/** What can be chosen: the word of the job file, and what is shown for it. Empty for a figure. */
choices: Array<[string, string]>, };

/** What has to be written before strength can be checked. */
export type StrengthForm = {
/** What to write, a sentence. */
words: string,
/** The figures, in the order in which they are asked for. */
fields: Array<StrengthField>, };

/** A joint. */
export type StrengthJoint = {
/** What is joined. */
name: string,
/** Where it is used most. */
marks: string,
/** What it must carry. */
force: string,
/** How far it is used, or that no figure can be given. */
used: string,
/** Whether it passes; nothing where no figure can be given. */
verdict: StrengthVerdict | null,
/** The same in a word. */
word: string,
/** What it takes. */
takes: string,
/** What else would do, or what to ask for. */
remark: string,
/** Clause. */
clause: string,
/** Its working. */
lines: Array<StrengthStep>, };

/** The strength of a piece in one line: that of its most used timber. */
export type StrengthLine = {
/** The timber, to ask for the working with. */
mark: string,
/** `83 % used, shear at the notch, near its limit`. */
words: string,
/** Whether it passes. */
verdict: StrengthVerdict, };

/** Something that is for an engineer. */
export type StrengthMatter = {
/** What, and why. */
text: string,
/** Where: marks, a wall, a group of the job. */
places: string,
/** The first timber that it is about, if it is about one. */
mark: string | null, };

/** Asks for the strength of a piece in one line. */
export type StrengthOf = {
/** The mark of a timber, or of its pattern piece. */
mark: string, };

/** A timber that carries. */
export type StrengthRow = {
/** Its mark; of several lengths, the one that they share. */
mark: string,
/** Marks of its lengths, as the roof has them. */
lengths: Array<string>,
/** What it is, in words. */
kind: string,
/** Its section as shown. */
size: string,
/** The check that governs. */
check: string,
/** Its clause. */
clause: string,
/** The loads under which it does; what deflection is under. */
combination: string,
/** `83 % used`. */
used: string,
/** `17 % left`, or by how much it is too much. */
left: string,
/** Whether it passes. */
verdict: StrengthVerdict,
/** The same in a word. */
word: string,
/** What would pass, a sentence; when it is over. */
would_pass: string | null,
/** What is written at it in the roof, when it is over: `over, 112 %`. */
tag: string | null, };

/** A line of a working. */
export type StrengthStep = {
/** What is worked out. */
what: string,
/** The formula with its numbers; empty when the value is given. */
how: string,
/** The value with its unit. */
value: string,
/** Where the rule or the figure stands. */
from: string, };

/** Whether something passes. */
export type StrengthVerdict = "within" | "near" | "over";

/** What is known of the strength of the open job. */
export type StrengthView = { "state": "not_asked" } & StrengthForm | { "state": "checked" } & StrengthChecked;

/** Asks for the working of a check. */
export type StrengthWhy = {
/** The mark of a timber. */
mark: string,
/** Which check, by its name; nothing for the one that governs. */
check: string | null, };

/** The working of a check. */
export type StrengthWorking = {
/** What of what. */
title: string,
/** `83 % used`. */
value: string,
/** What that means: loads, place, verdict. */
idea: string,
/** Line by line. */
lines: Array<StrengthStep>,
/** The clause. */
clause: string,
/** All checks of this timber, the governing one first: name, how far used. */
checks: Array<[string, string]>,
/** Which of them this is. */
check: string,
/** What to mind. */
cautions: Array<string>, };
