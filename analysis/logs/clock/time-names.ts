/** Names of columns that tell the time (common practice, no source). */

export type TimeRole =
  | 'date-time'
  | 'date'
  | 'time'
  | 'elapsed'
  | 'epoch'
  | 'offset'
  | 'half-day'
  | 'fraction'
  | 'year'
  | 'month'
  | 'day'
  | 'hour'
  | 'minute'
  | 'second'
  | 'gps-week'
  | 'gps-seconds'
  | 'counter';

const EXACT: Readonly<Record<string, TimeRole>> = {
  year: 'year', yr: 'year', yyyy: 'year', month: 'month', mon: 'month', mm: 'month', day: 'day', dd: 'day',
  hour: 'hour', hours: 'hour', hr: 'hour', hh: 'hour', minute: 'minute', minutes: 'minute', min: 'minute', mi: 'minute',
  second: 'second', seconds: 'elapsed', sec: 'second', ss: 'second', secs: 'elapsed', millisecond: 'fraction',
  milliseconds: 'fraction', millis: 'elapsed', ms: 'fraction', msec: 'fraction', 'am/pm': 'half-day', ampm: 'half-day',
  'am pm': 'half-day', t: 'elapsed', s: 'elapsed', index: 'counter', idx: 'counter', record: 'counter', rec: 'counter', row: 'counter',
  sample: 'counter', 'sample no': 'counter', count: 'counter', counter: 'counter', 'record no': 'counter', no: 'counter',
  '#': 'counter', n: 'counter', seq: 'counter', frame: 'counter', 'gps week': 'gps-week', gpsweek: 'gps-week',
  tow: 'gps-seconds', 'gps tow': 'gps-seconds', 'gps seconds': 'gps-seconds', 'time of week': 'gps-seconds',
  'gps time of week': 'gps-seconds', itow: 'gps-seconds', 'i tow': 'gps-seconds', clock: 'time', week: 'gps-week',
  wn: 'gps-week', 'week no': 'gps-week', 'week number': 'gps-week', 'gps week number': 'gps-week', 'gps wk': 'gps-week',
}; // biome-ignore format: a list

const PATTERNS: readonly [RegExp, TimeRole][] = [
  [
    /\b(utc ?ofst|utc ?offset|tz ?offset|gmt ?offset|time ?zone|timezone|tz|zone|ofst|offset hours|zeitzone)\b/,
    'offset',
  ],
  [/\b(epoch|unix|posix)\b/, 'epoch'],
  [
    /\b(elapsed|elapsd|since start|run ?time|uptime|up time|session time|rel(ative)? time|time since|ticks?|laufzeit|mission time|flight time)\b/,
    'elapsed',
  ],
  [/\b(date ?time|timestamp|time ?stamp|datetime|date and time|date & time|datum ?uhrzeit|iso ?time)\b/, 'date-time'],
  [/\b(date|datum|fecha|dato|giorno|data)\b/, 'date'],
  [/\b(time|utc|gmt|zulu|zeit|uhrzeit|heure|hora|ora|tijd|tid|hms)\b/, 'time'],
  [/\b(sample|record|row|frame|line|seq)\b ?(no|nr|num|number|count|index|#)/, 'counter'],
];

/** A part of a date or a time with its clock before it: `UTC Year`, `gps_hour`; `time_sec` is a time that runs on. */
const PART = /^(?:(?:utc|gps|gmt|local|lcl|rtc) (year|month|day|hours?|minutes?|second|sec)|date (year|month|day))$/;

/**
 * What a name says about time.
 * @param name header text without its unit, text
 * @returns the role, or null when the name speaks of no time
 */
export function timeRole(name: string): TimeRole | null {
  const bare = name
    .trim()
    .replace(/(\p{Ll})(\p{Lu})/gu, '$1 $2')
    .toLowerCase()
    .replace(/[_.:-]+/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();
  if (Object.hasOwn(EXACT, bare)) return EXACT[bare] ?? null;
  const m = PART.exec(bare);
  const part = m?.[1] ?? m?.[2];
  if (part !== undefined && Object.hasOwn(EXACT, part)) return EXACT[part] ?? null;
  for (const [pattern, role] of PATTERNS) if (pattern.test(bare)) return role;
  return null;
}

/**
 * The zone a name tells: `UTC`, `GMT`, `Zulu`, or local.
 * @param text a column name or its unit, text
 * @returns `UTC`, `local`, or null when it tells none
 */
export function zoneIn(text: string): 'UTC' | 'local' | null {
  if (/\b(utc|gmt|zulu|gps ?time)\b/i.test(text.replace(/_/g, ' ')) || /\(z\)|\bZ\b/.test(text)) return 'UTC';
  if (/\b(lcl|local|loc|lt|ortszeit)\b/i.test(text.replace(/_/g, ' '))) return 'local';
  return null;
}
