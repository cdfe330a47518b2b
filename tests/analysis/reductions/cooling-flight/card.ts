/** Steady points of a known law as a card would hold them: nothing of the product makes them but the units. */
import { type Airplane, airplaneSchema } from '../../../../analysis/airplane/index.ts';
import { type ReductionInput, reductionOf } from '../../../../analysis/reductions/index.ts';
import type { Result } from '../../../../analysis/results/index.ts';
import { plainAirplane } from '../../../blind/plain-airplane.ts';

export interface Written {
  /** L/h */
  flow: number;
  /** kt */
  speed: number;
  /** % */
  door: number;
  /** degrees Celsius, and ft */
  air?: number;
  height?: number;
  /** K to add to the law */
  error?: number;
}

export const EXPONENTS = { flow: 0.6, pressure: -0.35, door: -0.2 };
/** K over air at 28 L/h, 110 kt, door half open */
const EXCESS = 70;

/** Sea-level dynamic pressure goes with the square of speed; at one height that is all a power law sees. */
export function excess({ flow, speed, door }: Written): number {
  const { flow: a, pressure: b, door: d } = EXPONENTS;
  return EXCESS * (flow / 28) ** a * (speed / 110) ** (2 * b) * (door / 50) ** d;
}

export const SETTINGS: readonly Written[] = [20, 28, 36].flatMap((flow, i) =>
  [90, 110, 130].flatMap((speed, j) =>
    (i === j ? [20, 60] : [[30, 80, 45][(i + 2 * j) % 3] ?? 50]).map((door) => ({ flow, speed, door })),
  ),
);

export function cardPoints(settings: readonly Written[], hot = 'coolant-temperature') {
  return {
    kind: 'cooling-flight',
    points: settings.map(
      (one): Record<string, { value: number; unit: string }> => ({
        'fuel-flow': { value: one.flow, unit: 'L/h' },
        'calibrated-airspeed': { value: one.speed, unit: 'kt' },
        'cowl-exit-position': { value: one.door, unit: '%' },
        'outside-air-temperature': { value: one.air ?? 25, unit: 'degC' },
        'pressure-altitude': { value: one.height ?? 0, unit: 'ft' },
        [hot]: { value: (one.air ?? 25) + excess(one) + (one.error ?? 0), unit: 'degC' },
      }),
    ),
  };
}

/** Ouzel with a thermostat that opens low, sensors exact and air as read static. */
export function exactAirplane(more: Record<string, unknown> = {}): Airplane {
  const exact = (unit: string) => ({ u95: 0, unit, basis: 'exact' });
  return airplaneSchema.parse({
    ...plainAirplane,
    cooling: {
      ...plainAirplane.cooling,
      thermostatStart: { value: 40, unit: 'degC' },
      thermostatOpen: { value: 50, unit: 'degC' },
    },
    plan: { ...plainAirplane.plan, coolingMargin: { value: 0, unit: 'dK' } },
    instruments: {
      units: plainAirplane.instruments.units,
      airTemperatureIsStatic: true,
      accuracy: {
        'coolant-temperature': exact('dK'),
        'oil-temperature': exact('dK'),
        'cylinder-head-temperature': exact('dK'),
        'outside-air-temperature': exact('dK'),
        'indicated-airspeed': exact('kt'),
        'cowl-exit-position': exact('1'),
      },
    },
    ...more,
  });
}

export function reduce(input: ReductionInput): Result {
  const reduction = reductionOf('cooling-flight');
  if (!reduction) throw new Error('no flight cooling');
  return reduction.reduce(input);
}

export function predict(result: Result, conditions: unknown) {
  const answer = reductionOf('cooling-flight')?.predict?.(result, conditions);
  if (!answer) throw new Error('no prediction');
  return answer;
}

export function cells(result: Result, table: string, column: string): unknown[] {
  const found = result.tables.find((one) => one.name === table);
  const index = found?.columns.findIndex((one) => one.name === column) ?? -1;
  return found?.rows.map((row) => row[index]) ?? [];
}

export function flagsOf(result: Result, kind: string): string[] {
  return [...result.flags, ...result.quantities.flatMap((one) => one.flags)]
    .filter((one) => one.kind === kind)
    .map((one) => one.message);
}

export const exponent = (result: Result, name: string) =>
  result.quantities.find((one) => one.name === `${name}-exponent`);
