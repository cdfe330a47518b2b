/** What a written unit may mean: `degF`, `ft msl`, `deg mag`, `gal/hr`, `yyyy-mm-dd`. */
import { type Dimension, type Unit, unitsSpelt } from '../../units/index.ts';

export interface UnitText {
  /** as written, trimmed */
  text: string;
  /** units that are spelt so, several where a spelling is shared */
  units: Unit[];
  /** words that go with the unit and tell quantities apart */
  qualifier: 'true' | 'magnetic' | 'sea-level' | 'ellipsoid' | 'barometric' | 'ground' | null;
  /** true for `hh:mm:ss`, `yyyy-mm-dd`, `UTC` and the like */
  isClock: boolean;
}

const QUALIFIERS: readonly [RegExp, UnitText['qualifier']][] = [
  [/\b(true|tru)\b/i, 'true'],
  // `°T`, `deg M`
  [/(?<=^(°|deg) ?)t$/i, 'true'],
  [/(?<=^(°|deg) ?)m$/i, 'magnetic'],
  [/\b(mag|magnetic)\b/i, 'magnetic'],
  [/\b(a?msl|sea level|geoid)\b/i, 'sea-level'],
  [/\b(wgs ?-?(84)?|hae|ellipsoid(al)?)\b/i, 'ellipsoid'],
  [/\b(baro|barometric|press(ure)?|std|ind(icated)?)\b/i, 'barometric'],
  [/\bagl\b/i, 'ground'],
];

/** Spellings beside those of the unit list, as recorder files write them. */
const MORE: Readonly<Record<string, string>> = {
  // where only the values tell which is meant
  hg: 'inhg|mmhg',
  inch: 'inhg',
  inches: 'inhg',
  in: 'inhg',

  'deg/sec': 'deg/s', 'deg.': 'deg', degs: 'deg', 'ft/minute': 'ft/min', 'ft / min': 'ft/min', 'feet/minute': 'ft/min',
  'in. hg.': 'inhg', inhga: 'inhg', 'inches of mercury': 'inhg', 'in/hg': 'inhg', '”hg': 'inhg', 'u.s. gal': 'gal',
  gallons_us: 'gal', 'gal/hour': 'gal/h', 'gal./h': 'gal/h', 'us gph': 'gph', 'usgph': 'gph', 'us gal/hr': 'us gal/h',
  'l / h': 'l/h', 'ltr/hr': 'l/h', 'liter/h': 'l/h', 'litre/h': 'l/h', 'l/std': 'l/h', 'lb/sq in': 'psi', psia: 'psi',
  'm/sec': 'm/s', 'meter/s': 'm/s', 'km/hour': 'km/h', 'kt.': 'kt', kt_: 'kt', "g's": 'g0', 'g-force': 'g0',
  rev: 'rpm', revs: 'rpm', 'revs/min': 'rpm', 'r.p.m.': 'rpm', 'amp.': 'a', 'volt.': 'v', 'v dc': 'v', mbars: 'hpa',
  'deg celsius': 'degc', 'degrees celsius': 'degc', 'deg fahrenheit': 'degf', 'degrees fahrenheit': 'degf',
  'degree c': 'degc', 'degree f': 'degf', '℃': 'degc', '℉': 'degf', 'deg k': 'k', '° k': 'k', '�c': 'degc', '�f': 'degf',
  '�': 'deg', '1/min': 'rpm', 'u/min': 'rpm', 'min-1': 'rpm', 'min^-1': 'rpm', 'per cent': '%', 'deg n': 'deg',
  'deg e': 'deg', 'deg w': 'deg', 'metres/sec': 'm/s', 'meters/sec': 'm/s', 'ft/min.': 'ft/min', 'µs': 'us',
  'tr/min': 'rpm', 't/min': 'rpm', 'tours/min': 'rpm', 'giri/min': 'rpm', 'vueltas/min': 'rpm', 'upm': 'rpm',
  microsec: 'us', 'millisec': 'ms', millis: 'ms',
}; // biome-ignore format: a list

const CLOCK =
  /^(utc|gmt|zulu|local|lcl|[ymdhs]{1,4}([-/.: t][ymdhs]{1,4}){1,6}(\.[sfx0]+)?|hh:?mm:?ss(\.s+)?|iso ?8601|am\/?pm|time|date|yyyymmdd|hhmmss)$/i;

/**
 * Read a unit as a file writes it.
 * @param raw the unit text, with or without brackets, text
 * @returns what it may mean; no units when it is none that is known
 */
export function readUnitText(raw: string): UnitText {
  const text = raw
    .trim()
    .replace(/^[#(["'{]+|[)\]"'}]+$/g, '')
    .trim();
  const out: UnitText = { text, units: [], qualifier: null, isClock: false };
  if (text === '') return out;
  // `m/s` looks like minutes and seconds, and is a speed.
  if (CLOCK.test(text) && unitsSpelt(text).length === 0) {
    out.isClock = true;
    return out;
  }
  let bare = text.replace(/_/g, ' ');
  for (const [pattern, qualifier] of QUALIFIERS) {
    if (!pattern.test(bare)) continue;
    const without = bare.replace(pattern, '').replace(/[(),]/g, ' ').trim();
    if (without === '') continue;
    out.qualifier = qualifier;
    bare = without;
    break;
  }
  out.units = lookUp(bare);
  return out;
}

function lookUp(text: string): Unit[] {
  const lower = text.trim().replace(/\s+/g, ' ').toLowerCase();
  const direct = unitsSpelt(lower);
  const other = Object.hasOwn(MORE, lower) ? MORE[lower] : undefined;
  const more = other === undefined ? [] : other.split('|').flatMap((spelling) => unitsSpelt(spelling));
  return [...direct, ...more];
}

/**
 * The unit of a dimension among those a text may mean.
 * @param unitText a unit as read, object
 * @param dimension wanted dimension, text
 * @returns the unit, or undefined
 */
export function unitIn(unitText: UnitText, dimension: Dimension): Unit | undefined {
  return unitText.units.find((unit) => unit.dimension === dimension);
}

/** True where the text is a unit or a date format: what stands in a units row. */
export function isUnitText(raw: string): boolean {
  const read = readUnitText(raw);
  return read.units.length > 0 || read.isClock;
}
