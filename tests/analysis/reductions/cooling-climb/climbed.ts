/** Simulated climbs with something changed in their recording, reduced. */
import type { Airplane } from '../../../../analysis/airplane/index.ts';
import { type Recording, recordingOf } from '../../../../analysis/logs/index.ts';
import { coolingClimb } from '../../../../analysis/reductions/cooling-climb/index.ts';
import type { ReductionInput } from '../../../../analysis/reductions/index.ts';
import type { Result, ResultQuantity } from '../../../../analysis/results/index.ts';
import { fromSi, toSi } from '../../../../analysis/units/index.ts';
import { type ClimbDay, PLAIN_CLIMB, simulateClimb } from '../../../blind/cooling-climb-flight.ts';
import { airplaneWith } from '../../../blind/cooling-days.ts';

export const C = (degrees: number) => toSi(degrees, 'degC');

/** Ouzel with the thermostat of the simulated day and a limit of its own. */
export function ouzelFor(day: ClimbDay = PLAIN_CLIMB, limit = C(150)): Airplane {
  return airplaneWith('ouzel', (json) => {
    const stated = (si: number) => ({ value: fromSi(si, 'degC'), unit: 'degC', source: 'the test' });
    delete json.plan?.coolingMargin;
    if (day.thermostat) {
      Object.assign(json.cooling ?? {}, {
        thermostatStart: stated(day.thermostat.start),
        thermostatOpen: stated(day.thermostat.open),
      });
    }
    Object.assign(json.limits ?? {}, { coolant: { caution: stated(limit - 7), limit: stated(limit) } });
  });
}

export interface Climbed {
  result: Result;
  truth: ReturnType<typeof simulateClimb>['truth'];
}

type Channels = Record<string, (t: number, value: number) => number>;

/** A recording with channels changed sample by sample, left out (no function of theirs gives a number) or added. */
export function changed(recording: Recording, change: Channels, added: Record<string, (t: number) => number> = {}) {
  const [table] = recording.tables;
  if (!table) throw new Error('no table');
  const { seconds } = table.time;
  const channels = table.channels.map((one) => {
    const by = change[one.quantity ?? ''];
    return by ? { ...one, values: one.values.map((value, i) => by(seconds[i] ?? 0, value)) } : one;
  });
  const more = Object.entries(added).map(([quantity, by], k) => ({
    column: quantity,
    index: channels.length + k,
    name: quantity,
    quantity,
    unit: null,
    confidence: 1,
    why: 'added',
    values: seconds.map((t) => by(t)),
    valid: 1,
    flags: [],
  }));
  return recordingOf([{ ...table, channels: [...channels, ...more] }]);
}

/** Fly, change, reduce. */
export function climbed(
  day: Partial<ClimbDay> = {},
  how: Partial<Omit<ReductionInput, 'airplane'>> & {
    airplane?: Airplane | null;
    seed?: number;
    change?: Channels;
    added?: Record<string, (t: number) => number>;
  } = {},
): Climbed {
  const { seed = 3, change = {}, added = {}, airplane, ...input } = how;
  const flown = { ...PLAIN_CLIMB, ...day };
  const { recording, truth } = simulateClimb(flown, seed);
  const result = coolingClimb.reduce({
    recording: changed(recording, change, added),
    ...(airplane === null ? {} : { airplane: airplane ?? ouzelFor(flown) }),
    ...input,
  });
  return { result, truth };
}

export function kindsOf(result: Result): string[] {
  return result.flags.map((one) => one.kind);
}

export function quantityIn(result: Result, name: string): ResultQuantity {
  const found = result.quantities.find((one) => one.name === name);
  if (!found) throw new Error(`no ${name}`);
  return found;
}
