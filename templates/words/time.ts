/** Times as people read them: their own zone first, UTC beside; spans of a log as minutes and seconds. */

/** A moment in the person's zone, with UTC beside it. */
export interface Moment {
  /** `4 May 2031, 14:03` */
  local: string;
  /** `13:03 UTC`, with the date where it differs */
  utc: string;
  /** for `<time datetime>` */
  iso: string;
}

const parts = (ms: number, timeZone: string) => {
  const format = new Intl.DateTimeFormat('en-GB', {
    timeZone,
    year: 'numeric',
    month: 'short',
    day: 'numeric',
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
  });
  const found = new Map(format.formatToParts(ms).map((part) => [part.type, part.value]));
  const date = `${found.get('day')} ${found.get('month')} ${found.get('year')}`;
  return { date, clock: `${found.get('hour')}:${found.get('minute')}` };
};

/**
 * A moment in words.
 * @param when ISO 8601 text, or milliseconds since 1970 UTC
 * @param zone IANA name of the person's zone, text
 * @returns local and UTC texts
 */
export function momentInWords(when: string | number, zone: string): Moment {
  const ms = typeof when === 'number' ? when : Date.parse(when);
  if (!Number.isFinite(ms)) return { local: 'time not known', utc: '', iso: '' };
  const here = parts(ms, zone);
  const utc = parts(ms, 'UTC');
  return {
    local: `${here.date}, ${here.clock}`,
    utc: `${here.date === utc.date ? '' : `${utc.date}, `}${utc.clock} UTC`,
    iso: new Date(ms).toISOString(),
  };
}

/** Seconds of a log as `m:ss`, or `h:mm:ss` from one hour on. */
export function clockInWords(seconds: number): string {
  const sign = seconds < 0 ? '−' : '';
  const all = Math.round(Math.abs(seconds));
  const h = Math.floor(all / 3600);
  const m = Math.floor((all % 3600) / 60);
  const s = String(all % 60).padStart(2, '0');
  return h > 0 ? `${sign}${h}:${String(m).padStart(2, '0')}:${s}` : `${sign}${m}:${s}`;
}

/** `2:05 to 7:40`. */
export function spanInWords(fromSeconds: number, toSeconds: number): string {
  return `${clockInWords(fromSeconds)} to ${clockInWords(toSeconds)}`;
}

/** Minutes as `45 min` or `3 h 20 min`. */
export function minutesInWords(minutes: number): string {
  const whole = Math.round(minutes);
  if (whole < 90) return `${whole} min`;
  const rest = whole % 60;
  return rest === 0 ? `${(whole - rest) / 60} h` : `${(whole - rest) / 60} h ${rest} min`;
}
