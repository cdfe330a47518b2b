/** The fit asked at a condition: inside what was flown, or refused with the distance. */
import { densityRatio, pressureAt } from '../../air/index.ts';
import { nearestInHull, type UncertaintySource } from '../../numbers/index.ts';
import { OutOfRange } from '../../remarks/index.ts';
import { fromSi } from '../../units/index.ts';
import { dot, excessAt, type Shift } from './fit.ts';
import type { ChannelModel, FlightModel } from './flight-model.ts';
import type { FlightConditions } from './input.ts';
import type { Setting } from './point.ts';
import { logOf, shownVariable, TERM_WORDS, type TermName } from './terms.ts';

/** A setting this near to the flown ones is one of them, logarithms: what a hold itself may wander. Common practice. */
const NEAR: Readonly<Record<TermName, number>> = {
  'fuel-flow': 0.03,
  'manifold-times-speed': 0.03,
  'dynamic-pressure': 0.06,
  'cowl-exit-position': 0.1,
};
/** Heights this near to the flown ones count as flown, m; air may differ by so much, K. Own choice, no source. */
const NEAR_HEIGHT = 300;
const FAR_AIR = 30;
/** UA grows as density to 0.4 at most where dynamic pressure is held: half-width of what is not corrected. */
const DENSITY_EXPONENT = 0.4;

/** A setting and the air it is asked in. */
export interface Asked {
  setting: Setting;
  air: number;
}

/**
 * The setting that conditions describe; what is left out is the middle of what was flown.
 * @param given conditions, SI inside
 * @param model of the result, object
 * @returns setting, uncertain in nothing
 * @throws OutOfRange when an indicated airspeed lies outside those flown
 */
export function settingAsked(given: FlightConditions, model: FlightModel): Setting {
  const { 'manifold-pressure': manifold, 'engine-speed': speed, 'fuel-flow': flow } = given;
  const variables = model.channels[0]?.variables ?? [];
  const product = manifold && speed ? manifold.si * speed.si : null;
  const byFlow = variables[0] !== 'manifold-times-speed';
  const heights = model.heights;
  return {
    power: byFlow ? (flow?.si ?? null) : product,
    measure: byFlow ? 'fuel-flow' : 'manifold-times-speed',
    ias: given['indicated-airspeed']?.si ?? null,
    cas: given['calibrated-airspeed']?.si ?? casOf(given['indicated-airspeed']?.si, model),
    uCas: 0,
    height: given['pressure-altitude']?.si ?? (heights ? (heights[0] + heights[1]) / 2 : null),
    door: given['cowl-exit-position']?.si ?? null,
  };
}

function casOf(ias: number | undefined, { airspeeds }: FlightModel): number | null {
  if (ias === undefined) return null;
  const below = airspeeds.findLast((one) => one.ias <= ias);
  const above = airspeeds.find((one) => one.ias >= ias);
  const near = below ?? above;
  if (!near) return null;
  if (!below || !above) return ias + near.cas - near.ias;
  const share = above.ias > below.ias ? (ias - below.ias) / (above.ias - below.ias) : 0;
  return ias + (below.cas - below.ias) * (1 - share) + (above.cas - above.ias) * share;
}

/**
 * Row of the design for a setting, inside what was flown.
 * @param channel its model, object
 * @param setting what is asked; a variable left out stands at the middle of what was flown
 * @returns logarithms of all variables, varied or not
 * @throws OutOfRange outside the hull of the flown settings, the distance and the nearest flown mix in words
 */
export function insideFlown(channel: ChannelModel, setting: Setting): number[] {
  const { variables, flown } = channel;
  const asked = variables.map((name, k) => {
    const log = logOf(name, setting);
    if (log !== null) return log;
    const all = flown.map((one) => one[k] ?? Number.NaN);
    const [least, most] = [Math.min(...all), Math.max(...all)];
    const isVaried = channel.terms.some((one) => one.name === name);
    if (isVaried) throw new OutOfRange(TERM_WORDS[name], Number.NaN, 'what must be given: it was varied');
    return (least + most) / 2;
  });
  const scaled = (logs: readonly number[]) => logs.map((one, k) => one / NEAR[variables[k] ?? 'fuel-flow']);
  const { distance, point } = nearestInHull(flown.map(scaled), scaled(asked));
  if (distance <= 1) return asked;
  const nearest = point.map((one, k) => one * NEAR[variables[k] ?? 'fuel-flow']);
  const apart = variables.flatMap((name, k) => {
    const away = (asked[k] ?? 0) - (nearest[k] ?? 0);
    if (Math.abs(away) < 0.2 * NEAR[name]) return [];
    const share = fromSi(Math.expm1(away), '%').toFixed(0).replace('-', '−');
    return [
      `${TERM_WORDS[name]} ${share.startsWith('−') ? share : `+${share}`} %, nearest flown ${shownVariable(name, Math.exp(nearest[k] ?? 0))}`,
    ];
  });
  throw new OutOfRange(
    'the condition',
    Number(distance.toFixed(1)),
    `what was flown by that many times what a point may wander (${apart.join('; ')})`,
  );
}

