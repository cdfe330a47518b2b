/** Legs from wherever they come: written points, segments set by hand, or segments found in the log. */
import type { Airplane } from '../../airplane/index.ts';
import type { Recording } from '../../logs/index.ts';
import { type Flag, flag, type Refusal, refusal } from '../../remarks/index.ts';
import { type Excluded, findSteadyLegs, findTurns, placeSegments, type Segment } from '../../segments/index.ts';
import type { ReductionInput } from '../reduction.ts';
import type { AirChain } from './air-chain.ts';
import { airspeedChannels } from './channels.ts';
import type { AirspeedOptions, AirspeedPoint } from './input.ts';
import { type Leg, middleOf } from './leg.ts';
import { type LegContext, legsFromLog } from './legs-from-log.ts';
import { legsFromPoints } from './legs-from-points.ts';
import { planLegs } from './plan-legs.ts';
import { turnDelay } from './turn-delay.ts';
import { massFlown } from './weight-flown.ts';

export interface Gathered {
  legs: Leg[];
  /** segments the legs come from, for the result */
  segments: Segment[];
  flags: Flag[];
}

/** A pause longer than this makes another outing, whose wind its own legs must tell, s. */
const PAUSE = 30 * 60;

/**
 * Gather the legs of a flight.
 * @param input logs, points, segments
 * @param options what a person stated
 * @param points parsed points, if any
 * @param chain how the instruments are read
 * @returns legs with their segments and remarks, or why there are none
 * @throws InputProblem when a segment names a file that is not there
 */
export function gatherLegs(
  input: ReductionInput,
  options: AirspeedOptions,
  points: readonly AirspeedPoint[] | undefined,
  chain: AirChain,
): Gathered | Refusal {
  const flaps = options.flaps ?? flapsUp(input.airplane);
  const mass = massFlown(input.recording, input.airplane, options);
  if (points) {
    const legs = legsFromPoints(points, options, input.recording, flaps);
    if ('code' in legs) return legs;
    for (const leg of legs) leg.mass ??= mass.at(middleOf(leg));
    return { legs, segments: [], flags: legs.some((leg) => !Number.isNaN(leg.ias)) ? mass.flags : [] };
  }
  const { recording } = input;
  if (!recording) return refusal('missing-channel', 'there is neither a log nor a written leg to reduce');
  const channels = airspeedChannels(recording, options);
  if ('code' in channels) return channels;
  const looked = lookFor(recording, input);
  if (looked.segments.length === 0) {
    const near = looked.excluded.map(
      (one) => `${Math.round(one.fromSeconds)} to ${Math.round(one.toSeconds)} s ${one.reason}`,
    );
    return refusal(
      'no-segments',
      `no leg or turn was found (${looked.criteria.join('; ')})${near.length > 0 ? `. Left out: ${near.slice(0, 6).join('; ')}` : ''}`,
    );
  }
  const context: LegContext = { recording, channels, airplane: input.airplane, flaps, massAt: mass.at, delay: 0 };
  const flags = [...channels.flags, ...mass.flags];
  const found = settleDelay(context, looked.segments, input, chain, flags);
  const { legs, dropped } = withoutLonelyOutings(found.legs);
  const excluded = [...looked.excluded, ...found.excluded, ...dropped].sort((a, b) => a.fromSeconds - b.fromSeconds);
  if (found.wild > 0) flags.push(flag('excluded', `${found.wild} single readings far off their own leg were left out`));
  flags.push(
    ...excluded.map((one) => flag('excluded', one.reason, { fromSeconds: one.fromSeconds, toSeconds: one.toSeconds })),
  );
  for (const one of looked.segments.filter((segment) => segment.byHand))
    flags.push(flag('set-by-hand', one.reason, { fromSeconds: one.fromSeconds, toSeconds: one.toSeconds }));
  flags.push(...partial(legs));
  if (legs.length === 0) {
    return refusal(
      'no-segments',
      `no leg could be used: ${excluded.map((one) => `${Math.round(one.fromSeconds)} s ${one.reason}`).join('; ')}`,
    );
  }
  const used = new Set(legs.map((leg) => leg.run));
  return { legs, segments: looked.segments.filter((_, i) => used.has(i)), flags };
}

