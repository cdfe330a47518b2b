/** The field of a stated number: value, unit, how far known, source; the unit is the instruments' own where it can be. */
import { siUnitFor } from '../../analysis/units/index.ts';
import { type FieldPart, type FieldWords, optionsOf, statedField } from '../parts/field.view.ts';
import { isObject, valueAt } from '../words/json-path.ts';
import { USUAL_UNITS, unitShown } from '../words/unit-shown.ts';
import type { Option, StatedShape } from './schema-shape.ts';

const STATUSES: readonly Option[] = [
  { value: 'estimated', text: 'estimated' },
  { value: 'designer', text: 'designer’s or maker’s figure' },
  { value: 'measured', text: 'measured in this airplane' },
];
const SCALES: readonly Option[] = ['IAS', 'CAS', 'TAS'].map((value) => ({ value, text: value }));

/** What a form knows when it shows a stated number. */
export interface Shown {
  json: unknown;
  typed: ReadonlyMap<string, readonly string[]>;
  /** value and unit alone, where no source is needed */
  brief: boolean;
}

/**
 * The field of a stated number.
 * @param words its name, label and what is to be known
 * @param shape what it takes
 * @param path its field path, text
 * @param making the description and what was typed
 */
export function statedLeaf(words: FieldWords, shape: StatedShape, path: string, making: Shown): FieldPart {
  const at = (key: string) => {
    const value = valueAt(making.json, `${path}.${key}`);
    return making.typed.get(`${path}.${key}`)?.at(-1) ?? (value === undefined ? '' : String(value));
  };
  const unit = at('unit');
  const statuses = shape.needsStatus ? STATUSES : [{ value: '', text: 'not said' }, ...STATUSES];
  return statedField(words, {
    value: at('value'),
    half: at('u95'),
    source: at('source'),
    enteredBy: at('enteredBy'),
    needsSource: shape.needsSource,
    brief: making.brief && !shape.needsSource,
    units: optionsOf(shape.units, unit === '' ? preferredUnit(path, shape, making) : unit),
    statuses: optionsOf(statuses, at('status')),
    scales: shape.hasScale ? optionsOf(SCALES, at('scale') || 'IAS') : [],
  });
}

/** The unit a new figure starts with: the one the instruments show, where it is among those offered. */
function preferredUnit(path: string, shape: StatedShape, making: Shown): string {
  const first = shape.units[0]?.value ?? '1';
  const key = (path.split('.').at(-1) ?? '').replace(/([a-z])([A-Z])/g, '$1-$2').toLowerCase();
  const stated = valueAt(making.json, 'instruments.units');
  const units = { ...USUAL_UNITS, ...(isObject(stated) ? stated : {}) };
  const wanted = unitShown(key, siUnitFor(first), units);
  return shape.units.find((one) => one.value === wanted)?.value ?? first;
}
