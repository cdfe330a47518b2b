/** A weighing on scales under the wheels: empty mass and centre of gravity with what limits each. */
import { coverageFactor, type Measured, measuredWith, type UncertaintySource } from '../numbers/index.ts';
import { OutOfRange } from '../remarks/index.ts';

export interface Wheel {
  place: string;
  /** net reading of each run, kg */
  readings: readonly number[];
  /** m aft of the datum */
  arm: number;
  /** U95 of the arm, m */
  armU95: number;
}

export interface WeighingDoubts {
  /** U95 of one scale, kg, apart from what all share */
  scaleU95: number;
  /** U95 of a gain error all readings share, as a share: one scale moved round, or one set of load cells */
  gainU95: number;
  /** U95 of the level of the airplane, rad */
  levelU95: number;
  /** height of the centre of gravity over the wheels' line, m */
  heightOfCg: number;
  /** standard uncertainty of a lone run as a share of the mass, taken where only one run was made */
  loneRun: number;
}

export interface Weighed {
  mass: Measured;
  arm: Measured;
  /** runs that were complete */
  runs: number;
  /** mass and arm of each run */
  byRun: { mass: number; arm: number }[];
}

/** two-sided U95 of a normal distribution to its standard uncertainty */
const NORMAL = coverageFactor(Number.POSITIVE_INFINITY);

/**
 * Mass and centre of gravity from wheel readings. A gain error that all readings share changes the mass and cancels in
 * the centre of gravity; errors of separate scales do not cancel; an airplane off level shifts the arm by h tan(e).
 * @param wheels net readings in kg on arms in m, the same number of runs each, list
 * @param doubts U95 of scale, gain, level; height of the centre of gravity, m; share for a lone run
 * @returns mass in kg and arm in m with U95 and parts, and each run
 * @throws OutOfRange when there is no wheel, no run, or a run does not add up to more than zero
 * @source moments [faa-h-8083-1]; propagation [jcgm-100]; height of 0.5 m where it is not known [practice]
 */
export function weigh(wheels: readonly Wheel[], doubts: WeighingDoubts): Weighed {
  const runs = Math.min(...wheels.map((wheel) => wheel.readings.length));
  if (wheels.length === 0 || !(runs >= 1)) throw new OutOfRange('runs', wheels.length === 0 ? 0 : runs, '1 or more');
  const byRun = Array.from({ length: runs }, (_, run) => oneRun(wheels, run));
  const n = byRun.length;
  const mass = meanOf(byRun.map((one) => one.mass));
  const arm = meanOf(byRun.map((one) => one.arm));
  const share = (wheel: Wheel) => meanOf(wheel.readings.slice(0, n)) / mass;
  const scale = doubts.scaleU95 / NORMAL;
  const repeat = (list: readonly number[], lone: number): UncertaintySource =>
    n > 1
      ? { part: 'repeatability', u: scatterOf(list) / Math.sqrt(n), nu: n - 1 }
      : { part: 'repeatability', u: lone, nu: Number.POSITIVE_INFINITY };
  const sure = Number.POSITIVE_INFINITY;
  return {
    mass: measuredWith(mass, [
      repeat(
        byRun.map((one) => one.mass),
        doubts.loneRun * mass,
      ),
      { part: 'calibration', u: scale * Math.sqrt(wheels.length), nu: sure },
      { part: 'calibration', u: (doubts.gainU95 / NORMAL) * mass, nu: sure },
    ]),
    arm: measuredWith(arm, [
      repeat(
        byRun.map((one) => one.arm),
        doubts.loneRun * spanOf(wheels),
      ),
      ...wheels.map((wheel) => calibration((scale * Math.abs(wheel.arm - arm)) / mass)),
      ...wheels.map((wheel) => calibration((wheel.armU95 / NORMAL) * share(wheel))),
      calibration(doubts.heightOfCg * Math.tan(doubts.levelU95 / NORMAL)),
    ]),
    runs: n,
    byRun,
  };

  function calibration(u: number): UncertaintySource {
    return { part: 'calibration', u, nu: sure };
  }
}

function oneRun(wheels: readonly Wheel[], run: number): { mass: number; arm: number } {
  const mass = wheels.reduce((sum, wheel) => sum + (wheel.readings[run] ?? 0), 0);
  if (!(mass > 0)) throw new OutOfRange('mass of a run', mass, 'above 0 kg');
  return { mass, arm: wheels.reduce((sum, wheel) => sum + (wheel.readings[run] ?? 0) * wheel.arm, 0) / mass };
}

function meanOf(list: readonly number[]): number {
  return list.reduce((sum, one) => sum + one, 0) / list.length;
}

function scatterOf(list: readonly number[]): number {
  const mean = meanOf(list);
  return Math.sqrt(list.reduce((sum, one) => sum + (one - mean) ** 2, 0) / (list.length - 1));
}

function spanOf(wheels: readonly Wheel[]): number {
  const arms = wheels.map((wheel) => wheel.arm);
  return Math.max(...arms) - Math.min(...arms);
}
