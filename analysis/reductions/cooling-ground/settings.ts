/** Holds: intervals in which power, door and fan stood still. The temperatures are not looked at. */
import { type SettingWords, type SteadyLevel, steadyLevels } from '../../segments/index.ts';
import { toSi } from '../../units/index.ts';
import type { Trace } from './trace.ts';

export interface Hold {
  /** first and last sample */
  from: number;
  to: number;
  /** 1/s; 0 is stopped */
  engineSpeed: number;
  /** 0..1, null where not logged */
  exit: number | null;
  fan: boolean | null;
  /** manifold pressure, Pa, null where not logged */
  manifold: number | null;
  /** the door moved about: something set it by itself */
  doorMoving: boolean;
  /** sample at which the last setting before changed, null where the record begins here */
  changedAt: number | null;
}

/** An engine that turns slower than this does not run, 1/s. */
export const STOPPED_BELOW = toSi(300, 'rpm');

// Power goes with the cube of speed on a propeller's fine stop: 1 % of speed is 3 % of power.
const SPEED: SettingWords = {
  tolerance: (level) => Math.max(toSi(15, 'rpm'), 0.01 * level),
  wander: (level) => 0.007 * level,
  wanderSeconds: 20,
  bridgeSeconds: 15,
  unrest: (level) => Math.max(toSi(40, 'rpm'), 0.03 * level),
};
const DOOR: SettingWords = {
  tolerance: () => 0.03,
  wander: () => 0,
  wanderSeconds: 0,
  bridgeSeconds: 15,
  unrest: () => 0.06,
};
const FAN: SettingWords = {
  tolerance: () => 0.3,
  wander: () => 0,
  wanderSeconds: 0,
  bridgeSeconds: 5,
  unrest: () => 0.3,
};
const MANIFOLD: SettingWords = {
  tolerance: (level) => 0.04 * level,
  wander: (level) => 0.01 * level,
  wanderSeconds: 20,
  bridgeSeconds: 15,
  unrest: (level) => 0.06 * level,
};
/** A door or manifold level that lasts shorter than this is no setting, s. */
const SHORTEST_LEVEL = 45;

/**
 * The holds of a run.
 * @param trace the run, object
 * @returns holds in order of time, moves between settings left out
 */
export function holdsOf(trace: Trace): Hold[] {
  const { dt, n } = trace.grid;
  const speeds = steadyLevels(trace.speed, dt, SPEED);
  const fans = trace.fan ? steadyLevels(trace.fan, dt, FAN) : null;
  const doors = trace.door ? lasting(steadyLevels(trace.door, dt, DOOR), dt) : null;
  const pressures = trace.manifold ? lasting(steadyLevels(trace.manifold, dt, MANIFOLD), dt) : null;
  const holds: Hold[] = [];
  for (const speed of speeds) {
    const stopped = speed.level < STOPPED_BELOW;
    const pieces = cutBy(cutBy([{ from: speed.from, to: speed.to }], fans), stopped ? null : cutsOf(pressures));
    for (const piece of pieces) {
      const doorPieces =
        doors === null || stopped ? [{ ...piece, level: null, moving: false }] : doorsIn(piece, doors, dt);
      for (const part of doorPieces) {
        holds.push({
          from: part.from,
          to: part.to,
          engineSpeed: stopped ? 0 : speed.level,
          exit: part.level ?? meanOf(trace.door, part.from, part.to),
          fan: fanAt(fans, part.from, part.to),
          manifold: meanOf(trace.manifold, part.from, part.to),
          doorMoving: part.moving,
          changedAt: null,
        });
      }
    }
  }
  const inOrder = holds.sort((a, b) => a.from - b.from);
  return inOrder.map((hold) => ({ ...hold, changedAt: hold.from > 0 && hold.from < n ? hold.from : null }));
}

interface Span {
  from: number;
  to: number;
}

const lasting = (levels: SteadyLevel[], dt: number) =>
  levels.filter((level) => (level.to - level.from + 1) * dt >= SHORTEST_LEVEL);

/** Parts of the pieces inside one level each; a piece no level touches stays whole, its level unknown. */
function cutBy(pieces: Span[], levels: readonly Span[] | null): Span[] {
  if (levels === null) return pieces;
  return pieces.flatMap((piece) => {
    const inside = levels
      .map((level) => ({ from: Math.max(piece.from, level.from), to: Math.min(piece.to, level.to) }))
      .filter((part) => part.to >= part.from);
    return inside.length > 0 ? inside : [piece];
  });
}

// Manifold pressure cuts where one lasting level gives way to another; what lies between goes with the first.
function cutsOf(levels: readonly SteadyLevel[] | null): Span[] | null {
  if (levels === null || levels.length === 0) return null;
  return levels.map((level, i) => ({
    from: i === 0 ? 0 : level.from,
    to: i === levels.length - 1 ? Number.MAX_SAFE_INTEGER : (levels[i + 1]?.from ?? level.to) - 1,
  }));
}

// Lasting positions of the door inside a piece, and the stretches between them in which it kept moving.
function doorsIn(piece: Span, doors: readonly SteadyLevel[], dt: number) {
  const parts: (Span & { level: number | null; moving: boolean })[] = [];
  let next = piece.from;
  const moved = (from: number, to: number) => {
    if ((to - from + 1) * dt >= SHORTEST_LEVEL) parts.push({ from, to, level: null, moving: true });
  };
  for (const door of doors) {
    const from = Math.max(piece.from, door.from);
    const to = Math.min(piece.to, door.to);
    if (to < from) continue;
    moved(next, from - 1);
    parts.push({ from, to, level: door.level, moving: false });
    next = to + 1;
  }
  moved(next, piece.to);
  return parts;
}

function fanAt(fans: readonly SteadyLevel[] | null, from: number, to: number): boolean | null {
  const level = fans?.find((one) => one.from <= to && one.to >= from)?.level;
  return level === undefined ? null : level > 0.5;
}

/**
 * Mean of a channel over samples.
 * @param values on the grid, NaN where missing, or null
 * @param from first sample
 * @param to last sample
 * @returns mean in its unit, null where nothing was read
 */
export function meanOf(values: Float64Array | null, from: number, to: number): number | null {
  if (values === null) return null;
  let [sum, n] = [0, 0];
  for (let i = from; i <= to; i += 1) {
    const value = values[i] ?? Number.NaN;
    if (Number.isNaN(value)) continue;
    sum += value;
    n += 1;
  }
  return n > 0 ? sum / n : null;
}
