/** What all steady points together say of one temperature: which enter, what they separate, and what sensors do to it. */
import { type Airplane, accuracyOf } from '../../airplane/index.ts';
import { type Governing, OVER_OPEN, PART_WORDS } from '../../models/index.ts';
import { type Scatter, scatterPosterior } from '../../numbers/index.ts';
import { type Flag, flag, OutOfRange } from '../../remarks/index.ts';
import type { HotPart } from './channels.ts';
import { type ExcessFit, fitExcess, POINT_SCATTER, POINTS_PER_TERM, type Shift } from './fit.ts';
import { channelWords, isOpen, type SteadyReading } from './point.ts';
import { LEAST_DOOR, logOf, TERM_WORDS, type TermName, variablesOf, variedTerms } from './terms.ts';

export interface ShiftedFit {
  sensor: keyof Shift;
  /** standard uncertainty, unit of the sensor, with its degrees of freedom */
  u: number;
  nu: number;
  beta: number[];
}

export interface ChannelAnswer {
  quantity: string;
  part: HotPart;
  governing: Governing;
  /** every reading of it, in order */
  readings: SteadyReading[];
  /** those that entered the fit; empty without one */
  fitted: SteadyReading[];
  variables: TermName[];
  fit: ExcessFit | null;
  shifted: ShiftedFit[];
  /** of one point, K: seen, or the usual one */
  scatter: Scatter;
  flags: Flag[];
}

/** An excess under this is no cooling to speak of, K. */
const LEAST_EXCESS = 5;

/**
 * The answer of one temperature.
 * @param readings all of it, list, at least one
 * @param governing its thermostat, `none`, or null where not known
 * @param airplane the description, or undefined
 * @param s0 usual scatter of one point, K
 * @returns fit or the reason why there is none, as remarks
 */
export function channelAnswer(
  readings: [SteadyReading, ...SteadyReading[]],
  governing: Governing,
  airplane: Airplane | undefined,
  s0: number,
): ChannelAnswer {
  const [head] = readings;
  const { quantity, part } = head;
  const hasDoor = readings.some(({ setting }) => setting.door !== null);
  const variables = variablesOf(head.setting.measure, hasDoor);
  const flags = [...regimeFlags(readings, part, quantity), ...doorFlags(airplane, hasDoor, quantity)];
  const base: ChannelAnswer = {
    quantity,
    part,
    governing,
    readings,
    fitted: [],
    variables,
    fit: null,
    shifted: [],
    scatter: scatterPosterior({ s0, factor: POINT_SCATTER.factor }, 0, 0),
    flags,
  };
  const unknown = variables.filter((name) => readings.every(({ setting }) => logOf(name, setting) === null));
  if (unknown.length > 0) {
    const words = unknown.map((name) => TERM_WORDS[name]).join(' and ');
    flags.push(
      flag(
        'not-resolved',
        `${channelWords(quantity)}: ${words} is not known at any point, so points cannot be compared by it: no exponents`,
      ),
    );
    return base;
  }
  const open = readings.filter(isOpen);
  if (open.length === 0) return base;
  const fitted = open.filter(({ setting, excess }) => {
    return excess >= LEAST_EXCESS && variables.every((name) => logOf(name, setting) !== null);
  });
  if (fitted.length < open.length) flags.push(flag('excluded', leftOutWords(quantity, open, fitted)));
  const first = solved(fitted, variables, quantity, s0);
  const away = first.fit ? awayFromOpening(fitted, first.fit, governing) : fitted;
  const last = away.length < fitted.length ? solved(away, variables, quantity, s0) : first;
  if (away.length < fitted.length) flags.push(nearOpeningFlag(quantity, fitted, away));
  flags.push(...last.flags);
  const { fit } = last;
  if (!fit) return base;
  const shifted = sensorShifts(away, airplane).map(({ sensor, u, nu }) => ({
    sensor,
    u,
    nu,
    beta: fitExcess(away, fit.terms, s0, { [sensor]: u }).beta,
  }));
  return { ...base, fitted: away, fit, shifted, scatter: fit.scatter };
}

// Terms and fit of some points, or in the flags why there are none.
function solved(
  points: readonly SteadyReading[],
  variables: readonly TermName[],
  quantity: string,
  s0: number,
): { fit: ExcessFit | null; flags: Flag[] } {
  const { terms, flags } =
    points.length === 0 ? { terms: [], flags: [] } : variedTerms(points, variables, channelWords(quantity));
  const needed = POINTS_PER_TERM * Math.max(1, terms.length);
  const say = (words: string) => ({ fit: null, flags: [flag('not-resolved', `${channelWords(quantity)}: ${words}`)] });
  if (points.length < needed) {
    const list = terms.map((one) => TERM_WORDS[one.name]).join(', ') || 'the level';
    return say(
      `${points.length} fully open points for ${list}, and ${needed} are needed (${POINTS_PER_TERM} each): no exponents. Fly ${needed - points.length} more`,
    );
  }
  try {
    const fit = fitExcess(points, terms, s0);
    const assumed = fit.scatter.assumed
      ? [
          flag(
            'assumed-repeatability',
            `${channelWords(quantity)}: scatter of one point ${s0.toFixed(1)} K within a factor ${POINT_SCATTER.factor} assumed, ${fit.nu} degrees of freedom seen, ${fit.scatter.s.toFixed(1)} K used`,
          ),
        ]
      : [];
    return { fit, flags: [...flags, ...assumed] };
  } catch (error) {
    if (!(error instanceof OutOfRange)) throw error;
    return say(`${error.message}: no exponents`);
  }
}

