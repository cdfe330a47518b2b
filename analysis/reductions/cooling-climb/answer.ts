/** One temperature of one climb answered: its peak, the hot day, the least margin, or why there is none. */
import type { Airplane } from '../../airplane/index.ts';
import { type HotDayLaw, limitsOf, type PartLimits, type Regime } from '../../models/index.ts';
import { type Combined, combineUncertainty, type Scatter } from '../../numbers/index.ts';
import { type Flag, flag } from '../../remarks/index.ts';
import { show } from '../../units/index.ts';
import type { Ahead } from './ahead.ts';
import type { Air } from './air.ts';
import { type Corrected, correctedAt, onHotDay, type RegulatedStart, readingSources } from './corrected.ts';
import type { Course } from './course.ts';
import type { Peak } from './peak.ts';

/** What was found of a temperature in a climb before the hot day is asked about. */
export interface Found {
  course: Course;
  peak: Peak;
  regimes: readonly Regime[];
  air: Air;
  /** lag of its sensor, s */
  lag: number;
  /** share of the thermostat's range, and of the exit's travel, still unused at the peak; null where not known */
  thermostatLeft: number | null;
  exitLeft: number | null;
  /** settings at the peak, null where not logged */
  settings: Readonly<Record<string, number | null>>;
  ahead: Ahead | null;
  /** where a thermostat let go of it in this climb, or null */
  start: RegulatedStart | null;
  /** the log shows that power fell with the air */
  powerFalls: boolean;
  /** the climb with some minutes before and after it, for the eye alone */
  around: Around;
}

export interface Around {
  t: Float64Array;
  T: Float64Array;
  air: Float64Array;
  /** sample at which the climb begins */
  from: number;
}

export interface Answer extends Found {
  limits: PartLimits;
  regime: Regime;
  /** of the peak as read; null where there was none */
  reading: Combined | null;
  /** at the peak; null where there is no peak, it was regulated or the air is not known */
  corrected: Corrected | null;
  /** the hottest instant on the hot day; null as above or where nobody knows what governs */
  hottest: Corrected | null;
  /** margins are given */
  counts: boolean;
  /** why something is withheld, or what a value rests on */
  flags: Flag[];
}

/**
 * Answer one temperature of one climb.
 * @param found its peak and what governed, object
 * @param airplane the description, or undefined
 * @param law the hot day, object
 * @param repeat scatter of one climb, object
 * @returns the answer
 * @throws OutOfRange when the height is beyond any airplane's
 */
export function answerOf(found: Found, airplane: Airplane | undefined, law: HotDayLaw, repeat: Scatter): Answer {
  const { course, peak, regimes, air, lag, start, powerFalls } = found;
  const { at } = peak;
  const regime = regimes[at] ?? 'unknown';
  const flags: Flag[] = [];
  const open = (one: Regime | undefined) => one === 'fully-open' || (one === 'unknown' && course.part === 'oil');
  const seen = peak.peaked && !peak.hidden;
  const governed = regime === 'regulated' || regime === 'warming';
  const reference = { law, airplane, air, repeat, lag, start, powerFalls };
  const given = seen && !governed && course.way.airRead[at] === 1;
  const counts = given && open(regime);
  const corrected = given ? correctedAt(course, at, reference) : null;
  const hottest = counts
    ? correctedAt(course, hottestSample(course, law, (i) => open(regimes[i])) ?? at, reference)
    : null;
  const why = whyWithheld(found, regime, given);
  if (why) flags.push(why);
  if (corrected && corrected.correction < 0) flags.push(notCredited(found, corrected));
  if (counts && regime === 'unknown') {
    flags.push(
      flag(
        'regime-unknown',
        `${nameOf(found)}: whether its cooler has a thermostat of its own is not known; if it has, a hotter day opens it further than these figures say`,
      ),
    );
  }
  return {
    ...found,
    limits: limitsOf(airplane, course.part),
    regime,
    reading: seen ? combineUncertainty(readingSources(course, at, reference).filter(({ u }) => u > 0)) : null,
    corrected,
    hottest,
    counts,
    flags,
  };
}

