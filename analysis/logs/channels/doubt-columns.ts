/** Names that the values speak against: swapped coolant sensors, a track from magnetic north, a load factor less one, air pressure as a setting. */
import { median } from '../../numbers/index.ts';
import { differenceFromSi, fromSi, toSi } from '../../units/index.ts';
import { pathSteps, trackOffset } from '../relations/path-speed.ts';
import { someRows } from '../relations/scale-evidence.ts';
import type { Draft } from './recognise.ts';

/** A true track may differ by this much and its scatter from the way between positions, deg. */
const TRACK_DEGREES = 3;
/** Colder out than in by this much on the whole is no lag, K. */
const SWAPPED_KELVIN = 2;

/**
 * Put the doubts into questions.
 * @param drafts columns on their way; their questions are set
 * @param t seconds of the rows, s
 */
export function doubtColumns(drafts: readonly Draft[], t: Float64Array): void {
  const of = (name: string) => drafts.find((one) => one.quantity?.name === name && one.numbers && !one.confirmed);
  doubtCoolant(of('coolant-temperature'), of('coolant-temperature-in'), t);
  doubtTrack(drafts, of('track-true'), t);
  doubtLoadFactor(of('normal-acceleration'));
  doubtSetting(of('altimeter-setting'));
}

function doubtCoolant(out: Draft | undefined, back: Draft | undefined, t: Float64Array): void {
  const [unitOut, unitBack] = [out?.choice?.unit, back?.choice?.unit];
  if (!out?.numbers || !back?.numbers || !unitOut || !unitBack) return;
  const rises = [...someRows(t.length)].flatMap((row) => {
    const hot = toSi(out.numbers?.[row] ?? Number.NaN, unitOut);
    const rise = hot - toSi(back.numbers?.[row] ?? Number.NaN, unitBack);
    return Number.isFinite(rise) && hot > WARM ? [rise] : [];
  });
  if (rises.length < 20 || !(median(rises) < -SWAPPED_KELVIN)) return;
  out.question = {
    id: `quantity:${out.header.column}`,
    question: `Are "${out.header.column}" and "${back.header.column}" the wrong way round?`,
    choices: ['coolant-temperature', 'coolant-temperature-in', 'ignore'],
    because: `the coolant named as leaving the engine is ${(-median(rises)).toFixed(1)} K colder than the one named as entering it`,
    column: out.header.column,
    concerns: ['coolant-temperature', 'coolant-temperature-in'],
  };
}

const WARM = toSi(40, 'degC');

function doubtTrack(drafts: readonly Draft[], track: Draft | undefined, t: Float64Array): void {
  const numbersOf = (name: string) => drafts.find((one) => one.quantity?.name === name)?.numbers;
  const [latitude, longitude] = [numbersOf('latitude'), numbersOf('longitude')];
  if (!track?.numbers || track.choice?.unit !== 'deg' || !latitude || !longitude) return;
  const found = trackOffset(pathSteps(latitude, longitude, t), track.numbers);
  if (!found || found.scatter > TRACK_DEGREES || Math.abs(found.degrees) <= TRACK_DEGREES + found.scatter) return;
  track.question = {
    id: `quantity:${track.header.column}`,
    question: `Is the column "${track.header.column}" measured from true north?`,
    choices: ['track-true', 'ignore'],
    because: `it differs by ${found.degrees.toFixed(0)} degrees, always the same, from the way between the positions: it may be from magnetic north`,
    column: track.header.column,
    concerns: ['track-true'],
  };
}

function doubtLoadFactor(load: Draft | undefined): void {
  const unit = load?.choice?.unit;
  if (!load?.values || !unit) return;
  const middle = differenceFromSi(toSi(load.values.middle, unit), 'g0');
  if (Math.abs(middle - 1) < 0.5) return;
  const shown = fromSi(toSi(load.values.middle, unit), 'g0').toFixed(2);
  load.question = {
    id: `quantity:${load.header.column}`,
    question: `Does the column "${load.header.column}" show 1 g in level flight?`,
    choices: ['normal-acceleration', 'ignore'],
    because: `its middle value is ${shown} g, and the glossary's load factor is 1 g in level flight`,
    column: load.header.column,
    concerns: ['normal-acceleration'],
  };
}

/** A setting is turned now and then; what takes a new value again and again is a barometer. */
function doubtSetting(setting: Draft | undefined): void {
  if (!setting?.numbers) return;
  const { numbers } = setting;
  const rows = someRows(numbers.length);
  let before = Number.NaN;
  let changes = 0;
  for (const row of rows) {
    const value = numbers[row] ?? Number.NaN;
    if (!Number.isFinite(value)) continue;
    if (Number.isFinite(before) && value !== before) changes += 1;
    before = value;
  }
  if (changes <= MOST_TURNS || changes <= 0.05 * rows.length) return;
  setting.question = {
    id: `quantity:${setting.header.column}`,
    question: `Is the column "${setting.header.column}" the altimeter setting?`,
    choices: ['altimeter-setting', 'ignore'],
    because: `it changes ${changes} times in ${rows.length} rows: a setting is turned now and then, the pressure of the air changes all the time`,
    column: setting.header.column,
    concerns: ['altimeter-setting'],
  };
}

const MOST_TURNS = 10;
