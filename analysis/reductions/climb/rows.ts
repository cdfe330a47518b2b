/** Climbs side by side: standard rates, reciprocal partners, bands with their curves, and the U95 of every row. */
import { soundSpeed, staticTemperature } from '../../air/index.ts';
import { combineUncertainty, median, type Scatter, scatterPosterior } from '../../numbers/index.ts';
import { CLIMB_SCATTER } from './band-scatter.ts';
import { type Band, bandsWithPoints, windPart } from './bands.ts';
import type { RateCalibration } from './channels.ts';
import { type BandResult, solveBands } from './optima.ts';
import { partnersOf } from './pairs.ts';
import type { ClimbRun, StandardRun } from './run.ts';
import type { MeasuredRun } from './runs-from-log.ts';
import { COMMON_ERRORS, rateWith, type StandardConditions, toStandard } from './standard.ts';
import type { ClimbRow } from './tables.ts';

export interface Compared {
  rows: ClimbRow[];
  solved: BandResult[];
  /** slabs of long climbs, brought to the standard, each with the U95 of its rate */
  slabs: { run: StandardRun; u95: number }[];
}

/**
 * Climbs compared.
 * @param measured climbs in order of time
 * @param to standard mass, wing and span efficiency
 * @param calibration doubt of altimeter and thermometer, common to all
 * @param constantSpeed true for a constant-speed propeller, boolean
 * @param seed of the draws, text
 * @returns rows, bands with their curves, slabs
 * @throws OutOfRange when a value lies outside the formulas
 * @source parts of a rate combined [jcgm-100]; scatter between runs with its prior [simulation]
 */
export function compareRuns(
  measured: readonly MeasuredRun[],
  to: StandardConditions,
  calibration: RateCalibration,
  constantSpeed: boolean,
  seed: string,
): Compared {
  const partners = partnersOf(measured.map(({ run }) => run));
  const standard = measured.map(({ run }, i) => toStandard(run, to, (partners[i] ?? null) === null));
  const bands = bandsInCurve(measured, standard, partners);
  const heading = standard.find((run) => run.lone)?.heading ?? null;
  const shifted = [
    ...COMMON_ERRORS.map((error) =>
      standard.map((run) => ({ ...run, rateStandard: rateWith(error, run, to, heading) })),
    ),
    standard.map((run) => ({ ...run, rateStandard: run.rateStandard * (1 + rateShare(calibration, run)) })),
  ].map((runs) => bandsInCurve(measured, runs, partners));
  const solved = solveBands(bands, constantSpeed, seed, shifted);
  const rows = standard.map((run, i): ClimbRow => {
    const band = solved.findIndex(({ band: one }) => one.runs.includes(i));
    const here = solved[band];
    const point = here?.band.behind.findIndex((members) => members.includes(i)) ?? -1;
    const wind = here && here.band.behind[point]?.length === 2 ? windPart(run, here.band.pairs) : 0;
    const scatter = here?.optimum?.scatter ?? unseenScatter();
    return {
      run: { ...run, rateStandard: run.rateStandard - wind },
      u95: observedU95(run, calibration),
      u95Standard: standardU95(run, calibration, scatter),
      band: band < 0 ? null : band,
      partner: partners[i] ?? null,
      residual: here?.optimum?.residuals[point] ?? null,
    };
  });
  const slabs = measured.flatMap(({ slabs }) => {
    const lone = true;
    return slabs.map((slab) => {
      const run = toStandard(slab, to, lone);
      return { run, u95: standardU95(run, calibration, unseenScatter()) };
    });
  });
  return { rows, solved, slabs };
}

// Bands know runs by their place among all climbs; those beyond the calibration take no part.
function bandsInCurve(
  measured: readonly MeasuredRun[],
  standard: readonly StandardRun[],
  partners: readonly (number | null)[],
): Band[] {
  // A check climb passes through many heights: beside climbs through one band it is no point of theirs.
  const usual = median(measured.map(({ run }) => run.gained));
  const passes = ({ run, slabs }: MeasuredRun) => slabs.length > 0 && run.gained > LONG_BESIDE * usual;
  const kept = measured.flatMap((one, i) => (one.inCurve && !passes(one) ? [i] : []));
  const runs = kept.flatMap((i) => standard[i] ?? []);
  const place = (i: number | null) => (i === null || !kept.includes(i) ? null : kept.indexOf(i));
  const back = (list: readonly number[]) => list.map((i) => kept[i] ?? -1);
  return bandsWithPoints(
    runs,
    kept.map((i) => place(partners[i] ?? null)),
  ).map((band) => ({ ...band, runs: back(band.runs), behind: band.behind.map(back) }));
}

/** Gains this many times the usual one is a climb through many bands: common practice, no source. */
const LONG_BESIDE = 2;

const unseenScatter = (): Scatter => scatterPosterior(CLIMB_SCATTER, 0, 0);

// Standard uncertainty of a rate, as a share of it, from altimeter gain, air temperature and the probe's ram rise.
function rateShare(calibration: RateCalibration, { T, tas }: ClimbRun): number {
  const ramRise = T - staticTemperature(T, tas / soundSpeed(T), 1);
  return Math.hypot(calibration.gain, calibration.uT / T, (calibration.uRecovery * ramRise) / T);
}

function ownSources(run: ClimbRun, calibration: RateCalibration) {
  return [
    { part: 'noise' as const, ...run.noise },
    { part: 'noise' as const, ...run.ends },
    { part: 'calibration' as const, u: Math.abs(run.rate) * rateShare(calibration, run), nu: calibration.nu },
  ];
}

function observedU95(run: ClimbRun, calibration: RateCalibration): number {
  return combineUncertainty(ownSources(run, calibration)).u95;
}

// The scatter between runs already holds what noise and chosen ends do to a rate; it is not added twice.
function standardU95(run: StandardRun, calibration: RateCalibration, scatter: Scatter): number {
  const [noise, ends, common] = ownSources(run, calibration);
  const within = Math.hypot(noise?.u ?? 0, ends?.u ?? 0);
  return combineUncertainty([
    { part: 'repeatability', u: Math.max(scatter.s, within), nu: scatter.nu },
    ...(common ? [common] : []),
    { part: 'fit', ...run.correction },
  ]).u95;
}
