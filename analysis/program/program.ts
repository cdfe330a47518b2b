/** The sequenced program: what is done, in which order, on which outing, and why. Plain JSON. */
import type { Kind, Load, MissingNumber, Stage, System } from '../catalogue/index.ts';

export type { MissingNumber, Stage } from '../catalogue/index.ts';

export interface ProgramTest {
  id: string;
  title: string;
  stage: Stage;
  system: System;
  /** place in the whole order, from 1 */
  position: number;
  purpose: string;
  /** one sentence: why it is in this program (the configuration field) */
  because: string;
  /** configuration paths that put it in; none where every airplane needs it */
  paths: string[];
  /** one sentence: why it stands here */
  why: string;
  /** ids it needs first, inherited through tests that do not apply */
  needs: string[];
  /** ids that wait for it */
  unlocks: string[];
  produces: string[];
  consumes: string[];
  /** number of the outing it is packed into, the first where it takes several */
  outing: number;
  /** every outing it takes */
  outings: number[];
  reduction: string | null;
  reductions: Kind[];
  flightMinutes: number;
  groundMinutes: number;
  /** the new thing it does for the first time, or null */
  opens: string | null;
  risk: number;
  load: Load;
  missing: MissingNumber[];
  /** true for a test of the person's own */
  own: boolean;
}

/** One test, or one part of a test that takes several outings. */
export interface Part {
  test: string;
  /** from 1 */
  part: number;
  of: number;
}

/** Mass and balance of a flight, from the description; null parts where it lacks a figure. */
export interface OutingLoad {
  words: string;
  takeoff: LoadPoint | null;
  landing: LoadPoint | null;
  /** fuel aboard at take-off for this load, m3; more than the flight needs where weight is wanted */
  fuel: number | null;
  /** what is put aboard beside pilot and fuel */
  added: { name: string; mass: number; arm: number }[];
  /** true when take-off and landing lie inside the envelope, uncertainty included; null where that cannot be worked out */
  inside: boolean | null;
}

export interface LoadPoint {
  /** kg */
  mass: number;
  massU95: number;
  /** m aft of the datum */
  arm: number;
  armU95: number;
  /** share of the mean aerodynamic chord, 0 to 1 */
  chord: number | null;
  inside: boolean;
}

/** Fuel of a flight, m3; null where the description lacks the burn or the tanks. */
export interface OutingFuel {
  takeoff: number;
  burn: number;
  /** what must remain at landing */
  reserve: number;
  usable: number;
  words: string;
}

export interface Outing {
  number: number;
  /** number among the flights, null on the ground */
  flight: number | null;
  kind: 'shop' | 'ground' | 'flight';
  title: string;
  stage: Stage;
  /** ids in the order they are done */
  tests: string[];
  parts: Part[];
  /** minutes on condition, and all of the outing with climb, transit and reserve */
  minutesOnCondition: number;
  minutesTotal: number;
  why: string;
  /** the one new thing of this outing, or null */
  opens: string | null;
  load: Load;
  loading: OutingLoad | null;
  fuel: OutingFuel | null;
  /** greatest height asked for, m above ground */
  height: number | null;
  daylight: boolean;
  /** what a person should look at before going */
  remarks: string[];
}

export interface Gate {
  id: string;
  title: string;
  before: Stage;
  after: Stage;
  evidence: { test: string; title: string; asks: string }[];
  typicalNoGo: string;
}

export interface Hours {
  kind: 'fixed-hours' | 'task-list';
  /** hours the operating limitations assign; null for a task list */
  assigned: number | null;
  onCondition: number;
  planned: number;
  ground: number;
  flights: number;
  /** of the planned hours: take-off, transit, pattern and landing of all flights */
  overhead: number;
  /** of the planned hours: climbs beyond what that covers */
  climbs: number;
  /** flights with one new thing each; the number of flights cannot fall below it */
  newThings: number;
  difference: number | null;
  words: string;
  /** tasks of a task list, with the tests that show each */
  tasks: { title: string; tests: string[]; missing: string[] }[];
}

export interface Program {
  airplane: { name: string; registration: string };
  stages: { stage: Stage; title: string; tests: ProgramTest[] }[];
  /** ids in order */
  order: string[];
  /** left out by the airplane's configuration, or by the person with a reason */
  notApplicable: {
    id: string;
    title: string;
    stage: Stage;
    reason: string;
    paths: string[];
    by: 'airplane' | 'person';
  }[];
  outings: Outing[];
  hours: Hours;
  gates: Gate[];
  /** what the operating limitations of this airplane say, as entered; quoted at every gate */
  operatingLimitations: string;
}
