// Made from the Rust types by `UPDATE=1 cargo test -p app --features bindings`. Not to be changed by hand.
import type { CardAsk, Edit, NewJob, Nudge, Settings, ShapeChoice, WhyAsk } from "./asks";
import type { Card } from "./bench";
import type { Opened } from "./desk";
import type { CuttingAsk, CuttingGroup, LayoutAsk, LayoutView, OrderView, YardAsk, YardRow } from "./order";
import type { Picture } from "./picture";
import type { SiteAccess, SiteAsk, SiteLifts, SitePictureAsk, SiteProgramme, SiteRecords, SiteSteps } from "./site";
import type { Sketch, SketchAsk, SketchView } from "./sketch";
import type { Standing } from "./standing";
import type { StrengthLine, StrengthOf, StrengthView, StrengthWhy, StrengthWorking } from "./strength";
import type { Working } from "./working";

export type * from "./asks";
export type * from "./bench";
export type * from "./desk";
export type * from "./order";
export type * from "./picture";
export type * from "./refusal";
export type * from "./scene";
export type * from "./site";
export type * from "./sketch";
export type * from "./standing";
export type * from "./strength";
export type * from "./working";

/** Every call that the core answers: what it takes and gives. */
export interface Calls {
  /** Opens a job in place of the one on the desk. */
  open: [Opened, Standing];
  /** Changes the job. The text of the reply is to be kept. */
  edit: [Edit, Standing];
  /** Shows the roof as it would be, while a finger drags. The job stays as it was. */
  nudge: [Nudge, Standing];
  /** Sets how figures and words are shown, and shows the open job again. */
  settle: [Settings, Standing | null];
  /** The card of a piece. */
  card: [CardAsk, Card];
  /** The working of a figure. */
  why: [WhyAsk, Working];
  /** The shapes that a new job can have. */
  shapes: [null, Array<ShapeChoice>];
  /** The text of a new job. */
  new_job: [NewJob, string];
  /** How a plan stands that is being measured. */
  sketch: [SketchAsk, SketchView];
  /** The open job's plan as a sketch, to measure it anew. */
  sketch_of_job: [null, Sketch];
  /** The text of the open job with the plan of a sketch in place of its own. */
  sketch_into_job: [Sketch, string];
}

/** Every call that the side desk answers: those of the core, and what is asked beside the roof. */
export interface SideCalls extends Calls {
  /** How far the timbers of the open job are used. Worked out when it is asked for, and kept while the job is the same. */
  strength: [null, StrengthView];
  /** The working of a check of a timber. */
  strength_working: [StrengthWhy, StrengthWorking];
  /** The strength of a piece in one line; nothing when the job says no loads, or the piece carries none. */
  strength_of: [StrengthOf, StrengthLine | null];
  /** What to buy for the open job. Worked out when it is asked for, and kept while the job is the same. */
  order: [null, OrderView];
  /** How to cut what is bought. */
  cutting: [CuttingAsk, Array<CuttingGroup>];
  /** How some lengths are cut, cut by cut. */
  layout: [LayoutAsk, LayoutView];
  /** Offcuts that a device keeps from job to job, as shown. */
  offcuts: [YardAsk, Array<YardRow>];
  /** The prices of the open job as a price list. */
  price_list: [null, string];
  /** The steps of putting the open job up. Worked out when it is asked for, and kept while the job is the same. */
  site_steps: [null, SiteSteps];
  /** The roof at a step. */
  site_picture: [SitePictureAsk, Picture];
  /** What is lifted. */
  site_lifts: [null, SiteLifts];
  /** When the roof goes up. */
  site_programme: [SiteAsk, SiteProgramme];
  /** What it is put up from. */
  site_access: [null, SiteAccess];
  /** The papers of the access. */
  site_records: [null, SiteRecords];
  /** The programme as a calendar file. */
  site_calendar: [null, string];
}
