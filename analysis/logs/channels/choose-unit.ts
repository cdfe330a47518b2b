/** The unit of a column: stated, told by the values, shared with its family, or asked for. Never corrected silently. */
import { type Quantity, toSi, type Unit, unitOf } from '../../units/index.ts';
import { type FileContext, familyOf } from './file-context.ts';
import { USUAL, USUAL_WHEN_RUNNING } from './typical-values.ts';
import type { UnitText } from './unit-text.ts';
import type { ValueSummary } from './value-summary.ts';

export interface UnitChoice {
  /** unit id, or null when it must be asked */
  unit: string | null;
  /** how sure the unit is, 0 to 1 */
  confidence: number;
  why: string;
  stated: boolean;
  /** what is wrong with the unit stated: the values cannot be, or another unit fits them and this one does not */
  doubt: 'implausible' | 'contradictory' | null;
  /** units the values allow, the stated one first; what is asked between when nothing settles it */
  candidates: string[];
}

/**
 * Unit of a column for the quantity its name tells.
 * @param quantity glossary entry, object
 * @param text the unit as written, object
 * @param values extent of the values as written, or null when there are none
 * @param context what else the file shows, object
 * @returns the unit, or what to ask
 */
export function chooseUnit(
  quantity: Quantity,
  text: UnitText,
  values: ValueSummary | null,
  context: FileContext,
): UnitChoice {
  if (quantity.dimension === 'none') return certain('none', 'it has no unit', true);
  const stated = text.units.filter((unit) => unit.dimension === quantity.dimension);
  if (stated.length > 0) return judgeStated(quantity, stated, values, context);
  return guess(quantity, values, context);
}

const certain = (unit: string, why: string, stated: boolean, confidence = 1): UnitChoice => ({
  unit,
  confidence,
  why,
  stated,
  doubt: null,
  candidates: [unit],
});

function judgeStated(
  quantity: Quantity,
  stated: readonly Unit[],
  values: ValueSummary | null,
  context: FileContext,
): UnitChoice {
  const possible = values ? stated.filter((unit) => isPlausible(quantity, toSi(values.middle, unit.id))) : stated;
  const unit = possible[0] ?? stated[0];
  if (!unit) return guess(quantity, values, context);
  const sure = certain(unit.id, `the unit ${unit.symbol || unit.id} is stated`, true);
  if (!values) return sure;
  const others = quantity.tradeUnits.filter((id) => id !== unit.id && fits(quantity, id, values, context));
  const seen = `${short(values.low)} to ${short(values.high)}`;
  if (possible.length === 0) {
    const instead = others.length > 0 ? `; they fit ${others.join(' or ')}` : '';
    return {
      ...sure,
      unit: null,
      confidence: 0.3,
      why: `the unit ${unit.symbol} is stated, but no airplane has a ${words(quantity.name)} of ${seen} ${unit.symbol}${instead}`,
      doubt: others.length > 0 ? 'contradictory' : 'implausible',
      candidates: [unit.id, ...(others.length > 0 ? others : quantity.tradeUnits.filter((id) => id !== unit.id))],
    };
  }
  if (!isUsual(quantity, unit.id, values, context) && others.length > 0) {
    return {
      ...sure,
      unit: null,
      confidence: 0.4,
      why: `the unit ${unit.symbol} is stated, but values of ${seen} are usual in ${others.join(' or ')} and not in ${unit.symbol}`,
      doubt: 'contradictory',
      candidates: [unit.id, ...others],
    };
  }
  return sure;
}

