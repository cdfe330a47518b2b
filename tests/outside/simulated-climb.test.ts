/**
 * Climbs of an independent flight-dynamics simulation through the command, from the file to the printed JSON: it must
 * find the climbs itself, and every true value must lie inside the uncertainty stated, the instruments' calibration
 * stated as exact. The airspeed calibration passed on is the one reduced from the same airplane's boxes.
 */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { reductionOf } from '../../analysis/reductions/index.ts';
import { type Result, resultSchema } from '../../analysis/results/index.ts';
import { fromSi } from '../../analysis/units/index.ts';
import { runCommand } from '../server/command/run-command.ts';
import { climbFlights, matchedClimbs, type TrueClimbs } from './simulated-climbs.ts';
import { simulatedAirplane, simulatedAirplaneFile, simulatedFlights, simulatedRecording } from './simulated-log.ts';

/** Asked for. */
const RATE_RMS_SHARE = 0.005;
/** An interval may be this many times the error found, not more: it must say something. */
const WIDEST = 5;

const kt = (si: number) => fromSi(si, 'kt');
const fpm = (si: number) => fromSi(si, 'ft/min');
const feet = (si: number) => fromSi(si, 'ft');

const folder = mkdtempSync(join(tmpdir(), 'climb-'));
afterAll(() => rmSync(folder, { recursive: true }));
const kept = (name: string, value: unknown) => {
  const path = join(folder, name);
  writeFileSync(path, JSON.stringify(value));
  return path;
};

function calibration(): string {
  const box = simulatedFlights()[0];
  if (!box) throw new Error('no box flown');
  const result = reductionOf('airspeed')?.reduce({
    recording: simulatedRecording(box.file),
    airplane: simulatedAirplane(box, 'exact'),
    options: { startMass: { value: box.massKg, unit: 'kg' } },
  });
  return kept('calibration.json', result);
}

async function reduced(flight: TrueClimbs, more: string[] = []): Promise<Result> {
  const airplane = kept('airplane.json', simulatedAirplaneFile(flight, 'exact'));
  const argv = [
    'reduce',
    'climb',
    join(import.meta.dirname, 'climb', flight.file),
    '--airplane',
    airplane,
    '--json',
    ...more,
  ];
  return resultSchema.parse((await runCommand(argv)).json());
}

const flights = climbFlights();
const plain = await Promise.all(flights.map((flight) => reduced(flight)));
const path = calibration();
const calibrated = await Promise.all(flights.map((flight) => reduced(flight, ['--calibration', path])));
const byHand = await Promise.all(
  flights.map((flight) => {
    const { file } = flight;
    const edits = flight.climbs.map(({ fromSeconds, toSeconds }) => ({ file, fromSeconds, toSeconds, role: 'climb' }));
    return reduced(flight, ['--segments', kept(`${file}.json`, edits)]);
  }),
);
const quantity = (result: Result | undefined, name: string) => result?.quantities.find((one) => one.name === name);

