/** All that the columns of a file say about each other's units, gathered. */
import type { FileColumns } from './file-columns.ts';
import { flowFromVolume } from './fuel-balance.ts';
import { pathSteps, speedFromPath } from './path-speed.ts';
import { type ScaledColumn, type ScaleEvidence, someRows } from './scale-evidence.ts';
import { speedFromSpeed } from './speed-pair.ts';
import { heightFromHeight, rateFromHeight } from './two-heights.ts';

const HEIGHTS = ['gps-altitude', 'pressure-altitude', 'indicated-altitude', 'reported-altitude'];
const AIRSPEEDS = ['indicated-airspeed', 'calibrated-airspeed', 'true-airspeed'];

/**
 * Evidence about the units of a file's columns.
 * @param columns the recognised columns by quantity, object
 * @param t seconds of the rows, s
 * @returns evidence, several about one column where several others speak of it
 */
export function weighUnits(columns: FileColumns, t: Float64Array): ScaleEvidence[] {
  const found: (ScaleEvidence | null)[] = [];
  const [latitude, longitude] = [columns.of('latitude'), columns.of('longitude')];
  const ground = columns.of('ground-speed');
  if (latitude && longitude && ground) {
    found.push(speedFromPath(pathSteps(latitude.numbers, longitude.numbers, t), ground));
  }
  const heights = HEIGHTS.flatMap((name) => columns.of(name) ?? []);
  for (const height of heights) {
    const others = heights.filter((one) => one !== height);
    found.push(...others.map((reference) => heightFromHeight(height, reference)));
  }
  const rate = columns.of('vertical-speed');
  const known = heights.find((one) => one.unit !== null);
  if (rate && known) found.push(rateFromHeight(rate, known, t));
  for (const name of AIRSPEEDS) {
    const speed = columns.of(name);
    if (speed && ground) found.push(speedFromSpeed(speed, ground));
    if (speed && ground && ground.unit === null && speed.unit !== null) found.push(speedFromSpeed(ground, speed));
  }
  const flow = columns.of('fuel-flow');
  const used = columns.of('fuel-used');
  if (flow && used) found.push(flowFromVolume(flow, used, t));
  else if (flow) found.push(fromTanks(flow, columns, t));
  return found.flatMap((one) => (one && Number.isFinite(one.factor) && one.factor > 0 ? [one] : []));
}

/** All tanks together: what one loses another may gain. */
function fromTanks(flow: ScaledColumn, columns: FileColumns, t: Float64Array): ScaleEvidence | null {
  const [first, ...more] = columns.all('fuel-quantity');
  if (!first || more.some((tank) => tank.unit !== first.unit)) return null;
  const numbers = new Float64Array(t.length).fill(Number.NaN);
  for (const row of someRows(t.length)) {
    numbers[row] = [first, ...more].reduce((sum, tank) => sum + (tank.numbers[row] ?? Number.NaN), 0);
  }
  const column = [first, ...more].map((tank) => tank.column).join('" and "');
  return flowFromVolume(flow, { ...first, column, numbers }, t);
}