// The first setting is the retracted one; an airplane without flaps has only one to name.
function flapsUp(airplane: Airplane | undefined): string {
  if (airplane?.flaps === false) return 'none';
  return airplane?.flaps ? (airplane.flaps.settings[0] ?? 'up') : 'up';
}

interface Looked {
  segments: Segment[];
  excluded: Excluded[];
  criteria: string[];
}

function lookFor(recording: Recording, input: ReductionInput): Looked {
  if (input.segments) {
    const placed = placeSegments(recording, input.segments);
    return { segments: placed.segments, excluded: placed.dropped, criteria: ['segments set by hand'] };
  }
  const legs = findSteadyLegs(recording);
  const turns = findTurns(recording);
  return {
    segments: [...legs.segments, ...turns.segments].sort((a, b) => a.fromSeconds - b.fromSeconds),
    excluded: [...legs.excluded, ...turns.excluded],
    criteria: legs.criteria,
  };
}

// A stated lag of the airspeed is taken out. One that is not stated shows only in turns: found once with a first answer,
// then the legs are cut again with it.
function settleDelay(
  context: LegContext,
  segments: readonly Segment[],
  input: ReductionInput,
  chain: AirChain,
  flags: Flag[],
): ReturnType<typeof legsFromLog> {
  const stated = input.airplane?.instruments.airspeedLag;
  if (stated) {
    flags.push(flag('method-note', `airspeed set back by its stated lag of ${stated.si} s`));
    return legsFromLog({ ...context, delay: stated.si }, segments);
  }
  const first = legsFromLog(context, segments);
  if (!first.legs.some((leg) => leg.role === 'turn')) return first;
  const planned = planLegs(first.legs, input.airplane?.wing.area?.si ?? null, chain);
  if ('code' in planned) return first;
  const delay = turnDelay((seconds) => legsFromLog({ ...context, delay: seconds }, segments).legs, planned.solution);
  if (!delay) return first;
  flags.push(
    flag(
      'method-note',
      `in the turns airspeed comes ${delay.seconds.toFixed(1)} s (± ${(2 * delay.u).toFixed(1)} s) after the satellites; it was set back by that`,
    ),
  );
  return legsFromLog({ ...context, delay: delay.seconds }, segments);
}

function withoutLonelyOutings(legs: readonly Leg[]): { legs: Leg[]; dropped: Excluded[] } {
  const outings: Leg[][] = [];
  for (const leg of [...legs].sort((a, b) => a.fromSeconds - b.fromSeconds)) {
    const last = outings[outings.length - 1];
    const before = last?.[last.length - 1];
    if (last && before && leg.fromSeconds - before.toSeconds <= PAUSE) last.push(leg);
    else outings.push([leg]);
  }
  if (outings.length < 2) return { legs: [...legs], dropped: [] };
  const lonely = outings.filter((outing) => outing.length < 3).flat();
  return {
    legs: legs.filter((leg) => !lonely.includes(leg)),
    dropped: lonely.map((leg) => ({
      fromSeconds: leg.fromSeconds,
      toSeconds: leg.toSeconds,
      reason: 'flown over half an hour from the others with too few legs to tell the wind of that time',
    })),
  };
}

function partial(legs: readonly Leg[]): Flag[] {
  const runs = new Map<number, Leg[]>();
  for (const leg of legs) if (leg.covered < 0.98) runs.set(leg.run, [...(runs.get(leg.run) ?? []), leg]);
  return [...runs.values()].map((blocks) =>
    flag(
      'gap',
      `${Math.round(100 * (blocks[0]?.covered ?? 1))} % of this ${blocks[0]?.role} has all channels; the rest was left out`,
      {
        fromSeconds: Math.min(...blocks.map((leg) => leg.fromSeconds)),
        toSeconds: Math.max(...blocks.map((leg) => leg.toSeconds)),
      },
    ),
  );
}
