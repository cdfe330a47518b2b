/** Margins on the hot day: of every steady point as measured, and of conditions asked for. */
import { type Airplane, accuracyOf } from '../../airplane/index.ts';
import { limitsOf, PART_WORDS } from '../../models/index.ts';
import { type Combined, combineUncertainty, propagateByShift, type UncertaintySource } from '../../numbers/index.ts';
import { type Flag, flag, OutOfRange } from '../../remarks/index.ts';
import { type Comparison, compareWithLimit } from '../../results/index.ts';
import { show } from '../../units/index.ts';
import { type AtCondition, atCondition, settingAsked } from './at-condition.ts';
import type { ChannelAnswer } from './channel-fit.ts';
import type { FlightModel } from './flight-model.ts';
import { type HotDay, onHotDay, RULE_DOUBT } from './hot-day.ts';
import type { FlightOptions } from './input.ts';
import { channelWords, isOpen, type SteadyReading, stillToCome } from './point.ts';

export interface Margin {
  label: string;
  quantity: string;
  part: ChannelAnswer['part'];
  /** measured, or fitted at a condition; null where the condition was refused */
  temperature: number | null;
  air: number;
  hotAir: number;
  /** null while something regulates, or nothing can be said */
  corrected: number | null;
  limit: number | null;
  margin: number | null;
  doubt: Combined | null;
  /** one-sided: it may still have risen by so much, K */
  toCome: number;
  comparison: Comparison;
  /** the steady point behind it; null at a condition asked for */
  reading: SteadyReading | null;
  flags: Flag[];
}

/**
 * Margins of the steady points.
 * @param answer of one temperature, object
 * @param airplane limits, accuracies and the builder's own margin, or undefined
 * @param hotDay air over height, object
 * @returns one a reading, in order
 * @throws OutOfRange when an altitude is beyond any airplane's
 */
export function pointMargins(answer: ChannelAnswer, airplane: Airplane | undefined, hotDay: HotDay): Margin[] {
  return answer.readings.map((reading) => {
    const { temperature: T, air, part, quantity, setting, label } = reading;
    const hotAir = hotDay.air(setting.height ?? airplane?.place.elevation.si ?? 0);
    // an oil cooler that regulates could only open further on a hotter day: the one-to-one figure errs to the hot side
    const told = isOpen(reading) || (part === 'oil' && reading.regime === 'unknown');
    const hot = onHotDay(T, part, air, hotAir);
    const at = (shift: Readonly<Record<string, number>>) =>
      onHotDay(T + (shift.hot ?? 0), part, air + (shift.air ?? 0), hotAir).corrected;
    const [sensor, probe] = [accuracyOf(airplane, quantity), accuracyOf(airplane, 'outside-air-temperature')];
    const { bySensor } = propagateByShift({ hot: sensor.u, air: hot.notCredited ? 0 : probe.u }, at);
    const sources: UncertaintySource[] = [
      { part: 'noise', ...reading.noise },
      { part: 'repeatability', u: answer.scatter.s, nu: answer.scatter.nu },
      { part: 'calibration', u: Math.abs(bySensor.hot ?? 0), nu: sensor.nu },
      { part: 'calibration', u: Math.abs(bySensor.air ?? 0), nu: probe.nu },
      { part: 'fit', u: hot.notCredited ? 0 : RULE_DOUBT * reading.excess, nu: Number.POSITIVE_INFINITY },
    ];
    const flags = told && hot.notCredited ? [notCredited(label, air, hotAir)] : [];
    const value = told ? { temperature: T, corrected: hot.corrected, sources } : null;
    const why = value ? null : 'the thermostat was not fully open';
    const head = { label, quantity, part, temperature: T, air, hotAir, toCome: stillToCome(reading), reading, flags };
    return marginOf(head, value, why, airplane);
  });
}

/**
 * Margins at conditions asked for.
 * @param options the conditions, object
 * @param model of the result, object
 * @param airplane limits and the builder's own margin, or undefined
 * @param hotDay air over height, object
 * @returns one a condition and temperature; a refused one says why
 * @throws OutOfRange when an altitude is beyond any airplane's
 */
