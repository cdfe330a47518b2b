/** Legs and turns of a log: segments cut into what the fit takes, and what had to be left out. */
import { wrapTurn } from '../../air/index.ts';
import type { Airplane } from '../../airplane/index.ts';
import type { Recording } from '../../logs/index.ts';
import { quantisationStep, standApart, stepEffect } from '../../numbers/index.ts';
import { type Excluded, meanBetween, type Segment, sampleAt, unwrapped } from '../../segments/index.ts';
import { fromSi } from '../../units/index.ts';
import type { AirspeedChannels } from './channels.ts';
import { type Leg, type LegSamples, meanOf } from './leg.ts';

/** A leg with less of its channels than this is left out. */
const LEAST_COVERED = 0.75;
/** A turn is cut into blocks of this angle, rad: an eighth of a turn. */
const BLOCK = Math.PI / 4;
/** A reading stands apart from its leg beyond this many robust deviations, and at least this far, SI. */
const APART = 6;
const LEAST_APART = { ias: 5, height: 60, air: 3 };

export interface LegsFound {
  legs: Leg[];
  excluded: Excluded[];
  /** readings left out of their leg because they stood far apart, count */
  wild: number;
}

export interface LegContext {
  recording: Recording;
  channels: AirspeedChannels;
  airplane: Airplane | undefined;
  /** flap setting where none is logged */
  flaps: string;
  /** mass at a time, kg, or null */
  massAt: (seconds: number) => number | null;
  /** airspeed answers this much later than the satellites, s */
  delay: number;
}

/**
 * Legs of the segments.
 * @param context channels and what is known beside them
 * @param segments found or set by hand
 * @returns legs, blocks of turns among them, and what was left out with the reason
 */
export function legsFromLog(context: LegContext, segments: readonly Segment[]): LegsFound {
  const found: LegsFound = { legs: [], excluded: [], wild: 0 };
  const step = quantisationStep(context.channels.airspeed.v);
  segments.forEach((segment, run) => {
    const read = readSegment(context, segment, found);
    if (!read) return;
    const { samples, times, covered } = read;
    const scatter = Math.sqrt(meanOf(samples.ias.map((v) => (v - meanOf(samples.ias)) ** 2)));
    const base: Leg = {
      role: segment.role === 'turn' ? 'turn' : 'leg',
      run,
      label: segment.label ?? '',
      flaps: flapsOf(context, segment),
      fromSeconds: segment.fromSeconds,
      toSeconds: segment.toSeconds,
      written: false,
      samples,
      dt: times.length > 1 ? ((times[times.length - 1] ?? 0) - (times[0] ?? 0)) / (times.length - 1) : 1,
      covered,
      mass: context.massAt((segment.fromSeconds + segment.toSeconds) / 2),
      loadFactor: loadFactorOf(context, segment),
      along: null,
      lengthDoubt: null,
      ias: meanOf(samples.ias),
      stepBias: stepEffect(scatter, step).bias,
    };
    found.legs.push(...(base.role === 'turn' ? blocksOf(base, times) : [base]));
  });
  return found;
}

interface Read {
  samples: LegSamples;
  times: number[];
  covered: number;
}