/**
 * The remaining conditions that a fit is not asked beyond.
 * @param model of the result, object
 * @param asked setting and air, object
 * @throws OutOfRange when height or air is further from the points than was shown
 */
export function insideAir(model: FlightModel, { setting, air }: Asked): void {
  const { heights, airs } = model;
  if (heights && setting.height !== null) {
    const [low, high] = heights;
    if (!(setting.height >= low - NEAR_HEIGHT && setting.height <= high + NEAR_HEIGHT))
      throw new OutOfRange(
        'pressure altitude',
        Math.round(setting.height),
        `the heights flown, ${low.toFixed(0)} to ${high.toFixed(0)} m, and ${NEAR_HEIGHT} m beyond`,
      );
  }
  if (airs && !(air >= airs[0] - FAR_AIR && air <= airs[1] + FAR_AIR))
    throw new OutOfRange('outside air', air, `${FAR_AIR} K from the air of the points`);
}

export interface AtCondition {
  excess: number;
  temperature: number;
  /** of one more point about the curve there; curve and point share one scatter, so they are one source, K */
  next: UncertaintySource;
  /** thinner air than that of the points, K */
  thinner: UncertaintySource;
  /** change of the temperature for each sensor's standard uncertainty, K: as truth, and as the same sensors read it */
  sensors: { true: UncertaintySource; read: UncertaintySource }[];
}

/**
 * Temperature at a condition.
 * @param channel its model, object
 * @param model of the result, object
 * @param asked setting and air, object
 * @returns temperature with every part of its doubt
 * @throws OutOfRange outside what was flown
 */
export function atCondition(channel: ChannelModel, model: FlightModel, asked: Asked): AtCondition {
  insideAir(model, asked);
  const logs = insideFlown(channel, asked.setting);
  const { terms, beta, inverse, s, nu } = channel;
  const row = rowFrom(channel, logs);
  const { excess, u } = excessAt({ beta, inverse, scatter: { s } }, row);
  return {
    excess,
    temperature: asked.air + excess,
    next: { part: 'repeatability', u: Math.hypot(u, s), nu },
    thinner: { part: 'fit', u: excess * densityDoubt(model, asked), nu: Number.POSITIVE_INFINITY },
    sensors: channel.shifted.map(({ sensor, u: size, nu: known, beta: shifted }) => {
      const as = (change: number): UncertaintySource => ({ part: 'calibration', u: Math.abs(change), nu: known });
      const truth = Math.exp(dot(row, shifted)) - excess;
      const moved = movedRow(row, terms, asked.setting, { [sensor]: size });
      const read = Math.exp(dot(moved, shifted)) - excess + (sensor === 'air' ? size : sensor === 'hot' ? -size : 0);
      return { true: as(truth), read: as(read) };
    }),
  };
}

function rowFrom({ terms, variables }: ChannelModel, logs: readonly number[]): number[] {
  return [1, ...terms.map(({ name, centre }) => (logs[variables.indexOf(name)] ?? centre) - centre)];
}

// The next reading comes from the same sensors: what is asked moves with the points.
function movedRow(row: readonly number[], terms: ChannelModel['terms'], setting: Setting, shift: Shift): number[] {
  return row.map((one, k) => {
    const name = terms[k - 1]?.name;
    if (!name) return one;
    const [before, after] = [logOf(name, setting), logOf(name, setting, shift.airspeed, shift.door)];
    return before === null || after === null ? one : one + after - before;
  });
}

function densityDoubt({ heights, airs }: FlightModel, { setting, air }: Asked): number {
  if (!airs) return 0;
  const flown = densityRatio(pressureAt(heights ? (heights[0] + heights[1]) / 2 : 0), (airs[0] + airs[1]) / 2);
  const here = densityRatio(pressureAt(setting.height ?? 0), air);
  return (DENSITY_EXPONENT / Math.sqrt(3)) * Math.abs(Math.log(here / flown));
}