function guess(quantity: Quantity, values: ValueSummary | null, context: FileContext): UnitChoice {
  const [first = 'none'] = quantity.tradeUnits;
  if (!values) return certain(first, 'no unit is stated and there is no value to judge by', false, 0.3);
  if (quantity.tradeUnits.includes('%')) {
    const unit = values.high > 1.5 || values.low < -1.5 ? '%' : '1';
    return certain(
      unit,
      `no unit is stated; values up to ${short(values.high)} are ${unit === '%' ? 'percent' : 'a share'}`,
      false,
      0.8,
    );
  }
  if (quantity.tradeUnits.length === 1) {
    if (isPlausible(quantity, toSi(values.middle, first))) {
      return certain(first, `no unit is stated; ${unitOf(first).symbol} is the only usual one`, false, 0.9);
    }
    return {
      ...open([first]),
      why: `no unit is stated, and in ${first} no airplane has values of ${short(values.middle)}`,
    };
  }
  if (quantity.dimension === 'acceleration' && Math.abs(values.middle) < 3 && values.high - values.low < 8) {
    return certain('g0', 'no unit is stated; values about 1 or 0 are load factors', false, 0.8);
  }
  const angle = angleUnit(quantity, values);
  if (angle) return angle;
  const possible = quantity.tradeUnits.filter((id) => fits(quantity, id, values, context));
  // Nobody writes kelvin without saying so (common practice, no source).
  const fitting = possible.length > 1 ? possible.filter((id) => id !== 'K') : possible;
  const seen = `${short(values.low)} to ${short(values.high)}`;
  if (fitting.length === 1 && fitting[0]) {
    const why = `no unit is stated; only ${fitting[0]} makes values of ${seen} usual`;
    return { ...certain(fitting[0], why, false, 0.75) };
  }
  const shared = sharedUnit(quantity, context);
  if (shared && fitting.includes(shared)) {
    const why = `no unit is stated; columns of its kind in this file are in ${shared}, and the values fit that`;
    return { ...certain(shared, why, false, 0.68), candidates: [shared, ...fitting.filter((id) => id !== shared)] };
  }
  return open(fitting.length > 0 ? fitting : quantity.tradeUnits);
}

const open = (candidates: readonly string[]): UnitChoice => ({
  unit: null,
  confidence: 0.4,
  why: 'no unit is stated and the values fit several',
  stated: false,
  doubt: null,
  candidates: [...candidates],
});

/** More than a full turn of radians is degrees; a pitch or bank that never passes a third of a radian may be either. */
function angleUnit(quantity: Quantity, values: ValueSummary): UnitChoice | null {
  if (quantity.dimension !== 'angle') return null;
  const size = Math.max(Math.abs(values.low), Math.abs(values.high));
  const isPosition = quantity.name === 'latitude' || quantity.name === 'longitude';
  if (size > 6.3 || isPosition) return certain('deg', 'no unit is stated; the values are degrees', false, 0.85);
  if (
    size > 1.6 &&
    quantity.name !== 'track-true' &&
    quantity.name !== 'heading-magnetic' &&
    quantity.name !== 'wind-direction'
  ) {
    return certain('deg', 'no unit is stated; as radians the values would be upside down', false, 0.8);
  }
  return null;
}

/** A unit all other columns of the family state; that of hot engine parts says nothing of air unless it is Celsius. */
function sharedUnit(quantity: Quantity, context: FileContext): string | undefined {
  const family = familyOf(quantity.name, quantity.dimension);
  if (!family) return undefined;
  const own = onlyOne(context.stated.get(family));
  if (own !== undefined) return own;
  if (family === 'air-temperature' && onlyOne(context.stated.get('engine-temperature')) === 'degC') return 'degC';
  if (family === 'engine-temperature' && onlyOne(context.stated.get('air-temperature')) === 'degF') return 'degF';
  if (family === 'volume-flow') return { gal: 'gal/h', L: 'L/h' }[onlyOne(context.stated.get('volume')) ?? ''];
  if (family === 'volume') return { 'gal/h': 'gal', 'L/h': 'L' }[onlyOne(context.stated.get('volume-flow')) ?? ''];
  return undefined;
}

const onlyOne = (units: ReadonlySet<string> | undefined) => (units?.size === 1 ? [...units][0] : undefined);

function fits(quantity: Quantity, unit: string, values: ValueSummary, context: FileContext): boolean {
  const [low, high] = [toSi(values.low, unit), toSi(values.high, unit)];
  return isPlausible(quantity, low) && isPlausible(quantity, high) && isUsual(quantity, unit, values, context);
}

function isUsual(quantity: Quantity, unit: string, values: ValueSummary, context: FileContext): boolean {
  const usual = context.engineRan ? (USUAL_WHEN_RUNNING[quantity.name] ?? USUAL[quantity.name]) : USUAL[quantity.name];
  if (!usual) return true;
  const high = toSi(values.high, unit);
  return high >= usual[0] && high <= usual[1];
}

/** A tenth of the range beyond its ends is a sensor that is a little out, not another unit. */
function isPlausible(quantity: Quantity, si: number): boolean {
  const [low, high] = quantity.plausible;
  const slack = 0.1 * (high - low);
  return si >= low - slack && si <= high + slack;
}

const words = (name: string) => name.replaceAll('-', ' ');
const short = (value: number) => String(Number(value.toPrecision(4)));
