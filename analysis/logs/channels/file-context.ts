/** What the columns of a file tell about each other before any unit is settled: what kind of recorder, did it run. */
import { type Dimension, toSi } from '../../units/index.ts';
import type { NameMatch } from './match-name.ts';
import { type UnitText, unitIn } from './unit-text.ts';
import type { ValueSummary } from './value-summary.ts';

export interface FileContext {
  /** positions are recorded and nothing that a pitot tube, a static port or an engine gives */
  satelliteOnly: boolean;
  /** the engine turned for most of the file */
  engineRan: boolean;
  /** units stated by other columns, by dimension; engine temperatures apart from those of air */
  stated: ReadonlyMap<Family, ReadonlySet<string>>;
}

/** Columns of one family share a unit in nearly every recorder (common practice, no source). */
export type Family =
  | 'engine-temperature'
  | 'air-temperature'
  | 'speed'
  | 'height'
  | 'liquid-pressure'
  | 'volume'
  | 'volume-flow'
  | 'angle';

const OF_AIR = ['outside-air-temperature', 'inlet-air-temperature'];
const OF_INSTRUMENTS = [
  'indicated-airspeed',
  'calibrated-airspeed',
  'true-airspeed',
  'pressure-altitude',
  'indicated-altitude',
  'altimeter-setting',
  'vertical-speed',
  'engine-speed',
  'manifold-pressure',
  'oil-temperature',
  'oil-pressure',
  'cylinder-head-temperature',
  'coolant-temperature',
];

/**
 * The family of a quantity, whose members share a unit.
 * @param quantity glossary name, text
 * @param dimension its dimension, text
 * @returns the family, or null where it has none
 */
export function familyOf(quantity: string, dimension: Dimension): Family | null {
  if (dimension === 'temperature') return OF_AIR.includes(quantity) ? 'air-temperature' : 'engine-temperature';
  if (quantity === 'vertical-speed' || quantity === 'vibration') return null;
  if (dimension === 'speed' || dimension === 'volume' || dimension === 'volume-flow') return dimension;
  if (dimension === 'length') return 'height';
  if (dimension === 'angle') return quantity === 'latitude' || quantity === 'longitude' ? null : 'angle';
  if (['oil-pressure', 'fuel-pressure', 'coolant-pressure'].includes(quantity)) return 'liquid-pressure';
  return null;
}

/**
 * What a file's columns tell together.
 * @param matches what the names say, one a column
 * @param units stated units, one a column
 * @param values extents of the values as written, one a column
 * @param dimensionOf dimension of a quantity, function
 * @returns the context
 */
export function fileContext(
  matches: readonly NameMatch[],
  units: readonly UnitText[],
  values: readonly (ValueSummary | null)[],
  dimensionOf: (quantity: string) => Dimension | undefined,
): FileContext {
  const stated = new Map<Family, Set<string>>();
  let hasPosition = false;
  let hasInstruments = false;
  let engineRan = false;
  matches.forEach((match, i) => {
    const [quantity, second] = match.quantities;
    if (quantity === undefined || second !== undefined) return;
    if (quantity === 'latitude' || quantity === 'longitude') hasPosition = true;
    if (OF_INSTRUMENTS.includes(quantity)) hasInstruments = true;
    const dimension = dimensionOf(quantity);
    const family = dimension && familyOf(quantity, dimension);
    const unit = dimension && units[i] && unitIn(units[i], dimension);
    if (family && unit) stated.set(family, (stated.get(family) ?? new Set()).add(unit.id));
    const speed = quantity === 'engine-speed' ? values[i] : null;
    if (speed && speed.middle > 0 && toSi(speed.middle, 'rpm') > RUNNING) engineRan = true;
  });
  return { satelliteOnly: hasPosition && !hasInstruments, engineRan, stated };
}

/** Turning faster than any starter motor turns it, 1/s (common practice, no source). */
const RUNNING = 12;