function readSegment(context: LegContext, segment: Segment, found: LegsFound): Read | null {
  const { airspeed, height, air, ground } = context.channels;
  const { fromSeconds, toSeconds } = segment;
  const leaveOut = (reason: string) => {
    found.excluded.push({ fromSeconds, toSeconds, reason });
    return null;
  };
  const times = airspeed.t.filter((t) => t >= fromSeconds && t <= toSeconds);
  if (times.length < 3) return leaveOut('fewer than three samples of airspeed');
  const late = times.map((t) => t + context.delay);
  const ias = sampleAt(airspeed, late);
  const heights = sampleAt(height, times);
  const temperatures = typeof air === 'number' ? times.map(() => air) : sampleAt(air, times);
  found.wild += dropWild(ias, LEAST_APART.ias) + dropWild(heights, LEAST_APART.height);
  found.wild += dropWild(temperatures, LEAST_APART.air);
  fillWithMean(temperatures);
  const north = sampleAt(ground.north, times);
  const east = sampleAt(ground.east, times);
  const whole = Array.from(times, (_, i) => i).filter((i) =>
    [ias, heights, temperatures, north, east].every((values) => !Number.isNaN(values[i])),
  );
  const expected = Math.max(times.length, (toSeconds - fromSeconds) / medianStep(times));
  const covered = whole.length / expected;
  if (whole.length < 3 || covered < LEAST_COVERED) {
    const share = Math.round(100 * covered);
    return leaveOut(`a gap: only ${share} % of it has airspeed, height, air temperature and a satellite fix`);
  }
  const still = new Set(whole.map((i) => Math.hypot(north[i] ?? 0, east[i] ?? 0).toFixed(4)));
  if (segment.role === 'leg' && whole.length > 20 && still.size === 1) return leaveOut('ground speed stood still');
  const pick = (values: Float64Array) => Float64Array.from(whole, (i) => values[i] ?? Number.NaN);
  return {
    samples: { ias: pick(ias), height: pick(heights), air: pick(temperatures), north: pick(north), east: pick(east) },
    times: whole.map((i) => times[i] ?? 0),
    covered: Math.min(1, covered),
  };
}

function dropWild(values: Float64Array, least: number): number {
  let dropped = 0;
  standApart(values, APART, least).forEach((apart, i) => {
    if (!apart) return;
    values[i] = Number.NaN;
    dropped += 1;
  });
  return dropped;
}

// Air temperature changes slowly against a leg: a missing reading is the leg's mean, unless all are missing.
function fillWithMean(values: Float64Array): void {
  const mean = meanOf(values);
  values.forEach((value, i) => {
    if (Number.isNaN(value)) values[i] = mean;
  });
}

function medianStep(times: Float64Array): number {
  const gaps = Array.from(times.slice(1), (t, i) => t - (times[i] ?? t)).sort((a, b) => a - b);
  return gaps[Math.floor(gaps.length / 2)] || 1;
}

// Blocks of an eighth of a turn by the direction of movement; a last block shorter than half of that is left out.
function blocksOf(turn: Leg, times: readonly number[]): Leg[] {
  const { samples } = turn;
  const track = unwrapped(samples.north.map((north, i) => wrapTurn(Math.atan2(samples.east[i] ?? 0, north))));
  const turned = Math.abs((track[track.length - 1] ?? 0) - (track[0] ?? 0));
  const count = Math.floor(turned / BLOCK + 0.5);
  const blocks: Leg[] = [];
  for (let b = 0; b < count; b += 1) {
    const inside = Array.from(track, (_, i) => i).filter((i) => {
      const at = Math.abs((track[i] ?? 0) - (track[0] ?? 0)) / BLOCK;
      return at >= b && (at < b + 1 || (b === count - 1 && at < b + 1.5));
    });
    if (inside.length < 3) continue;
    const pick = (values: Float64Array) => Float64Array.from(inside, (i) => values[i] ?? Number.NaN);
    const ias = pick(samples.ias);
    blocks.push({
      ...turn,
      samples: {
        ias,
        height: pick(samples.height),
        air: pick(samples.air),
        north: pick(samples.north),
        east: pick(samples.east),
      },
      fromSeconds: times[inside[0] ?? 0] ?? turn.fromSeconds,
      toSeconds: times[inside[inside.length - 1] ?? 0] ?? turn.toSeconds,
      ias: meanOf(ias),
    });
  }
  return blocks;
}

function flapsOf(context: LegContext, segment: Segment): string {
  const settings = context.airplane?.flaps ? context.airplane.flaps.settings : [];
  const named = settings.find((one) => one.toLowerCase() === segment.label?.toLowerCase());
  if (named) return named;
  const position =
    context.channels.flaps && meanBetween(context.channels.flaps, segment.fromSeconds, segment.toSeconds);
  return position ? `${Math.round(fromSi(position.mean, 'deg'))}°` : context.flaps;
}

function loadFactorOf(context: LegContext, segment: Segment): number {
  if (segment.role !== 'turn') return 1;
  const bank = context.channels.bank && meanBetween(context.channels.bank, segment.fromSeconds, segment.toSeconds);
  return bank ? 1 / Math.cos(bank.mean) : 1;
}
