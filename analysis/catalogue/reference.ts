/**
 * References: the airplane's own numbers that the catalogue's texts name, `{{kind path}}`.
 *
 * Each is answered from the description, worked out from other numbers (derived.ts), or said to be missing with its
 * meaning. A missing one is never replaced by a general figure. A number converted into another unit than it was
 * entered in is rounded to its careful side: an upper limit down, a lower limit up.
 */
import type { Airplane } from '../airplane/index.ts';
import { fromSi } from '../units/index.ts';
import { DERIVED, type Known, type Worked } from './derived.ts';
import { type Measure, shows } from './measures.ts';
import { plainNumber, roundedTo } from './numerals.ts';
import { REFERENCES, type Reference } from './references.ts';

/** A number a card needs that the airplane's description lacks. */
export interface MissingNumber {
  /** reference as in the catalogue, such as `limits.coolant.caution` */
  path: string;
  /** what it is, in words */
  meaning: string;
}

export interface ResolvedNumber {
  kind: 'number';
  path: string;
  meaning: string;
  /** number, unit, and the words behind it: `95 KIAS est.`, `4000 ft above ground` */
  text: string;
  number: string;
  symbol: string;
  /** words behind the unit: an altitude's reference, `est.` for an estimate */
  behind: string;
  si: number;
  /** unit id of the number as printed */
  unit: string;
  status: Worked['status'];
  /** where it comes from, or how it was worked out */
  from: string;
}

export interface UnresolvedNumber extends MissingNumber {
  kind: 'missing';
  /** blank with its unit: `____ KIAS` */
  text: string;
  symbol: string;
}

export type Resolved = ResolvedNumber | UnresolvedNumber;

const BY_PATH = new Map(REFERENCES.map((one) => [one.path, one]));

/**
 * The list entry of a reference.
 * @param path reference path, such as `speeds.climb`, text
 * @returns the entry, or undefined when the catalogue knows no such number
 */
export function referenceOf(path: string): Reference | undefined {
  return BY_PATH.get(path);
}

/**
 * A reference answered for an airplane.
 * @param path reference path, text
 * @param airplane the description, object
 * @param known accepted results and what they have shown, object
 * @param less margin taken off, SI difference of the same quantity
 * @returns the number as printed with its SI value, or what is missing
 */
export function resolveReference(path: string, airplane: Airplane, known: Known = {}, less = 0): Resolved {
  const reference = BY_PATH.get(path);
  if (!reference) return { kind: 'missing', path, meaning: `a number called ${path}`, text: '____', symbol: '' };
  const worked = DERIVED[path]?.(airplane, known) ?? stated(airplane, path);
  const measure = measureOf(reference, worked);
  const scale = worked?.scale ?? 'IAS';
  const show = shows(measure, airplane, scale);
  if (worked === null) {
    return {
      kind: 'missing',
      path,
      meaning: reference.meaning,
      text: `____ ${show.symbol}`.trim(),
      symbol: show.symbol,
    };
  }
  const si = worked.si - less;
  const entered = less === 0 && worked.entered?.unit === show.unit ? worked.entered.value : null;
  const number =
    entered === null
      ? roundedTo(fromSi(si, show.unit), show.decimals, reference.side ?? 'nearest')
      : plainNumber(entered);
  const behind = [reference.behind ?? '', worked.status === 'estimated' ? 'est.' : ''].filter(Boolean).join(' ');
  const text = [number, show.symbol, behind].filter(Boolean).join(' ');
  const { meaning } = reference;
  return {
    kind: 'number',
    path,
    meaning,
    text,
    number,
    symbol: show.symbol,
    behind,
    si,
    unit: show.unit,
    status: worked.status,
    from: worked.from,
  };
}

function measureOf(reference: Reference, worked: Worked | null): Measure {
  if (reference.measure !== 'setting') return reference.measure;
  return worked?.entered?.unit === 'rpm' || worked?.entered?.unit === '1/s' ? 'rpm' : 'manifold-pressure';
}

/** A stated number of the description at a dotted path. */
function stated(airplane: Airplane, path: string): Worked | null {
  let at: unknown = airplane;
  for (const key of path.split('.')) {
    if (typeof at !== 'object' || at === null || !(key in at)) return null;
    at = Reflect.get(at, key);
  }
  return isStated(at)
    ? {
        si: at.si,
        status: at.status ?? 'stated',
        from: at.source ?? 'the airplane’s description',
        entered: { value: at.value, unit: at.unit },
        ...(at.scale ? { scale: at.scale } : {}),
      }
    : null;
}

interface StatedLike {
  si: number;
  value: number;
  unit: string;
  source?: string;
  status?: 'estimated' | 'designer' | 'measured';
  scale?: 'IAS' | 'CAS' | 'TAS';
}

function isStated(at: unknown): at is StatedLike {
  return typeof at === 'object' && at !== null && 'si' in at && 'unit' in at && 'value' in at;
}
