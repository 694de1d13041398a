// Made from the Rust types by `UPDATE=1 cargo test -p app --features bindings`. Not to be changed by hand.

/** One fault in a job file. */
export type FaultLine = {
/** Line of the file, from 1. */
line: number,
/** Column of the line, from 1. */
column: number,
/** What is wrong. */
what: string,
/** Why it matters. */
why: string,
/** What to do. */
remedy: string, };

/** Why a call was not done: what is wrong and what to do about it. The job on
 * the desk is as it was before.
 */
export type Refusal = {
/** Short name of the rule that is broken, for other programs. */
code: string,
/** What is wrong, a sentence. */
what: string,
/** What to do, a sentence. */
remedy: string,
/** The faults of a job file, if that is what is wrong. */
faults: Array<FaultLine>,
/** The key that is at fault, of several that were given at once. */
key?: string, };