/** How far over fully open a point must be expected, in its own scatter, to count whatever it read. */
const CLEAR = 2;

// Near the opening only those points that happened to run hot show as fully open: taken in, they would flatten the fit.
// Who stays is asked of the fit, not of the reading.
function awayFromOpening(points: SteadyReading[], fit: ExcessFit, governing: Governing): SteadyReading[] {
  if (governing === null || governing === 'none') return points;
  const least = governing.open + OVER_OPEN + CLEAR * fit.scatter.s;
  return points.filter((one, i) => one.temperature - (fit.residuals[i] ?? 0) >= least);
}

function nearOpeningFlag(quantity: string, all: readonly SteadyReading[], kept: readonly SteadyReading[]): Flag {
  const labels = all.filter((one) => !kept.includes(one)).map((one) => one.label);
  return flag(
    'excluded',
    `${channelWords(quantity)}: ${labels.join(', ')} lie so near to fully open that only the hotter ones of their kind show; they stand in the table and not in the fit`,
  );
}

function sensorShifts(fitted: readonly SteadyReading[], airplane: Airplane | undefined): Omit<ShiftedFit, 'beta'>[] {
  const hot = accuracyOf(airplane, fitted[0]?.quantity ?? '');
  const air = accuracyOf(airplane, 'outside-air-temperature');
  const door = accuracyOf(airplane, 'cowl-exit-position');
  const airspeed = Math.max(...fitted.map(({ setting }) => setting.uCas));
  const hasDoor = fitted.some(({ setting }) => setting.door !== null);
  return [
    { sensor: 'hot' as const, u: hot.u, nu: hot.nu },
    { sensor: 'air' as const, u: air.u, nu: air.nu },
    { sensor: 'airspeed' as const, u: airspeed, nu: accuracyOf(airplane, 'indicated-airspeed').nu },
    ...(hasDoor ? [{ sensor: 'door' as const, u: door.u, nu: door.nu }] : []),
  ].filter(({ u }) => u > 0);
}

function regimeFlags(readings: readonly SteadyReading[], part: HotPart, quantity: string): Flag[] {
  const open = readings.filter(isOpen).length;
  const unknown = readings.filter(({ regime }) => regime === 'unknown').length;
  const words = PART_WORDS[part];
  if (unknown > 0) {
    const ask =
      part === 'oil'
        ? 'whether a thermostat sits in the oil cooler is not known (option oilThermostat: none, or its temperatures)'
        : `where the ${words} thermostat starts to open and is fully open is not known (Airplane page, or option thermostat)`;
    return [
      flag(
        'regime-unknown',
        `${channelWords(quantity)}: ${ask}. Without it no exponents are fitted and nothing is predicted${part === 'oil' ? '; margins of the points themselves stand, for an opening cooler could only make them larger' : ', and no margin is given'}`,
      ),
    ];
  }
  const held = readings.length - open;
  if (held === 0) return [];
  return [
    flag(
      'regulated',
      `${channelWords(quantity)}: at ${held} of ${readings.length} points the thermostat was not fully open: temperature says nothing of margin there, and what is still in hand is given instead`,
    ),
  ];
}

function doorFlags(airplane: Airplane | undefined, hasDoor: boolean, quantity: string): Flag[] {
  if (hasDoor || !(airplane?.cooling.exitDoor || airplane?.cooling.cowlFlap)) return [];
  return [
    flag(
      'assumed-value',
      `${channelWords(quantity)}: the door’s position is not known: it is taken to have stood in one place throughout`,
    ),
  ];
}

function leftOutWords(quantity: string, open: readonly SteadyReading[], fitted: readonly SteadyReading[]): string {
  const left = open
    .filter((one) => !fitted.includes(one))
    .map(({ label, setting, excess }) => {
      if (excess < LEAST_EXCESS) return `${label} (${excess.toFixed(1)} K over air)`;
      if (setting.door !== null && setting.door < LEAST_DOOR)
        return `${label} (door nearer to shut than ${100 * LEAST_DOOR} %)`;
      return `${label} (a setting is not known)`;
    });
  return `${channelWords(quantity)}: ${left.join(', ')} stand in the table and not in the fit`;
}