// The corrected trace is highest where the margin is least: that need not be at the highest reading.
function hottestSample(course: Course, law: HotDayLaw, counts: (i: number) => boolean): number | null {
  let [best, most] = [-1, Number.NEGATIVE_INFINITY];
  for (let i = 0; i < course.T.length; i += 1) {
    if (!counts(i) || course.way.airRead[i] !== 1 || Number.isNaN(course.T[i] ?? Number.NaN)) continue;
    const { value } = onHotDay(course, i, law);
    if (value <= most) continue;
    [best, most] = [i, value];
  }
  return best < 0 ? null : best;
}

function whyWithheld(found: Found, regime: Regime, given: boolean): Flag | null {
  const { peak, course } = found;
  const name = nameOf(found);
  const span = spanOf(found);
  if (regime === 'regulated' || regime === 'warming') {
    const left = [
      ...(found.thermostatLeft === null
        ? []
        : [`${Math.round(100 * found.thermostatLeft)} % of the thermostat’s range`]),
      ...(found.exitLeft === null ? [] : [`${Math.round(100 * found.exitLeft)} % of the exit’s travel`]),
    ];
    const words = left.length > 0 ? `; still in hand at its highest: ${left.join(', ')}` : '';
    return flag('regulated', `${name}: regulated, so the temperature says nothing of margin${words}`, span);
  }
  if (!peak.peaked) return notPeaked(found, name);
  if (peak.hidden) {
    return flag(
      'not-resolved',
      `${name}: readings are missing beside its highest, so a higher one may have gone unseen`,
      span,
    );
  }
  if (!given) {
    return flag('not-resolved', `${name}: no air temperature was read within a minute of the peak`, span);
  }
  if (regime === 'unknown' && course.part === 'coolant') {
    return flag(
      'regime-unknown',
      `${name}: nobody said where the thermostat opens, so it may have been regulating; no margin is given. Enter cooling.thermostatStart and cooling.thermostatOpen on the Airplane page, or say that there is none`,
      span,
    );
  }
  return null;
}

function notPeaked(found: Found, name: string): Flag {
  const { peak, ahead } = found;
  const words = (si: number) => show(si, 'degC', { decimals: 0 }).text;
  const next = ahead
    ? `. In the next ${Math.round((ahead.seconds[ahead.seconds.length - 1] ?? 0) / 60)} min of such a climb it would reach ${words(Math.max(...ahead.expected))}, at most ${words(Math.max(...ahead.high))}`
    : '';
  return flag(
    'not-peaked',
    `${name}: it had not peaked when the climb ended, ${words(peak.highest)} and no fall of 1 K since${next}`,
    spanOf(found),
  );
}

function notCredited(found: Found, { correction, hotAir }: Corrected): Flag {
  const { course, peak } = found;
  const words = (si: number) => show(si, 'degC', { decimals: 1 }).text;
  return flag(
    'correction-not-credited',
    `${nameOf(found)}: the air was ${words(course.way.air[peak.at] ?? 0)}, hotter than ${words(hotAir)} of the hot day; the correction of ${show(correction, 'dK', { decimals: 1 }).text} is shown and not credited`,
  );
}

/** `Coolant temperature, climb 2` */
export function nameOf({ course }: Pick<Found, 'course'>): string {
  return `${channelWords(course.quantity)}, ${course.way.label}`;
}

/** `cylinder head temperature 3` */
export function channelWords(quantity: string): string {
  const [base = quantity, index] = quantity.split('#');
  const words = base.replaceAll('-', ' ');
  return index === undefined ? words : `${words} ${index}`;
}

/** The seconds of a climb, for remarks. */
export function spanOf({ course }: Pick<Found, 'course'>): { fromSeconds: number; toSeconds: number } {
  const { t } = course.way;
  return { fromSeconds: t[0] ?? 0, toSeconds: t[t.length - 1] ?? 0 };
}
