/** Weight and balance: masses on arms, their sum, and what their uncertainty does to the centre of gravity. */
import { OutOfRange } from '../remarks/index.ts';

/** One mass on its arm. U95 are half-widths; zero where a figure is taken as exact. */
export interface LoadItem {
  name: string;
  /** kg; negative for something taken out */
  mass: number;
  /** m aft of the datum */
  arm: number;
  massU95?: number;
  armU95?: number;
}

export interface Balance {
  mass: number;
  /** kg m about the datum */
  moment: number;
  /** m aft of the datum */
  arm: number;
  massU95: number;
  armU95: number;
}

/**
 * Masses and arms into one mass at its centre of gravity, CG = sum(m x) / sum(m).
 * @param items masses in kg on arms in m aft of the datum, with U95 where known, list
 * @returns mass in kg, moment in kg m, arm in m, with U95 of mass and arm from independent items
 * @throws OutOfRange when the masses do not add up to more than zero
 * @source AC 43.13-1B ch. 10 [ac-43-13-1b-ch10]; propagation [jcgm-100] 5.1
 */
export function balanceOf(items: readonly LoadItem[]): Balance {
  const mass = items.reduce((sum, one) => sum + one.mass, 0);
  if (!(mass > 0)) throw new OutOfRange('mass', mass, 'above 0 kg');
  const moment = items.reduce((sum, one) => sum + one.mass * one.arm, 0);
  const arm = moment / mass;
  const massU95 = Math.hypot(...items.map((one) => one.massU95 ?? 0));
  const armU95 = Math.hypot(
    ...items.map((one) => ((one.massU95 ?? 0) * (one.arm - arm)) / mass),
    ...items.map((one) => ((one.armU95 ?? 0) * one.mass) / mass),
  );
  return { mass, moment, arm, massU95, armU95 };
}

/**
 * Change of the centre of gravity when part of the load is moved, m d / M.
 * @param moved mass moved, kg
 * @param total all-up mass, kg, above 0
 * @param from arm it is taken from, m
 * @param to arm it is put at, m
 * @returns change of arm, m, aft positive
 * @throws OutOfRange when the total is not above zero
 * @source FAA-H-8083-25, weight shifting [faa-h-8083-25]
 */
export function armChangeByShift(moved: number, total: number, from: number, to: number): number {
  if (!(total > 0)) throw new OutOfRange('total mass', total, 'above 0 kg');
  return (moved * (to - from)) / total;
}

/** Mean aerodynamic chord, m: its length and its leading edge aft of the datum. */
export interface MeanChord {
  length: number;
  leadingEdge: number;
}

/**
 * An arm as a share of the mean aerodynamic chord.
 * @param arm m aft of the datum
 * @param chord mean aerodynamic chord, m, length above 0
 * @returns share from the leading edge, 0.25 for 25 %
 * @throws OutOfRange when the chord has no length
 * @source definition, FAA-H-8083-1 [faa-h-8083-1]
 */
export function shareOfChord(arm: number, chord: MeanChord): number {
  if (!(chord.length > 0)) throw new OutOfRange('mean aerodynamic chord', chord.length, 'above 0 m');
  return (arm - chord.leadingEdge) / chord.length;
}

/**
 * The arm at a share of the mean aerodynamic chord.
 * @param share share from the leading edge, 0.25 for 25 %
 * @param chord mean aerodynamic chord, m
 * @returns m aft of the datum
 * @source definition, FAA-H-8083-1 [faa-h-8083-1]
 */
export function armAtShare(share: number, chord: MeanChord): number {
  return chord.leadingEdge + share * chord.length;
}
