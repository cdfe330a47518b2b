/**
 * The joint solution of airspeed legs beside SciPy's least_squares, where Python and SciPy are present: the same answer
 * to 1e-6, and how the times compare. The problem: 24 legs at six speeds, wind north and east with drift, six corrections.
 */
import { spawnSync } from 'node:child_process';
import { performance } from 'node:perf_hooks';
import process from 'node:process';
import { leastSquares, seededRandom } from '../../analysis/numbers/index.ts';

interface Leg {
  north: number;
  east: number;
  tas: number;
  speed: number;
  time: number;
}

const SPEEDS = 6;
const REPEATS = 50;

const PYTHON = `
import sys, json, time
import numpy as np
from scipy.optimize import least_squares
p = json.load(sys.stdin)
n, e, tas, j, t = (np.array(p[k]) for k in ('north', 'east', 'tas', 'speed', 'time'))
def residuals(x):
    wn, we = x[0] + x[1] * t, x[2] + x[3] * t
    return np.hypot(n - wn, e - we) - tas - x[4:][j]
start = np.zeros(4 + p['speeds'])
began = time.perf_counter()
for _ in range(p['repeats']):
    fit = least_squares(residuals, start, method='lm', xtol=1e-14, ftol=1e-14, gtol=1e-14)
seconds = (time.perf_counter() - began) / p['repeats']
inverse = np.linalg.inv(fit.jac.T @ fit.jac)
print(json.dumps({'x': fit.x.tolist(), 'rss': float(2 * fit.cost), 'variances': np.diag(inverse).tolist(), 'seconds': seconds}))
`;

export function benchLeastSquares(): void {
  const legs = drawnLegs();
  const residuals = (x: readonly number[]) =>
    legs.map((leg) => {
      const north = leg.north - (x[0] ?? 0) - (x[1] ?? 0) * leg.time;
      const east = leg.east - (x[2] ?? 0) - (x[3] ?? 0) * leg.time;
      return Math.hypot(north, east) - leg.tas - (x[4 + leg.speed] ?? 0);
    });
  const start = new Array<number>(4 + SPEEDS).fill(0);
  leastSquares({ start, residuals }); // once to warm up
  const began = performance.now();
  for (let i = 0; i < REPEATS; i += 1) leastSquares({ start, residuals });
  const ours = (performance.now() - began) / 1000 / REPEATS;
  const fit = leastSquares({ start, residuals });
  const theirs = inPython(legs);
  if (!theirs) {
    process.stdout.write('Python with SciPy is not here: nothing to compare with\n');
    return;
  }
  const apart = (a: number, b: number, size: number) => Math.abs(a - b) / Math.max(Math.abs(b), size);
  const parameters = Math.max(...theirs.x.map((value, k) => apart(fit.parameters[k] ?? Number.NaN, value, 1e-3)));
  const variances = Math.max(...theirs.variances.map((value, k) => apart(fit.inverse[k]?.[k] ?? Number.NaN, value, 0)));
  process.stdout.write(
    `largest relative difference: parameters ${parameters.toExponential(1)}, (J'J)^-1 ${variances.toExponential(1)}, sum of squares ${apart(fit.rss, theirs.rss, 0).toExponential(1)}\n`,
  );
  process.stdout.write(`time of one fit, ours over SciPy's: ${(ours / theirs.seconds).toFixed(2)}\n`);
  if (!(parameters < 1e-6)) throw new Error(`the fits differ by ${parameters}: more than 1e-6`);
}

function drawnLegs(): Leg[] {
  const random = seededRandom('legs beside SciPy');
  return Array.from({ length: 4 * SPEEDS }, (_, i) => {
    const speed = Math.floor(i / 4);
    const tas = 38 + 6 * speed;
    const heading = (Math.PI / 2) * i + speed;
    const time = i / 10;
    const over = tas + 1.5 - 0.5 * speed + 0.3 * random.normal();
    return {
      north: over * Math.cos(heading) + 5 + 0.4 * time,
      east: over * Math.sin(heading) - 8 + 0.2 * time,
      tas,
      speed,
      time,
    };
  });
}

function inPython(legs: readonly Leg[]): { x: number[]; rss: number; variances: number[]; seconds: number } | null {
  const input = JSON.stringify({
    ...Object.fromEntries(
      (['north', 'east', 'tas', 'speed', 'time'] as const).map((key) => [key, legs.map((leg) => leg[key])]),
    ),
    speeds: SPEEDS,
    repeats: REPEATS,
  });
  const run = spawnSync('python3', ['-c', PYTHON], { input, encoding: 'utf8' });
  return run.status === 0 ? JSON.parse(run.stdout) : null;
}
