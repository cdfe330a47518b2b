/**
 * Logs of an independent flight-dynamics simulation through the whole reduction: it must find the legs itself, and every
 * true value must lie inside the uncertainty stated, with the instruments' calibration stated as exact.
 */
import { describe, expect, it } from 'vitest';
import { airspeedCalibrationOf, calibrate } from '../../analysis/models/index.ts';
import { reductionOf } from '../../analysis/reductions/index.ts';
import type { Result } from '../../analysis/results/index.ts';
import { fromSi, toSi } from '../../analysis/units/index.ts';
import { type SimulatedFlight, simulatedAirplane, simulatedFlights, simulatedRecording } from './simulated-log.ts';

/** Asked for; the extracts are half the samples of the log, so errors are some 1.4 times those of the whole log. */
const CORRECTION_RMS_KT = 0.1;
const CORRECTION_WORST_KT = 0.3;
const WIND_KT = 0.1;
const WIND_DEG = 0.5;
/** An interval may be this many times the error found, not more: it must say something. */
const WIDEST = 5;

const kt = (si: number) => fromSi(si, 'kt');

function reduced(flight: SimulatedFlight, accuracy: 'exact' | 'assumed'): Result {
  const result = reductionOf('airspeed')?.reduce({
    recording: simulatedRecording(flight.file),
    airplane: simulatedAirplane(flight, accuracy),
    options: { startMass: { value: flight.massKg, unit: 'kg' } },
  });
  if (!result) throw new Error('no airspeed reduction');
  return result;
}

function trueCorrection(flight: SimulatedFlight, iasKt: number): number {
  const { positionError } = flight;
  const above = positionError.findIndex(([ias]) => ias >= iasKt);
  const [a, b] = [positionError[above - 1], positionError[above]];
  if (!a || !b) throw new Error(`${iasKt} kt lies outside the law as tabulated`);
  return a[1] + ((b[1] - a[1]) * (iasKt - a[0])) / (b[0] - a[0]);
}

describe.each(simulatedFlights())('independent flight-dynamics simulation: $file', (flight) => {
  const result = reduced(flight, 'exact');
  const table = result.tables.find((one) => one.name === 'position-error');
  const rows = (table?.rows ?? []).map((row) => {
    const [ias = 0, , correction = 0, u95 = 0] = row.map(Number);
    return { ias: kt(ias), error: kt(correction) - trueCorrection(flight, kt(ias)), u95: kt(u95) };
  });

  it('finds every leg or turn and nothing else', () => {
    expect(result.status).toBe('reduced');
    expect(result.segments).toHaveLength(flight.segments.length);
    result.segments.forEach((found, i) => {
      const [role, from, to] = flight.segments[i] ?? ['', 0, 0];
      expect(found.role).toBe(role);
      const overlap = Math.min(found.toSeconds, to) - Math.max(found.fromSeconds, from);
      expect(overlap / (to - from)).toBeGreaterThan(0.85);
    });
  });

  it('position error within 0.1 kt rms and 0.3 kt at worst, and inside U95 at every speed', () => {
    const rms = Math.sqrt(rows.reduce((sum, { error }) => sum + error ** 2 / rows.length, 0));
    expect(rms).toBeLessThan(CORRECTION_RMS_KT);
    for (const { ias, error, u95 } of rows) {
      expect(Math.abs(error), `at ${ias.toFixed(1)} kt`).toBeLessThan(CORRECTION_WORST_KT);
      expect(Math.abs(error), `at ${ias.toFixed(1)} kt: ${error} against ${u95}`).toBeLessThanOrEqual(u95);
    }
  });

  it('with intervals that say something: median U95 at most five times the error', () => {
    const rms = Math.sqrt(rows.reduce((sum, { error }) => sum + error ** 2 / rows.length, 0));
    const widths = rows.map(({ u95 }) => u95).sort((a, b) => a - b);
    expect((widths[Math.floor(widths.length / 2)] ?? 0) / rms).toBeLessThan(WIDEST);
  });

  it('wind within 0.1 kt and half a degree, and inside U95', () => {
    const speed = result.quantities.find((one) => one.name === 'wind-speed');
    const direction = result.quantities.find((one) => one.name === 'wind-direction');
    const off = kt(speed?.value ?? Number.NaN) - flight.wind.speedKt;
    const turned = fromSi(direction?.value ?? Number.NaN, 'deg') - flight.wind.fromTrueDeg;
    expect(Math.abs(off)).toBeLessThan(WIND_KT);
    expect(Math.abs(turned)).toBeLessThan(WIND_DEG);
    expect(Math.abs(off)).toBeLessThanOrEqual(kt(speed?.u95 ?? 0));
    expect(Math.abs(turned)).toBeLessThanOrEqual(fromSi(direction?.u95 ?? 0, 'deg'));
  });

  it('the curve covers the law wherever it is given', () => {
    const calibration = airspeedCalibrationOf(result.model);
    if (!calibration) throw new Error('no calibration');
    const [low, high] = calibration.curves[0]?.flown ?? [0, 0];
    for (let ias = low; ias <= high; ias += (high - low) / 20) {
      const { cas, u95 } = calibrate(calibration, ias);
      const error = kt(cas - ias) - trueCorrection(flight, kt(ias));
      expect(Math.abs(error), `at ${kt(ias).toFixed(1)} kt`).toBeLessThanOrEqual(kt(u95));
    }
    expect(() => calibrate(calibration, high + toSi(5, 'kt'))).toThrow();
  });

  it('with instruments only as good as assumed, the same answer with an honest width and a flag for each', () => {
    const assumed = reduced(flight, 'assumed');
    const again = assumed.tables.find((one) => one.name === 'position-error')?.rows ?? [];
    again.forEach((row, i) => {
      expect(Number(row[2])).toBeCloseTo(Number(table?.rows[i]?.[2]), 9);
      expect(Number(row[3])).toBeGreaterThan(toSi(1.9, 'kt')); // 1 m/s of the airspeed indicator alone
    });
    const words = assumed.flags.filter((one) => one.kind === 'assumed-calibration').map((one) => one.message);
    for (const name of ['indicated-airspeed', 'pressure-altitude', 'outside-air-temperature', 'ground-speed'])
      expect(words.some((message) => message.startsWith(name))).toBe(true);
  });
});
