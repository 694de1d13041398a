import type { Picture } from "./picture";

export type SiteFigure = { label: string, value: string, };

export type SiteAsk = { width: number, };

export type SitePictureAsk = { step: number, width: number, turn: number, };

export type SiteSteps = { refused: string | null, steps: Array<SiteStep>, straps: Array<SiteStrap>, cautions: Array<string>, };

export type SiteStep = { number: number, title: string, hands: string, timbers: Array<SiteTimbers>, order: Array<string>, ticked: string | null, all_ticked: boolean, strips: Array<string>, set: Array<SiteBar>, out: Array<string>, why: string, hazard: string, holds: Array<SiteHold>, no_stack: Array<string>, };

export type SiteTimbers = { kind: string, marks: string, };

export type SiteBar = { name: string, what: string, figures: Array<SiteFigure>, note: string, };

export type SiteHold = { number: number, what: string, at: string, figure: string | null, tolerance: string, basis: string, };

export type SiteStrap = { what: string, marks: string, about: string, };

export type SiteLifts = { kinds: Array<SiteLift>, cautions: Array<string>, };

export type SiteLift = { kind: string, pieces: number, heaviest: string, mark: string, carried: string, overhead: string, aid: boolean, stages: Array<string>, figures: Array<SiteFigure>, };

export type SiteProgramme = { last: string, days: string, dated: boolean, bars: Picture, phases: Array<SitePhase>, spread: Array<SiteFigure>, fields: Array<SiteField>, hours: Array<SiteField>, hired: string, hire: Array<SiteHire>, hire_fields: Array<SiteField>, inspections: Array<string>, notice: string, cautions: Array<string>, };

export type SitePhase = { name: string, when: string, who: string, float: string, };

export type SiteHire = { name: string, weeks: string, cost: string, };

export type SiteField = { path: string, label: string, hint: string, value: string, said: boolean, form: SiteForm, choices: Array<[string, string]>, };

export type SiteAccess = { kind: string, figures: Array<SiteFigure>, walls: Array<SiteWall>, bay: SiteBay | null, ladder: Array<SiteFigure>, fields: Array<SiteField>, sections: Array<SiteSection>, cautions: Array<string>, };

export type SiteWall = { wall: string, figures: Array<SiteFigure>, };

export type SiteBay = { verdict: SiteVerdict, word: string, what: string, figures: Array<SiteFigure>, };

export type SiteRecords = { answered: string, papers: Array<SitePaper>, unused: Array<string>, };

export type SitePaper = { title: string, cautions: Array<string>, sections: Array<SiteSection>, };

export type SiteSection = { heading: string, rows: Array<SiteRow>, };

export type SiteRow = { name: string, said: string | null, question: string, from: string, verdict: SiteVerdict | null, word: string, written: string | null, };

export type RecordGiven = { name: string, text: string, };
export type SiteForm = "choice" | "date" | "number" | "text";
export type SiteVerdict = "within" | "ask" | "over";
