/** A book as its pages need it: what was written down, with who and when. The server's records fit these shapes. */
import type { Airplane } from '../../analysis/airplane/index.ts';
import type { TestState } from '../../analysis/program/index.ts';
import type { Problem } from '../../analysis/remarks/index.ts';
import type { Result } from '../../analysis/results/index.ts';
import type { BookLabel } from '../parts/frame.view.ts';
import type { InstrumentUnits } from '../words/unit-shown.ts';

/** Whose page it is, and how that person reads numbers and clocks. */
export interface PageContext {
  book: BookLabel;
  units: InstrumentUnits;
  /** IANA name of the person's zone */
  zone: string;
}

export interface KeptResult {
  number: number;
  kind: string;
  at: string;
  who: string;
  status: 'proposed' | 'accepted' | 'repeat' | 'stale';
  decision: 'proposed' | 'accepted' | 'repeat';
  note: string;
  decidedAt: string | null;
  decidedBy: string | null;
  stale: readonly string[];
  input: {
    logs: readonly string[];
    points?: unknown;
    segments?: readonly Record<string, unknown>[] | undefined;
    options?: Record<string, unknown> | undefined;
    calibration?: number | null | undefined;
    card?: { number: number; title: string; revision: string; printed: string; sheets: readonly number[] } | undefined;
  };
  logNames: readonly string[];
  tests: readonly string[];
  result: Result;
}

/** What a decision on an airspeed result would do to others. */
export interface KeptConsequence {
  inForce: number | null;
  stale: readonly { number: number; kind: string; because: string }[];
  standAgain: readonly { number: number; kind: string; because: string }[];
}

export interface KeptConsequences {
  inForce: number | null;
  accepting: KeptConsequence | null;
  takingBack: KeptConsequence | null;
}

export interface KeptStatus {
  test: string;
  title: string;
  status: TestState;
  because: string;
  result: number | null;
}

/** The paper of a test on an outing: printed, whether it still holds, what was written into it. */
export interface KeptPaper {
  printed: { day: string; revision: string; paper: string } | null;
  stale: readonly string[];
  written: readonly { number: number; filled: number; of: number }[];
}

export interface KeptSquawk {
  number: number;
  text: string;
  open: boolean;
  at: string;
  who: string;
  how: string;
  settledAt: string | null;
  settledBy: string | null;
}

/** What came of an outing. */
export interface KeptNote {
  number: number;
  what: 'done' | 'no-go' | 'day-lost';
  /** its title, as it stood in the plan */
  outing: string;
  parts: readonly { test: string; part: number }[];
  note: string;
  at: string;
  who: string;
}

/** A test the person leaves out. */
export interface KeptLeftOut {
  test: string;
  reason: string;
  instead: string;
  at: string;
  who: string;
}

export interface KeptHours {
  entries: readonly {
    number: number;
    date: string;
    outing: string;
    flightSeconds: number;
    engineSeconds: number;
    landings: number;
    note: string;
  }[];
  flightSeconds: number;
  engineSeconds: number;
  landings: number;
}

export interface KeptRevision {
  number: number;
  at: string;
  who: string;
  why: string;
}

export interface KeptAirplane {
  file: unknown;
  parsed: Airplane | null;
  problems: readonly Problem[];
  revision: number;
  revisions: readonly KeptRevision[];
}

export interface KeptLog {
  id: string;
  name: string;
  size: number;
  receivedAt: string;
  who: string;
  map: unknown;
}
