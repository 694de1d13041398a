// Made from the Rust types by `UPDATE=1 cargo test -p app --features bindings`. Not to be changed by hand.

/** Points of a buffer: three numbers each, one after the other. */
export type Run = {
/** The first point. */
first: number,
/** How many. */
count: number, };

/** What the 3-D view draws, in mm, x east, y north, z up. */
export type Scene = {
/** The least of all coordinates, mm. */
low: [number, number, number],
/** The greatest of all coordinates, mm. */
high: [number, number, number],
/** The timbers, in the order of the overview's members. */
members: Array<SceneMember>,
/** The slopes. */
slopes: Array<SceneSlope>, };

/** A timber in the view. */
export type SceneMember = {
/** Its mark. */
mark: string,
/** What it is shown or hidden with: `rafters`, `ridges`, `plates`, `inside`, `edges`. */
layer: string,
/** Its triangles, in the buffer of timbers. */
triangles: Run,
/** Its arrises, pairs of points in the buffer of arrises. */
arrises: Run,
/** Where its mark is written, mm. */
label: [number, number, number],
/** Timbers that touch it. */
neighbours: Array<string>, };

/** A slope in the view. */
export type SceneSlope = {
/** The wall that a touch of the slope means. */
wall: string,
/** All walls in one line that share the slope, that one among them. */
walls: Array<string>,
/** Its triangles, in the buffer of slopes. */
triangles: Run,
/** Middle of the slope, where a finger takes hold of it, mm. */
handle: [number, number, number],
/** Pitch, degrees. */
pitch_deg: number, };
