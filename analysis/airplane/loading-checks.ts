/** Weight and balance checked against itself: envelope, chord, stations, tanks. */
import { show } from '../units/index.ts';
import type { Airplane } from './configuration.ts';
import type { CrossCheck } from './cross-check.ts';

/** shares of the chord between which the range of a conventional airplane lies; common practice, no source */
const USUAL_RANGE = [0.05, 0.45] as const;

export const loadingChecks: readonly CrossCheck[] = [
  {
    paths: ['loading.envelope', 'loading.mac'],
    says: ({ loading: { envelope, mac } }) => {
      if (!mac || envelope.length === 0) return null;
      const shares = envelope.map((corner) => (corner.arm.si - mac.leadingEdge.si) / mac.length.si);
      const [low, high] = [Math.min(...shares), Math.max(...shares)];
      if (low >= USUAL_RANGE[0] && high <= USUAL_RANGE[1]) return null;
      return `The CG range is ${percent(low)} to ${percent(high)} of the mean aerodynamic chord, outside what conventional airplanes use (5 to 45 %): check datum, chord and arms.`;
    },
  },
  {
    paths: ['loading.envelope', 'limits.mass.maximum'],
    says: ({ loading: { envelope }, limits }) => {
      if (envelope.length === 0) return null;
      const top = Math.max(...envelope.map((corner) => corner.mass.si));
      const maximum = limits.mass.maximum.si;
      if (Math.abs(top - maximum) < 0.5) return null;
      return `The envelope ends at ${show(top, 'kg', { decimals: 0 }).text}, the maximum mass is ${show(maximum, 'kg', { decimals: 0 }).text}.`;
    },
  },
  {
    paths: ['loading.envelope'],
    says: ({ loading: { envelope } }) =>
      envelope.length > 0 && envelope.length < 3 ? 'An envelope needs at least three corners.' : null,
  },
  {
    paths: ['loading.empty', 'limits.mass.maximum'],
    says: ({ loading: { empty, pilotMass }, limits }) => {
      if (!empty) return null;
      const left = limits.mass.maximum.si - empty.mass.si - (pilotMass?.si ?? 0);
      return left <= 0 ? 'The empty airplane with its pilot is already over the maximum mass.' : null;
    },
  },
  {
    paths: ['fuel.tanks', 'loading.envelope'],
    says: ({ fuel, loading }) => {
      const without = fuel.tanks.find((tank) => tank.arm === undefined);
      if (!without || loading.envelope.length === 0) return null;
      return `Tank ${without.name} has no arm: the CG cannot be followed as its fuel burns.`;
    },
  },
  {
    paths: ['fuel.tanks', 'loading.stations', 'loading.mac'],
    says: ({ fuel, loading: { mac, stations } }) => {
      if (!mac) return null;
      const arms = [...stations.map((one) => one.arm.si), mac.leadingEdge.si, mac.leadingEdge.si + mac.length.si];
      const [low, high] = [Math.min(...arms) - mac.length.si, Math.max(...arms) + mac.length.si];
      const odd = fuel.tanks.find((tank) => tank.arm && (tank.arm.si < low || tank.arm.si > high));
      return odd ? `Tank ${odd.name} lies outside every other arm by more than a chord: check its arm and unit.` : null;
    },
  },
  {
    paths: ['loading.stations'],
    says: ({ loading: { stations } }: Airplane) => {
      const names = stations.map((one) => one.name);
      const twice = names.find((name, i) => names.indexOf(name) !== i);
      return twice === undefined ? null : `Two stations are called ${twice}.`;
    },
  },
  {
    paths: ['loading.stations', 'loading.pilotMass'],
    says: ({ loading: { stations, pilotMass } }) => {
      const seat = stations.find((one) => one.kind === 'seat');
      if (!pilotMass) return null;
      if (!seat) return 'The pilot’s mass is stated, but no station is a seat.';
      return seat.maximum && pilotMass.si > seat.maximum.si
        ? 'The pilot is heavier than the first seat may hold.'
        : null;
    },
  },
];

function percent(share: number): string {
  return show(share, '%', { decimals: 0 }).text;
}
