/** The story of a climb reduction: climbs, standard day and mass, bands, best speeds, ceilings, result. */
import { type Flag, flag, OutOfRange, parsedBy, type Refusal, refusal } from '../../remarks/index.ts';
import type { Result } from '../../results/index.ts';
import type { Excluded } from '../../segments/index.ts';
import { type ReductionInput, refusedResult, resultShell } from '../reduction.ts';
import { type AirReader, airReader } from './air-data.ts';
import { buildResult } from './build-result.ts';
import { climbChannels, rateCalibration } from './channels.ts';
import { standardConditions } from './conditions.ts';
import { runFromCard } from './from-card.ts';
import { type ClimbOptions, climbOptions, climbPoints } from './input.ts';
import { type MassFlown, massFlown } from './mass-flown.ts';
import { climbNote } from './note.ts';
import { compareRuns } from './rows.ts';
import { type MeasuredRun, runsFromLog } from './runs-from-log.ts';
import { MOST_MASS_CHANGE, type StandardConditions } from './standard.ts';

interface Gathered {
  runs: MeasuredRun[];
  excluded: Excluded[];
  flags: Flag[];
}

/**
 * Reduce sawtooth climbs or a check climb.
 * @param input aligned logs or written points, the airplane, an accepted calibration, segments and options
 * @returns the result, or a refusal with its reason
 * @throws InputProblem when points, options or segments do not fit their schema
 */
export function reduceClimb(input: ReductionInput): Result {
  const options = parsedBy(climbOptions, input.options ?? {}, 'bad-request');
  try {
    return reduced(input, options);
  } catch (error) {
    if (!(error instanceof OutOfRange)) throw error;
    return refused(input, refusal('out-of-domain', `${error.message}; a unit or a channel may be wrong`));
  }
}

function reduced(input: ReductionInput, options: ClimbOptions): Result {
  const { airplane } = input;
  const mass = massFlown(input.recording, airplane, options);
  const gathered = input.points === undefined ? fromLog(input, mass) : fromCard(input, mass);
  if ('code' in gathered) return refused(input, gathered);
  const { to, flags } = standardConditions(airplane, options, mass);
  const kept = withinMass(gathered, to);
  const excluded = kept.excluded.map(({ reason, ...span }) => flag('excluded', reason, span));
  if (kept.runs.length === 0) {
    const reasons = kept.excluded.map((one) => one.reason).join('; ');
    return refused(input, refusal('no-segments', `no climb can be used${reasons ? `: ${reasons}` : ''}`), excluded);
  }
  const calibration = rateCalibration(airplane);
  const constantSpeed = airplane?.propeller.kind === 'constant-speed';
  const seed = kept.runs.map(({ run }) => `${run.label} ${run.ias.toFixed(2)} ${run.rate.toFixed(3)}`).join();
  const compared = compareRuns(kept.runs, to, calibration, constantSpeed, seed);
  return buildResult({
    input,
    compared,
    doubt: airspeedDoubt(kept.runs),
    mass: to.massesTogether || kept.runs.some(({ run }) => run.mass === null) ? null : to.mass,
    atFirstRecord: to.massesTogether && to.mass !== null,
    flags: [...mass.flags, ...kept.flags, ...flags, ...calibration.flags, ...excluded, ...loneRemarks(compared.rows)],
  });
}

function fromLog(input: ReductionInput, mass: MassFlown): Gathered | Refusal {
  const { recording, airplane, calibration, segments } = input;
  if (!recording) return refusal('missing-channel', 'there is neither a log nor a card');
  const channels = climbChannels(recording);
  if ('code' in channels) return channels;
  const reader = airReader(airplane, calibration, channels.calibrated);
  const { runs, excluded, criteria } = runsFromLog({ recording, channels, airplane, reader, mass, edits: segments });
  const byHand = segments
    ? [flag('set-by-hand', `${runs.length} climbs were set by hand`)]
    : [flag('method-note', `climbs found by: ${criteria.join('; ')}`)];
  return { runs, excluded, flags: [...channels.flags, ...reader.flags, ...byHand] };
}

function fromCard(input: ReductionInput, mass: MassFlown): Gathered {
  const { points } = parsedBy(climbPoints, input.points, 'bad-points');
  const reader: AirReader = airReader(input.airplane, input.calibration, false);
  const runs = points.map((point, i): MeasuredRun => {
    const heavy = point.mass?.si ?? mass.at(0);
    const { air, uCas, inCurve, flags } = reader.of(point['indicated-airspeed'].si, heavy);
    const run = runFromCard(point, i, air);
    return { run: { ...run, mass: heavy, flags: [...run.flags, ...flags] }, uCas, inCurve, slabs: [] };
  });
  return { runs, excluded: [], flags: reader.flags };
}

// Far from the standard mass the induced-drag part rests on a span efficiency nobody measured.
function withinMass(gathered: Gathered, to: StandardConditions): Gathered {
  const { mass } = to;
  if (mass === null || !to.e.assumed) return gathered;
  const far = ({ run }: MeasuredRun) => run.mass !== null && Math.abs(mass - run.mass) > MOST_MASS_CHANGE * run.mass;
  const left = gathered.runs.filter(far).map(({ run }) => ({
    fromSeconds: run.fromSeconds,
    toSeconds: run.toSeconds,
    reason: `${run.label}: more than ${100 * MOST_MASS_CHANGE} % from the standard mass, and span efficiency is not measured`,
  }));
  return {
    ...gathered,
    runs: gathered.runs.filter((one) => !far(one)),
    excluded: [...gathered.excluded, ...left],
  };
}

// Of the nearest climb in airspeed: the calibration changes slowly.
function airspeedDoubt(runs: readonly MeasuredRun[]) {
  const inCurve = runs.filter((one) => one.inCurve);
  return (cas: number): number =>
    [...inCurve].sort((a, b) => Math.abs(a.run.cas - cas) - Math.abs(b.run.cas - cas))[0]?.uCas ?? 0;
}

function loneRemarks(rows: readonly { run: { label: string; lone: boolean } }[]): Flag[] {
  const lone = rows.filter(({ run }) => run.lone).map(({ run }) => run.label);
  if (lone.length === 0) return [];
  const words = `no reciprocal climb beside ${lone.join(', ')}: a wind that changes with height is in the rate, allowed for in U95 by half of 2 m/s in 300 m (common practice, no source)`;
  return [flag('lone-run', words)];
}

function refused(input: ReductionInput, why: Refusal, flags: Flag[] = []): Result {
  return refusedResult(resultShell('climb', climbNote, input), why, flags);
}
