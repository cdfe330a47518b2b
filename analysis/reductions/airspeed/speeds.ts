/** Legs flown at one speed and flap setting, turns apart: the groups the answer is given for. */
import { toSi } from '../../units/index.ts';
import type { Leg } from './leg.ts';

export interface SpeedGroup {
  flaps: string;
  /** flown in turns, whose pressure field is not that of level flight: a group of its own */
  turning: boolean;
  /** indices of its legs */
  legs: number[];
  /** mean indicated airspeed of the legs, m/s; NaN where only speed over the ground was written */
  ias: number;
  label: string;
}

/** A gap wider than this between neighbouring legs starts another speed; a group is never wider than twice that. */
const GAP = toSi(3, 'kt');

/**
 * Group legs by flap setting and airspeed; where no airspeed was written, by label.
 * @param legs all legs
 * @returns groups, by flap setting and rising airspeed
 */
export function speedGroups(legs: readonly Leg[]): SpeedGroup[] {
  const groups: SpeedGroup[] = [];
  const order = legs.map((_, i) => i).sort((a, b) => (legs[a]?.ias ?? 0) - (legs[b]?.ias ?? 0));
  const kinds = [...new Set(legs.map((leg) => leg.flaps))].flatMap((flaps) => [
    { flaps, turning: false },
    { flaps, turning: true },
  ]);
  for (const { flaps, turning } of kinds) {
    let open: { group: SpeedGroup; from: number; last: number } | null = null;
    for (const i of order) {
      const leg = legs[i];
      if (!leg || leg.flaps !== flaps || (leg.role === 'turn') !== turning) continue;
      if (Number.isNaN(leg.ias)) {
        const same = groups.find((one) => one.flaps === flaps && Number.isNaN(one.ias) && one.label === leg.label);
        if (same) same.legs.push(i);
        else groups.push({ flaps, turning, legs: [i], ias: Number.NaN, label: leg.label });
        continue;
      }
      if (!open || leg.ias - open.last > GAP || leg.ias - open.from > 2 * GAP) {
        open = { group: { flaps, turning, legs: [], ias: 0, label: leg.label }, from: leg.ias, last: leg.ias };
        groups.push(open.group);
      }
      open.group.legs.push(i);
      open.last = leg.ias;
    }
  }
  for (const group of groups) {
    group.legs.sort((a, b) => a - b);
    if (!Number.isNaN(group.ias))
      group.ias = group.legs.reduce((sum, i) => sum + (legs[i]?.ias ?? 0) / group.legs.length, 0);
  }
  return groups;
}

/**
 * How many speeds groups of one flap setting stand for: legs and turns at one speed are one.
 * @param groups of one flap setting
 * @returns count
 */
export function distinctSpeeds(groups: readonly SpeedGroup[]): number {
  const sorted = groups.map((group) => group.ias).sort((a, b) => a - b);
  return sorted.filter((ias, i) => i === 0 || ias - (sorted[i - 1] ?? ias) > GAP).length;
}
