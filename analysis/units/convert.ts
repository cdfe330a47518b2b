/** Conversion at the border: trade units to SI and back. Nothing else in the house multiplies by a unit factor. */
import { siUnitOf, unitOf } from './find-unit.ts';

/**
 * A number with its unit, to SI.
 * @param value number in `unit`
 * @param unit unit id, text
 * @returns the same quantity in the SI unit of the unit's dimension
 * @throws UnknownUnit when the unit id is unknown
 * @source factors in analysis/units/units.ts
 */
export function toSi(value: number, unit: string): number {
  const { factor, offset } = unitOf(unit);
  return value * factor + offset;
}

/**
 * An SI number, to a unit.
 * @param si number in SI
 * @param unit unit id, text
 * @returns the same quantity in `unit`
 * @throws UnknownUnit when the unit id is unknown
 * @source factors in analysis/units/units.ts
 */
export function fromSi(si: number, unit: string): number {
  const { factor, offset } = unitOf(unit);
  return (si - offset) / factor;
}

/**
 * A difference (an uncertainty, a margin, a rise) to SI: the offset of a temperature scale does not enter.
 * @param difference number in `unit`
 * @param unit unit id, text
 * @returns the difference in SI
 * @throws UnknownUnit when the unit id is unknown
 * @source factors in analysis/units/units.ts
 */
export function differenceToSi(difference: number, unit: string): number {
  return difference * unitOf(unit).factor;
}

/**
 * An SI difference (an uncertainty, a margin, a rise) in a unit.
 * @param si difference in SI
 * @param unit unit id, text
 * @returns the difference in `unit`
 * @throws UnknownUnit when the unit id is unknown
 * @source factors in analysis/units/units.ts
 */
export function differenceFromSi(si: number, unit: string): number {
  return si / unitOf(unit).factor;
}

/** The id of the SI unit in which a value given in `unit` is stored. */
export function siUnitFor(unit: string): string {
  return siUnitOf(unitOf(unit).dimension).id;
}
