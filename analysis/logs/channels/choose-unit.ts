/** The unit of a column: stated, guessed from the values, or asked for. A contradiction is a question, never a correction. */
import { type Quantity, toSi, type Unit, unitOf } from '../../units/index.ts';
import { type UnitText, unitIn } from './unit-text.ts';
import type { ValueSummary } from './value-summary.ts';

export interface UnitChoice {
  /** unit id, or null when it must be asked */
  unit: string | null;
  /** how sure the unit is, 0 to 1 */
  confidence: number;
  why: string;
  stated: boolean;
  /** true where the unit stated does not fit the values */
  contradictory: boolean;
  /** unit ids to ask between; empty when nothing is to be asked */
  ask: string[];
}

/** What is hotter than idle in every engine: a running engine's fluids and metals (common practice, no source). */
const RUNNING_AT_LEAST: Readonly<Record<string, number>> = {
  'coolant-temperature': 318,
  'oil-temperature': 313,
  'cylinder-head-temperature': 338,
  'exhaust-gas-temperature': 600,
};

/** Known about the file as a whole. */
export interface FileFacts {
  /** true when the engine ran for ten minutes or more */
  engineRan: boolean;
  /** temperature units that other columns state */
  temperatureUnits: ReadonlySet<string>;
}

/**
 * Unit of a column for the quantity its name tells.
 * @param quantity glossary entry
 * @param text the unit as written
 * @param values extent of the values, or null when there are none
 * @param facts what else the file shows
 * @returns the unit, or what to ask
 */
export function chooseUnit(
  quantity: Quantity,
  text: UnitText,
  values: ValueSummary | null,
  facts: FileFacts,
): UnitChoice {
  const stated = unitIn(text, quantity.dimension) ?? (quantity.dimension === 'none' ? unitOf('none') : undefined);
  if (stated) return judgeStated(quantity, stated, values, facts);
  const [first = 'none'] = quantity.tradeUnits;
  const base = { stated: false, contradictory: false, ask: [] as string[] };
  if (quantity.dimension === 'none')
    return { ...base, unit: 'none', confidence: 0.9, why: 'it has no unit', stated: true };
  if (!values)
    return { ...base, unit: first, confidence: 0.3, why: 'no unit is stated and there is no value to judge by' };
  const fitting = quantity.tradeUnits.filter((id) => fits(quantity, id, values, facts));
  if (quantity.dimension === 'ratio') {
    const unit = values.high > 1.5 ? '%' : '1';
    return {
      ...base,
      unit,
      confidence: 0.8,
      why: `no unit is stated; values up to ${round(values.high)} are ${unit === '%' ? 'percent' : 'a share'}`,
    };
  }
  if (quantity.tradeUnits.length === 1)
    return { ...base, unit: first, confidence: 0.9, why: `no unit is stated; ${first} is the only usual one` };
  if (quantity.dimension === 'angle') {
    const unit = Math.max(Math.abs(values.low), Math.abs(values.high)) > 6.3 ? 'deg' : 'rad';
    if (unit === 'deg' || quantity.name === 'latitude' || quantity.name === 'longitude') {
      return { ...base, unit: 'deg', confidence: 0.85, why: 'no unit is stated; the values are degrees' };
    }
  }
  if (fitting.length === 1 && fitting[0]) {
    return {
      ...base,
      unit: fitting[0],
      confidence: 0.75,
      why: `no unit is stated; only ${fitting[0]} makes values of ${round(values.low)} to ${round(values.high)} plausible`,
    };
  }
  const shared =
    quantity.dimension === 'temperature' && facts.temperatureUnits.size === 1
      ? [...facts.temperatureUnits][0]
      : undefined;
  if (shared && fitting.includes(shared)) {
    return {
      ...base,
      unit: shared,
      confidence: 0.65,
      why: `no unit is stated; the file's other temperatures are in ${shared}, and the values fit it`,
    };
  }
  if (quantity.dimension === 'acceleration' && Math.abs(values.middle) < 3) {
    return { ...base, unit: 'g0', confidence: 0.8, why: 'no unit is stated; values about 1 are load factors' };
  }
  return {
    ...base,
    unit: null,
    confidence: 0.4,
    why: 'no unit is stated and the values fit several',
    ask: fitting.length > 0 ? fitting : [...quantity.tradeUnits],
  };
}

function judgeStated(quantity: Quantity, stated: Unit, values: ValueSummary | null, facts: FileFacts): UnitChoice {
  const sure = {
    unit: stated.id,
    confidence: 1,
    why: `the unit ${stated.symbol || stated.id} is stated`,
    stated: true,
    contradictory: false,
    ask: [],
  };
  if (!values || quantity.dimension === 'none') return sure;
  const others = quantity.tradeUnits.filter((id) => id !== stated.id && fits(quantity, id, values, facts));
  const asStated = toSi(values.high, stated.id);
  const warm = RUNNING_AT_LEAST[quantity.name];
  const tooCold =
    facts.engineRan && warm !== undefined && asStated < warm && others.some((id) => toSi(values.high, id) >= warm);
  const outside = !inside(quantity, toSi(values.middle, stated.id));
  if ((tooCold || outside) && others.length > 0) {
    return {
      ...sure,
      unit: null,
      confidence: 0.4,
      why: `the unit ${stated.symbol} is stated, but values of ${round(values.low)} to ${round(values.high)} fit ${others.join(' or ')}`,
      contradictory: true,
      ask: [stated.id, ...others],
    };
  }
  return sure;
}

function fits(quantity: Quantity, unit: string, values: ValueSummary, facts: FileFacts): boolean {
  const within = inside(quantity, toSi(values.low, unit)) && inside(quantity, toSi(values.high, unit));
  const warm = RUNNING_AT_LEAST[quantity.name];
  return within && !(facts.engineRan && warm !== undefined && toSi(values.high, unit) < warm);
}

const inside = (quantity: Quantity, si: number) => si >= quantity.plausible[0] && si <= quantity.plausible[1];
const round = (value: number) => String(Number(value.toPrecision(4)));
