/**
 * The regression of flight cooling beside NumPy's least squares, where Python and NumPy are present: one hundred points,
 * three exponents, weighed by the excess. The same exponents and covariance to 1e-6, and how the times compare.
 */
import { spawnSync } from 'node:child_process';
import { performance } from 'node:perf_hooks';
import process from 'node:process';
import { airplaneSchema } from '../../analysis/airplane/index.ts';
import { seededRandom } from '../../analysis/numbers/index.ts';
import { reductionOf } from '../../analysis/reductions/index.ts';
import { toSi } from '../../analysis/units/index.ts';
import { plainAirplane } from '../blind/plain-airplane.ts';

const POINTS = 100;
const REPEATS = 5;

const PYTHON = `
import sys, json, time
import numpy as np
p = json.load(sys.stdin)
x = np.array(p['logs']); e = np.array(p['excess'])
def fit():
    X = np.column_stack([np.ones(len(e)), x - x.mean(axis=0)])
    b, rss, rank, _ = np.linalg.lstsq(X * e[:, None], np.log(e) * e, rcond=None)
    return b, float(rss[0]), np.linalg.inv((X * e[:, None]).T @ (X * e[:, None]))
fit()
began = time.perf_counter()
for _ in range(p['repeats']): b, rss, inverse = fit()
print(json.dumps({'b': b.tolist(), 'rss': rss, 'inverse': inverse.tolist(), 'seconds': (time.perf_counter() - began) / p['repeats']}))
`;

export function benchLogRegression(): void {
  const random = seededRandom('points beside NumPy');
  const drawn = Array.from({ length: POINTS }, () => {
    const [flow, speed, door] = [
      20 + 18 * random.uniform(),
      35 + 30 * random.uniform(),
      0.15 + 0.85 * random.uniform(),
    ];
    const excess = 70 * (flow / 28) ** 0.6 * (speed / 50) ** -0.7 * (door / 0.5) ** -0.2 + random.normal();
    return { flow, speed, door, excess };
  });
  const points = drawn.map(({ flow, speed, door, excess }) => ({
    'fuel-flow': { value: flow, unit: 'L/h' },
    'calibrated-airspeed': { value: speed, unit: 'm/s' },
    'cowl-exit-position': { value: door, unit: '1' },
    'pressure-altitude': { value: 0, unit: 'm' },
    'outside-air-temperature': { value: 295.15, unit: 'K' },
    'coolant-temperature': { value: 295.15 + excess, unit: 'K' },
  }));
  const input = {
    points: { kind: 'cooling-flight', points },
    airplane: airplaneSchema.parse({
      ...plainAirplane,
      instruments: { ...plainAirplane.instruments, airTemperatureIsStatic: true },
    }),
    options: { thermostat: 'none' },
  };
  const cooling = reductionOf('cooling-flight');
  if (!cooling) throw new Error('no flight cooling');
  cooling.reduce(input);
  const began = performance.now();
  for (let i = 0; i < REPEATS; i += 1) cooling.reduce(input);
  const ours = (performance.now() - began) / 1000 / REPEATS;
  const model = JSON.parse(JSON.stringify(cooling.reduce(input).model)).coolingFlight.channels[0];
  // sea level: impact pressure is that of the airspeed, and equivalent airspeed the calibrated one
  const theirs = inPython(
    drawn.map(({ flow, speed, door }) => [
      Math.log(toSi(flow, 'L/h')),
      Math.log(0.5 * SEA_LEVEL_DENSITY * speed ** 2),
      Math.log(door),
    ]),
    drawn.map(({ excess }) => excess),
  );
  if (!theirs) {
    process.stdout.write('Python with NumPy is not here: nothing to compare with\n');
    return;
  }
  const apart = (a: number, b: number) => Math.abs(a - b) / Math.abs(b);
  const exponents = Math.max(...theirs.b.map((one, k) => apart(model.beta[k], one)));
  const inverse = Math.max(...theirs.inverse.map((row, k) => apart(model.inverse[k][k], row[k] ?? Number.NaN)));
  process.stdout.write(
    `largest relative difference: exponents ${exponents.toExponential(1)}, (X'WX)^-1 ${inverse.toExponential(1)}\n`,
  );
  process.stdout.write(
    `time of one reduction of ${POINTS} points (five fits, tables, margins) over NumPy's one fit: ${(ours / theirs.seconds).toFixed(0)}\n`,
  );
  if (!(exponents < 1e-6 && inverse < 1e-6)) throw new Error(`the fits differ by ${Math.max(exponents, inverse)}`);
}

const SEA_LEVEL_DENSITY = 1.225;

function inPython(logs: number[][], excess: number[]): { b: number[]; inverse: number[][]; seconds: number } | null {
  const input = JSON.stringify({ logs, excess, repeats: REPEATS });
  const run = spawnSync('python3', ['-c', PYTHON], { input, encoding: 'utf8' });
  return run.status === 0 ? JSON.parse(run.stdout) : null;
}