export function conditionMargins(
  options: FlightOptions,
  model: FlightModel,
  airplane: Airplane | undefined,
  hotDay: HotDay,
): Margin[] {
  return (options.conditions ?? []).flatMap((given, i) =>
    model.channels.map((channel) => {
      const { quantity, part } = channel;
      const label = given.label ?? `condition ${i + 1}`;
      const height = given['pressure-altitude']?.si ?? middle(model.heights) ?? airplane?.place.elevation.si ?? 0;
      const air = given['outside-air-temperature']?.si ?? hotDay.air(height);
      const head = { label, quantity, part, air, hotAir: air, toCome: channel.stillToCome, reading: null };
      try {
        const at = atCondition(channel, model, { setting: settingAsked(given, model), air });
        if (channel.open !== null && at.temperature < channel.open) {
          const words = `${channelWords(quantity)} at ${label}: the fit falls to ${show(at.temperature, 'degC', { decimals: 0 }).text}, below fully open: the thermostat would regulate there`;
          const quiet = { ...head, temperature: null, flags: [flag('regulated', words)] };
          return marginOf(quiet, null, 'the thermostat would regulate there', airplane);
        }
        const value = { temperature: at.temperature, corrected: at.temperature, sources: sourcesOf(at) };
        return marginOf({ ...head, temperature: at.temperature, flags: [] }, value, null, airplane);
      } catch (error) {
        if (!(error instanceof OutOfRange)) throw error;
        const words = `${channelWords(quantity)} at ${label}: ${error.message}`;
        return marginOf(
          { ...head, temperature: null, flags: [flag('extrapolated', words)] },
          null,
          'outside what was flown',
          airplane,
        );
      }
    }),
  );
}

function sourcesOf(at: AtCondition): UncertaintySource[] {
  return [at.next, at.thinner, ...at.sensors.map((one) => one.true)].filter(({ u }) => u > 0);
}

interface Value {
  temperature: number;
  corrected: number;
  sources: UncertaintySource[];
}

type Head = Pick<
  Margin,
  'label' | 'quantity' | 'part' | 'temperature' | 'air' | 'hotAir' | 'toCome' | 'reading' | 'flags'
>;

function marginOf(head: Head, value: Value | null, why: string | null, airplane: Airplane | undefined): Margin {
  const { limit } = limitsOf(airplane, head.part);
  const doubt = value ? combineUncertainty(value.sources.filter(({ u }) => u > 0)) : null;
  const corrected = value?.corrected ?? null;
  return {
    ...head,
    corrected,
    limit,
    margin: limit === null || corrected === null ? null : limit - corrected,
    doubt,
    comparison: compared(head, corrected, doubt, limit, why, airplane),
  };
}

// What may still come stands in the way of "shown" and gives no excuse from "exceeded".
function compared(
  head: Head,
  value: number | null,
  doubt: Combined | null,
  limit: number | null,
  why: string | null,
  airplane: Airplane | undefined,
): Comparison {
  const keep = airplane?.plan.coolingMargin?.si ?? 0;
  const kept = keep > 0 ? `, ${keep.toFixed(0)} K kept` : '';
  const what = `${PART_WORDS[head.part]}${/#\d+$/.exec(head.quantity)?.[0].replace('#', ' ') ?? ''}, ${head.label}, on the hot day of ${show(head.hotAir, 'degC', { decimals: 0 }).text}, against the limit${kept}`;
  const question = { what, value, limit: limit ?? Number.NaN, unit: 'K', margin: keep };
  const upper = compareWithLimit({ ...question, u95: doubt ? doubt.u95 + head.toCome : null });
  if (why !== null) return { ...upper, words: `not shown: ${why}` };
  if (upper.outcome !== 'not shown' || !doubt) return upper;
  const strict = compareWithLimit({ ...question, u95: doubt.u95 });
  return strict.outcome === 'exceeded' ? strict : upper;
}

function notCredited(label: string, air: number, hotAir: number): Flag {
  const words = (si: number) => show(si, 'degC', { decimals: 1 }).text;
  return flag(
    'correction-not-credited',
    `${label}: the air was ${words(air)}, hotter than ${words(hotAir)} of the hot day; the correction of ${show(hotAir - air, 'dK', { decimals: 1 }).text} is shown and not credited`,
  );
}

const middle = (range: readonly [number, number] | null) => (range ? (range[0] + range[1]) / 2 : null);
