/** The sequenced program: what is done, in which order, on which outing, and why. Plain JSON. */

export type Stage =
  | 'shop'
  | 'engine-ground'
  | 'taxi'
  | 'first-flight'
  | 'envelope'
  | 'systems-flight'
  | 'performance'
  | 'handling'
  | 'sign-off';

/** A number a card needs that the airplane's description lacks. */
export interface MissingNumber {
  /** reference as in the catalogue, such as `limits.coolant.caution` */
  path: string;
  /** what it is, in words */
  meaning: string;
}

export interface ProgramTest {
  id: string;
  title: string;
  stage: Stage;
  /** place in the whole order, from 1 */
  position: number;
  purpose: string;
  /** one sentence: why it is in this program (the configuration field) */
  because: string;
  /** one sentence: why it stands here */
  why: string;
  /** ids it needs first, inherited through tests that do not apply */
  needs: string[];
  /** ids that wait for it */
  unlocks: string[];
  produces: string[];
  consumes: string[];
  /** number of the outing it is packed into */
  outing: number;
  reduction: string | null;
  flightMinutes: number;
  groundMinutes: number;
  missing: MissingNumber[];
}

export interface Outing {
  number: number;
  kind: 'shop' | 'ground' | 'flight';
  title: string;
  stage: Stage;
  tests: string[];
  /** minutes on condition, and all of the outing with climb, transit and reserve */
  minutesOnCondition: number;
  minutesTotal: number;
  why: string;
}

export interface Gate {
  id: string;
  title: string;
  before: Stage;
  after: Stage;
  evidence: { test: string; title: string; asks: string }[];
  typicalNoGo: string;
}

export interface Program {
  airplane: { name: string; registration: string };
  stages: { stage: Stage; title: string; tests: ProgramTest[] }[];
  /** ids in order */
  order: string[];
  notApplicable: { id: string; title: string; stage: Stage; reason: string; paths: string[] }[];
  outings: Outing[];
  hours: {
    kind: 'fixed-hours' | 'task-list';
    assigned: number | null;
    onCondition: number;
    planned: number;
    ground: number;
    difference: number | null;
    words: string;
  };
  gates: Gate[];
}
