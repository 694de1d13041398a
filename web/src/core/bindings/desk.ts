// Made from the Rust types by `UPDATE=1 cargo test -p app --features bindings`. Not to be changed by hand.

/** The text of a job. */
export type Opened = {
/** As in the job file. */
text: string, };
