/** Looking units up: by id, by dimension, by how they are written in files. */
import { type Dimension, UNITS, type Unit } from './units.ts';

const BY_ID = new Map<string, Unit>(UNITS.map((unit) => [unit.id, unit]));
const SI_OF = new Map<Dimension, Unit>(UNITS.filter((unit) => unit.si).map((unit) => [unit.dimension, unit]));

/**
 * The unit with this id.
 * @param id unit id, text
 * @returns the unit
 * @throws UnknownUnit when no unit has this id
 * @source the project's own list of units, factors exact by the definitions named above
 */
export function unitOf(id: string): Unit {
  const unit = BY_ID.get(id);
  if (!unit) throw new UnknownUnit(id);
  return unit;
}

/** True when the id names a unit. */
export function isUnit(id: string): boolean {
  return BY_ID.has(id);
}

/**
 * The SI unit of a dimension: what JSON and every inner number use.
 * @param dimension kind of quantity, text
 * @returns the unit
 * @throws UnknownUnit when the dimension has no SI unit in the list
 */
export function siUnitOf(dimension: Dimension): Unit {
  const unit = SI_OF.get(dimension);
  if (!unit) throw new UnknownUnit(dimension);
  return unit;
}

/** All units of a dimension, SI first, in the order of the list. */
export function unitsOf(dimension: Dimension): Unit[] {
  return UNITS.filter((unit) => unit.dimension === dimension);
}

/**
 * Units a file might mean by a written unit; several where the spelling is shared (g, C, f).
 * @param text the unit as written, text
 * @returns units that are spelt so, possibly none
 */
export function unitsSpelt(text: string): Unit[] {
  const wanted = text.trim().replace(/\s+/g, ' ').toLowerCase();
  if (wanted === '') return [];
  return UNITS.filter((unit: Unit) => unit.spellings.includes(wanted));
}

/** A unit id that the list does not hold: a mistake of ours or of a file that zod should have caught. */
export class UnknownUnit extends Error {
  constructor(id: string) {
    super(`unknown unit "${id}"; the known ones stand in analysis/units/units.ts`);
    this.name = 'UnknownUnit';
  }
}
