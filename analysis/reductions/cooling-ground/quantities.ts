/** The quantities of a ground run: margins on the hot day first, then what each held condition settles at. */
import { type Governing, PART_WORDS } from '../../models/index.ts';
import { type Flag, flag } from '../../remarks/index.ts';
import type { ResultQuantity } from '../../results/index.ts';
import { show } from '../../units/index.ts';
import type { HotReference } from './hot-day-margin.ts';
import { spanOf } from './rows.ts';
import { type Answered, thermostatLeft } from './tables.ts';

/** The settings a value holds for. */
function conditionsOf({ measured, file }: Answered): ResultQuantity['conditions'] {
  const { point, hot } = measured;
  return {
    segment: point.label,
    channel: hot.quantity,
    file,
    'from-seconds': { value: measured.fromSeconds, unit: 's' },
    'to-seconds': { value: measured.toSeconds, unit: 's' },
    'engine-speed': { value: point.hold.engineSpeed, unit: '1/s' },
    ...(point.hold.exit === null ? {} : { 'cowl-exit-position': { value: point.hold.exit, unit: '1' } }),
    ...(point.hold.fan === null ? {} : { 'cooling-fan-state': point.hold.fan }),
    ...(measured.outside === null ? {} : { 'outside-air-temperature': { value: measured.outside, unit: 'K' } }),
    ...(measured.air === null || measured.air === measured.outside
      ? {}
      : { 'inlet-air-temperature': { value: measured.air, unit: 'K' } }),
  };
}

/**
 * Margins on the hot day, the least first; where a point gives none, null and why.
 * @param answers points of the main temperature, list
 * @param reference the hot day, object
 * @param governing the thermostat, `none` or null
 * @returns quantities named hot-day-margin
 */
export function marginQuantities(
  answers: readonly Answered[],
  reference: HotReference,
  governing: Governing,
): ResultQuantity[] {
  const given: ResultQuantity[] = [];
  const withheld: ResultQuantity[] = [];
  for (const one of answers) {
    if (one.measured.regime === 'cooling' || one.measured.regime === 'warming') continue;
    const base = {
      name: 'hot-day-margin',
      unit: 'dK',
      conditions: {
        ...conditionsOf(one),
        'hot-day-air': { value: reference.air, unit: 'K' },
        reference: reference.words,
      },
    };
    const why = whyWithheld(one, governing);
    const { hotDay, measured } = one;
    if (why || !hotDay || hotDay.margin === null) {
      withheld.push({ ...base, value: null, u95: null, parts: {}, flags: why ? [why] : [] });
      continue;
    }
    given.push({
      ...base,
      conditions: { ...base.conditions, 'slow-node-allowance': { value: measured.allowance, unit: 'dK' } },
      value: hotDay.margin,
      // the larger half-width: the slow part can only take from the margin
      u95: hotDay.upper,
      interval: [hotDay.margin - hotDay.upper, hotDay.margin + hotDay.doubt.u95],
      parts: hotDay.doubt.parts,
      flags: [
        ...hotDay.flags,
        ...(measured.allowance > 0
          ? [
              flag(
                'slow-node',
                `${measured.allowance.toFixed(1)} K of U95 stand for block, oil and duct that take their heat more slowly than a trace of this length shows; they can only make it hotter`,
              ),
            ]
          : []),
      ],
    });
  }
  return [...given.sort((a, b) => (a.value ?? 0) - (b.value ?? 0)), ...withheld];
}

function whyWithheld(one: Answered, governing: Governing): Flag | null {
  const { measured, hotDay } = one;
  const { point } = measured;
  const span = spanOf(measured);
  if (measured.regime === 'regulated') {
    const left = thermostatLeft(measured, governing);
    const parts = [
      ...(left === null ? [] : [`${Math.round(100 * left)} % of the thermostat’s range`]),
      ...(point.hold.exit === null ? [] : [`${Math.round(100 * (1 - point.hold.exit))} % of the exit’s travel`]),
    ];
    const words = parts.length > 0 ? `; still in hand at its end: ${parts.join(', ')}` : '';
    return flag('regulated', `${point.label}: regulated, so the temperature says nothing of margin${words}`, span);
  }
  if (measured.regime === 'unknown') {
    return flag(
      'regime-unknown',
      `${point.label}: nobody said where the thermostat opens, so it may have been regulating. Enter cooling.thermostatStart and cooling.thermostatOpen on the Airplane page, or say that there is none`,
      span,
    );
  }
  if (measured.equilibrium === null)
    return flag('not-resolved', `${point.label}: ${measured.because ?? 'no curve'}`, span);
  if (hotDay === null)
    return flag('not-resolved', `${point.label}: no air temperature was logged; state it as read by hand`, span);
  if (hotDay.margin === null) return flag('limit-missing', `${point.label}: no limit to compare with`, span);
  return null;
}

/**
 * Equilibrium and time constant of each fitted point.
 * @param answers points, list
 * @param prefix `` for the main temperature, `oil-` for the oil
 * @returns quantities
 */
export function equilibriumQuantities(answers: readonly Answered[], prefix: '' | 'oil-'): ResultQuantity[] {
  return answers.flatMap((one) => {
    const { measured } = one;
    const { fit, equilibrium, doubt } = measured;
    if (!fit) return [];
    const conditions = conditionsOf(one);
    const why = equilibrium === null ? [flag('bound-only', measured.because ?? '', spanOf(measured))] : [];
    const low = Math.max(fit.air, fit.air + fit.excessLow);
    return [
      {
        name: `${prefix}equilibrium`,
        symbol: 'T_eq',
        unit: 'K',
        value: equilibrium,
        u95: doubt?.u95 ?? null,
        ...(equilibrium !== null && doubt
          ? { interval: [equilibrium - doubt.u95, equilibrium + doubt.u95 + measured.allowance] as [number, number] }
          : measured.noCurve
            ? {}
            : { interval: [low, null] as [number, null] }),
        parts: doubt?.parts ?? {},
        conditions,
        flags: why,
      },
      {
        name: `${prefix}time-constant`,
        symbol: 'tau',
        unit: 's',
        value: equilibrium === null || fit.tauHigh === null ? null : fit.tau,
        u95:
          equilibrium === null || fit.tauHigh === null ? null : Math.max(fit.tauHigh - fit.tau, fit.tau - fit.tauLow),
        interval: [fit.tauLow, fit.tauHigh] as [number, number | null],
        parts: {},
        conditions,
        flags:
          equilibrium === null || fit.tauHigh === null
            ? [flag('bound-only', 'the run is too short to bound it above', spanOf(measured))]
            : [],
      },
    ];
  });
}

/** What the result is about, for the first line of remarks. */
export function aboutWords(one: Answered): string {
  const { measured } = one;
  const air = measured.air === null ? '' : ` in air of ${show(measured.air, 'degC', { decimals: 0 }).text}`;
  return `${PART_WORDS[measured.hot.part]}, ${measured.point.label}${air}`;
}
