// What the device keeps of jobs, and the few things that a keeper of rows has to be able to do.

/** How a job stood when it was kept, for the shelf. */
export interface Glance {
  timbers: number;
  cut: number;
  fixed: number;
  /** Notices that stop the work or warn. */
  notices: number;
  /** There is a roof. */
  built: boolean;
}

/** A job on the shelf. Order comes from counters alone; times are only shown, for clocks jump. */
export interface JobRow {
  id: string;
  title: string;
  /** The version that is shown. */
  cursor: number;
  /** The greatest number that a version ever had; it never falls. */
  newest: number;
  /** Where it stands on the shelf: the greatest is first. */
  place: number;
  /** How many versions are kept, and their length in characters. */
  count: number;
  chars: number;
  glance: Glance | null;
  /** When it lies in the bin: its turn there; the least is emptied first. */
  binned: number | null;
  /** For showing only, ms since 1970. */
  madeAt: number;
  changedAt: number;
}

/** One version of a job: its whole text. */
export interface Version {
  job: string;
  n: number;
  text: string;
  /** What was done to come here, a phrase. Empty for the first. */
  said: string;
  /** For showing only, ms since 1970. */
  at: number;
}

/** Rows within one transaction: all of it happens or nothing. */
export interface Rows {
  jobs(): Promise<JobRow[]>;
  job(id: string): Promise<JobRow | undefined>;
  putJob(row: JobRow): Promise<void>;
  dropJob(id: string): Promise<void>;
  version(job: string, n: number): Promise<Version | undefined>;
  putVersion(version: Version): Promise<void>;
  dropVersion(job: string, n: number): Promise<void>;
  /** The numbers of a job's versions, rising. */
  numbers(job: string): Promise<number[]>;
  /** Anything else under a name: drafts, the device, what is to be sent. */
  note<T>(key: string): Promise<T | undefined>;
  putNote(key: string, value: unknown): Promise<void>;
  dropNote(key: string): Promise<void>;
  noteKeys(prefix: string): Promise<string[]>;
}

/** Where rows are kept. */
export interface Keeper {
  read<T>(work: (rows: Rows) => Promise<T>): Promise<T>;
  /** Resolves when everything lies on the disk; rejects when nothing does. */
  write<T>(work: (rows: Rows) => Promise<T>): Promise<T>;
}
