/** A book as pages, routes and cards see it: plain JSON, trade words, everything with who and when. */
import type { Airplane } from '../../analysis/airplane/index.ts';
import type { LogMap } from '../../analysis/logs/log-map.ts';
import type { Problem } from '../../analysis/remarks/index.ts';
import type { Result } from '../../analysis/results/index.ts';
import type { Decision, Entry, ReductionRequest } from './entry.ts';

export interface Revision {
  number: number;
  at: string;
  who: string;
  why: string;
  /** entry of the journal that it undoes, where it does */
  undoes: number | null;
}

export interface StoredAirplane {
  /** as saved, units and all */
  file: unknown;
  /** null when the stored description no longer fits the schema; then `problems` says why */
  parsed: Airplane | null;
  problems: Problem[];
  revision: number;
  /** oldest first */
  revisions: Revision[];
}

export interface StoredLog {
  /** SHA-256 of its bytes */
  id: string;
  /** safe to show, and no other log of the book has it */
  name: string;
  size: number;
  receivedAt: string;
  who: string;
  /** what was confirmed for it, if anything */
  map: LogMap | null;
  layout: string | null;
}

export interface SavedMap {
  layout: string;
  map: LogMap;
  /** the log it was confirmed on */
  log: string;
  logName: string;
}

export type ResultStatus = Decision | 'stale';

export interface StoredResult {
  number: number;
  kind: string;
  at: string;
  who: string;
  status: ResultStatus;
  /** what was decided, also while it is stale */
  decision: Decision;
  note: string;
  decidedAt: string | null;
  decidedBy: string | null;
  /** why it no longer stands, one sentence each; empty when it stands */
  stale: string[];
  input: ReductionRequest;
  /** names of its logs, in order */
  logNames: string[];
  tests: string[];
  result: Result;
}

export type TestState =
  | 'planned'
  | 'briefed'
  | 'flown'
  | 'reduced'
  | 'accepted'
  | 'repeat'
  | 'stale'
  | 'not applicable';

export interface TestStatus {
  test: string;
  title: string;
  status: TestState;
  /** one sentence: why it has this status */
  because: string;
  /** number of the result it rests on */
  result: number | null;
}

export interface Squawk {
  number: number;
  text: string;
  open: boolean;
  at: string;
  who: string;
  how: string;
  settledAt: string | null;
  settledBy: string | null;
}

export interface HoursEntry {
  number: number;
  date: string;
  outing: string;
  flightSeconds: number;
  engineSeconds: number;
  landings: number;
  note: string;
  at: string;
  who: string;
}

export interface HoursLedger {
  entries: HoursEntry[];
  flightSeconds: number;
  engineSeconds: number;
  landings: number;
}

export interface Printing {
  cards: string[];
  paper: string;
  revision: number;
  at: string;
}

export interface BookState {
  id: string;
  /** stays with the book wherever it is moved */
  uid: string;
  demo: boolean;
  airplane: StoredAirplane;
  logs: StoredLog[];
  maps: SavedMap[];
  results: StoredResult[];
  squawks: Squawk[];
  hours: HoursLedger;
  printed: Printing[];
  /** one for each test of the catalogue, in the program's order, those not applicable last */
  testStatus: TestStatus[];
  /** newest first */
  journal: Entry[];
}

export interface BookSummary {
  id: string;
  name: string;
  registration: string;
  demo: boolean;
  /** why it cannot be opened now, if it cannot */
  problems: Problem[];
}
