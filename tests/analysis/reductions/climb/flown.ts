/** Climbs of a known airplane: figures for a card, and logs with noise, from one law of excess power against airspeed. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pressureAt, standardDay, tapelineRate, trueAirspeed } from '../../../../analysis/air/index.ts';
import { type Airplane, airplaneSchema } from '../../../../analysis/airplane/index.ts';
import { type Recording, recordingOf } from '../../../../analysis/logs/index.ts';
import { climbCorrectionFactor, trueAirspeedGradient } from '../../../../analysis/models/index.ts';
import { type Random, seededRandom } from '../../../../analysis/numbers/index.ts';
import { type ReductionInput, reductionOf } from '../../../../analysis/reductions/index.ts';
import type { Result, ResultQuantity } from '../../../../analysis/results/index.ts';

export const KNOT = 1852 / 3600;
export const MIDDLE = 1000;

/** Excess power at constant propeller power, m/s, at a true airspeed: best near 41 m/s. */
export const constantPower = (V: number) => 12.2 - 3.0e-5 * V ** 3 - 250 / V;
/** The same as a parabola about 40 m/s, for a fixed propeller. */
export const parabola = (V: number) => 4.6 - 0.006 * (V - 40) ** 2;

const casTas = (cas: number, H = MIDDLE) => trueAirspeed(cas, pressureAt(H), standardDay(H).T);

/** Rate at constant calibrated airspeed on the standard day, m/s. */
export function standardRate(law: (V: number) => number, cas: number, H = MIDDLE): number {
  const V = casTas(cas, H);
  return law(V) * climbCorrectionFactor(V, trueAirspeedGradient(cas, H));
}

/** Calibrated airspeed of the best rate, and of the best angle, by looking at every tenth of a knot. */
export function trueOptima(law: (V: number) => number): { Vy: number; Vx: number } {
  const all = Array.from({ length: 700 }, (_, i) => 20 + 0.05 * i);
  const best = (of: (cas: number) => number) => all.reduce((a, b) => (of(b) > of(a) ? b : a));
  return {
    Vy: best((cas) => standardRate(law, cas)),
    Vx: best((cas) => standardRate(law, cas) / casTas(cas)),
  };
}

export interface CardPlan {
  speeds: readonly number[];
  scatter?: number;
  random?: Random;
  /** false leaves every climb on one heading */
  pairs?: boolean;
  height?: number;
  law?: (V: number) => number;
}

/** Two climbs a speed on opposite headings as a card would have them; true airspeed held, so excess power is the rate. */
export function climbCard({
  speeds,
  scatter = 0,
  random,
  pairs = true,
  height = MIDDLE,
  law = constantPower,
}: CardPlan) {
  return {
    kind: 'climb',
    points: speeds.flatMap((cas) =>
      (pairs ? [20, 200] : [20]).map((heading) => {
        const rate = law(casTas(cas, height)) + scatter * (random?.normal() ?? 0);
        const T = standardDay(height).T;
        return {
          'indicated-airspeed': { value: cas, unit: 'm/s' },
          bottom: { value: height - 150, unit: 'm' },
          top: { value: height + 150, unit: 'm' },
          time: { value: 300 / (rate / tapelineRate(1, T, height)), unit: 's' },
          'outside-air-temperature': { value: T, unit: 'K' },
          'heading-magnetic': { value: heading, unit: 'deg' },
        };
      }),
    ),
  };
}

const PLAIN = JSON.parse(
  readFileSync(join(import.meta.dirname, '..', '..', '..', '..', 'sample-tests', 'ouzel', 'airplane.json'), 'utf8'),
);

/** An airplane whose instruments are exact. */
export function exactAirplane(more: Record<string, unknown> = {}): Airplane {
  const exact = (unit: string) => ({ u95: 0, unit, basis: 'exact for a test' });
  return airplaneSchema.parse({
    ...PLAIN,
    instruments: {
      units: PLAIN.instruments.units,
      airTemperatureIsStatic: true,
      accuracy: {
        'indicated-airspeed': exact('kt'),
        'pressure-altitude': exact('ft'),
        'outside-air-temperature': exact('dK'),
      },
    },
    ...more,
  });
}

export interface LogPlan {
  /** calibrated airspeed and heading of each climb, m/s and degrees */
  climbs: readonly { cas: number; heading: number; seconds?: number; speedGain?: number }[];
  /** rows left out: from, to, s after the first climb began */
  silence?: [number, number];
  without?: string;
  seed?: string;
}

/** One climb after the other from 850 m, three minutes level and down between them; one sample a second. */
export function climbLog({ climbs, silence, without, seed = 'climb log' }: LogPlan): Recording {
  const random = seededRandom(seed);
  const rows: number[][] = [];
  let now = 0;
  for (const { cas, heading, seconds = 120, speedGain = 0 } of climbs) {
    const rate = constantPower(casTas(cas));
    const phases: [number, (s: number) => [number, number]][] = [
      [60, () => [850, cas]],
      [seconds, (s) => [850 + rate * s, cas + (speedGain * s) / seconds]],
      [120, (s) => [850 + rate * seconds * (1 - s / 120), cas]],
    ];
    for (const [length, at] of phases) {
      for (let s = 0; s < length; s += 1, now += 1) {
        const [H, ias] = at(s);
        rows.push([now, H + 0.5 * random.normal(), ias + 0.2 * random.normal(), standardDay(H).T, heading, 0]);
      }
    }
  }
  const kept = rows.filter(([t = 0]) => !silence || t < 60 + silence[0] || t > 60 + silence[1]);
  const names = [
    'pressure-altitude',
    'indicated-airspeed',
    'outside-air-temperature',
    'heading-magnetic',
    'roll-angle',
  ];
  return recordingOf([
    {
      file: 'climbs.csv',
      sha256: '0'.repeat(64),
      rows: kept.length,
      flags: [],
      time: {
        seconds: Float64Array.from(kept, (row) => row[0] ?? 0),
        startUtcMs: null,
        start: null,
        zone: 'unknown',
        durationSeconds: now,
        sampleRateHz: 1,
        segments: [],
      },
      channels: names.flatMap((quantity, i) =>
        quantity === without
          ? []
          : [
              {
                column: quantity,
                index: i + 1,
                name: quantity,
                quantity,
                unit: null,
                confidence: 1,
                why: 'made for a test',
                values: Float64Array.from(kept, (row) =>
                  quantity === 'heading-magnetic' ? ((row[i + 1] ?? 0) * Math.PI) / 180 : (row[i + 1] ?? 0),
                ),
                valid: 1,
                flags: [],
              },
            ],
      ),
    },
  ]);
}

export function reduce(input: ReductionInput): Result {
  const reduction = reductionOf('climb');
  if (!reduction) throw new Error('no climb reduction');
  return reduction.reduce(input);
}

export function quantityIn(result: Result, name: string): ResultQuantity {
  const found = result.quantities.find((one) => one.name === name);
  if (!found) throw new Error(`no ${name}: ${result.reason ?? ''}`);
  return found;
}

export function columnIn(result: Result, table: string, column: string): (number | null)[] {
  const found = result.tables.find((one) => one.name === table);
  const at = found?.columns.findIndex((one) => one.name === column) ?? -1;
  if (!found || at < 0) throw new Error(`no column ${column} of ${table}: ${result.reason ?? ''}`);
  return found.rows.map((row) => (row[at] === null ? null : Number(row[at])));
}

export function kindsOf(result: Result): string[] {
  return result.flags.map((one) => one.kind);
}
