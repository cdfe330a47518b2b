/** One climb, reduced to what the later steps need. SI; rates are tapeline. */
import type { Flag } from '../../remarks/index.ts';

/** A standard uncertainty with its degrees of freedom. */
export interface Doubt {
  u: number;
  nu: number;
}

export interface ClimbRun {
  file: string;
  fromSeconds: number;
  toSeconds: number;
  label: string;
  /** means over the run */
  ias: number;
  cas: number;
  tas: number;
  eas: number;
  /** pressure altitude at mid, corrected for the static source, m */
  Hp: number;
  Hd: number;
  p: number;
  T: number;
  /** direction of the nose or of the air velocity, rad from true north; null where neither is known */
  heading: number | null;
  /** mass flown, kg; null when nobody said */
  mass: number | null;
  /** tapeline rate over the run and its own doubt: recorder noise; how the run's ends were chosen */
  rate: number;
  noise: Doubt;
  ends: Doubt;
  /** rate of change of true airspeed over the run, m/s2 */
  dVdt: number;
  /** metres gained by the altimeter */
  gained: number;
  engineSpeed: number | null;
  manifoldPressure: number | null;
  fuelFlow: number | null;
  flags: Flag[];
}

/** A run brought to constant calibrated airspeed on the standard day at its density altitude and, where masses are known, to the standard mass. */
export interface StandardRun extends ClimbRun {
  /** specific excess power at the mass flown */
  Ps: number;
  /** the same at the standard mass; equal to Ps where no mass is known */
  PsStandard: number;
  ccf: number;
  rateStandard: number;
  /** doubt from span efficiency, mass and, for a lone run, wind gradient, m/s */
  correction: Doubt;
  lone: boolean;
}