describe.each(flights.map((flight, i) => ({ ...flight, i })))(
  'independent flight-dynamics simulation: $file',
  (flight) => {
    const rows = matchedClimbs(plain[flight.i], flight);

    it('finds every climb and nothing else', () => {
      expect(plain[flight.i]?.status).toBe('reduced');
      expect(rows).toHaveLength(flight.climbs.length);
      expect(plain[flight.i]?.segments).toHaveLength(flight.climbs.length);
      for (const { row, truth } of rows) {
        const overlap = Math.min(row('to-seconds'), truth.toSeconds) - Math.max(row('from-seconds'), truth.fromSeconds);
        expect(overlap / (truth.toSeconds - truth.fromSeconds)).toBeGreaterThan(0.85);
      }
    });

    it.each([
      { how: 'found by itself', results: plain },
      { how: 'with the airspeed calibration', results: calibrated },
      { how: 'between times set by hand', results: byHand },
    ])('tapeline rate within 0.5 % rms and inside U95: $how', ({ results }) => {
      const these = matchedClimbs(results[flight.i], flight);
      const shares = these.map(({ row, truth }) => fpm(row('rate-observed')) / truth.geometricRateFpm - 1);
      expect(Math.sqrt(shares.reduce((sum, share) => sum + share ** 2 / shares.length, 0))).toBeLessThan(
        RATE_RMS_SHARE,
      );
      for (const { row, truth } of these) {
        const error = fpm(row('rate-observed')) - truth.geometricRateFpm;
        expect(Math.abs(error), `at ${truth.casKt} kt: ${error}`).toBeLessThanOrEqual(fpm(row('u95')));
      }
    });

    it('the rate of the steady airplane, its speed and its air, inside U95', () => {
      for (const { row, truth } of matchedClimbs(calibrated[flight.i], flight)) {
        expect(Math.abs(kt(row('calibrated-airspeed')) - truth.casKt)).toBeLessThan(0.3);
        // 1.5 % of the climb's height: the mean of a long climb is not its middle.
        const tall = ((truth.toSeconds - truth.fromSeconds) / 60) * truth.geometricRateFpm;
        const high = feet(row('density-altitude')) - truth.densityAltitudeFt;
        expect(Math.abs(high)).toBeLessThan(Math.max(60, 0.015 * tall));
        if (truth.steadyRateFpm === undefined) continue;
        // Steady rates hold true airspeed, so they stand beside the excess power, at the mass flown; 20 lb are under 2 %.
        const error = fpm(row('excess-power')) - truth.steadyRateFpm;
        expect(Math.abs(error), `at ${truth.casKt} kt`).toBeLessThanOrEqual(fpm(row('rate-standard-u95')));
        expect(Math.abs(error) / truth.steadyRateFpm).toBeLessThan(0.012);
      }
    });

    it('best-rate speed inside the range that is flat within 5 ft/min, best rate inside U95', () => {
      const { best } = flight;
      if (!best) return;
      for (const result of [plain[flight.i], calibrated[flight.i]]) {
        const speed = kt(quantity(result, 'best-rate-speed')?.value ?? Number.NaN);
        expect(speed).toBeGreaterThan(best.flatWithin5FpmKt[0]);
        expect(speed).toBeLessThan(best.flatWithin5FpmKt[1]);
        // Held calibrated airspeed, not true: 0.8 % less (the climb correction factor at 40 m/s).
        const rate = quantity(result, 'best-rate');
        expect(Math.abs(fpm(rate?.value ?? Number.NaN) - 0.992 * best.bestRateFpm)).toBeLessThan(fpm(rate?.u95 ?? 0));
      }
      const ofBestAngle = quantity(calibrated[flight.i], 'best-angle-speed');
      // Slower than, or within 2 kt of, the slowest speed flown: no number may be given.
      expect(ofBestAngle).toMatchObject({ value: null, flags: [{ kind: 'not-bracketed' }] });
    });

    it('slab by slab, the rate of the steady airplane at that density altitude', () => {
      if (!flight.byAltitude) return;
      const table = calibrated[flight.i]?.tables.find((one) => one.name === 'check-climb');
      const at = (name: string) => table?.columns.findIndex((one) => one.name === name) ?? -1;
      const points = (table?.rows ?? []).map((row) => ({
        Hd: feet(Number(row[at('density-altitude')])),
        rate: fpm(Number(row[at('rate-standard')])),
        u95: fpm(Number(row[at('u95')])),
      }));
      expect(points.length).toBeGreaterThanOrEqual(4);
      for (const { Hd, rate, u95 } of points) {
        const above = flight.byAltitude.findIndex((one) => one.densityAltitudeFt >= Hd);
        const [a, b] = [flight.byAltitude[above - 1], flight.byAltitude[above]];
        if (!a || !b) continue;
        const w = (Hd - a.densityAltitudeFt) / (b.densityAltitudeFt - a.densityAltitudeFt);
        const truth = 0.992 * ((1 - w) * a.steadyRateFpm + w * b.steadyRateFpm);
        expect(Math.abs(rate - truth), `at ${Hd.toFixed(0)} ft`).toBeLessThan(Math.min(u95, 0.015 * truth));
      }
    });
  },
);

describe('all climbs of the simulation together', () => {
  it.each([
    { how: 'found by itself', results: plain },
    { how: 'between times set by hand', results: byHand },
  ])('intervals say something: median U95 at most five times the rms error, $how', ({ results }) => {
    const all = flights.flatMap((flight, i) => matchedClimbs(results[i], flight));
    const squares = all.map(({ row, truth }) => (fpm(row('rate-observed')) - truth.geometricRateFpm) ** 2);
    const widths = all.map(({ row }) => fpm(row('u95'))).sort((a, b) => a - b);
    const rms = Math.sqrt(squares.reduce((sum, one) => sum + one / squares.length, 0));
    expect((widths[Math.floor(widths.length / 2)] ?? 0) / rms).toBeLessThan(WIDEST);
  });
});
