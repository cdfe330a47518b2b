/** Segments where all conditions held for long enough, and the stretches that came near but were left out. */
import { median } from '../numbers/index.ts';
import { type Condition, intersect, type Stretch, stretchesWhere } from './condition.ts';
import type { Excluded } from './segment.ts';

export interface Search {
  /** common times, rising, s */
  times: ArrayLike<number>;
  conditions: readonly Condition[];
  /** shortest segment, s */
  dwell: number;
  /** dropped at the start of what holds, s: settling */
  settle: number;
  /** a step between samples longer than this ends a segment, s */
  bridge: number;
  /** stretches shorter than this are not worth a remark, s */
  remarkFrom: number;
}

export interface Held {
  stretches: Stretch[];
  excluded: Excluded[];
}

/**
 * Find where every condition holds. Conditions about a fixed centre come first; then those about the segment's own
 * median cut what is left, each remainder being looked at again, so that two speeds in one straight flight are two.
 * @param search times, conditions and lengths, object
 * @returns stretches of samples, and what was left out with the reason
 */
export function findHeld(search: Search): Held {
  const { times } = search;
  const all = withoutGaps(times, search.bridge);
  const fixed = search.conditions.filter((one) => one.about === 'fixed');
  const own = search.conditions.filter((one) => one.about === 'own median');
  const candidates = fixed.reduce((left, one) => intersect(left, stretchesWhere(one)), all);
  const held: Held = { stretches: [], excluded: [] };
  for (const candidate of candidates) settleAndCut(candidate, own, search, held);
  return held;
}

function settleAndCut(candidate: Stretch, own: readonly Condition[], search: Search, held: Held): void {
  const { times } = search;
  const start = (times[candidate.from] ?? 0) + search.settle;
  let from = candidate.from;
  while (from < candidate.to && (times[from] ?? 0) < start) from += 1;
  const settled = { from, to: candidate.to };
  if (lengthOf(settled, times) < search.dwell) {
    leaveOut(candidate, `shorter than ${search.dwell} s after ${search.settle} s of settling`, search, held);
    return;
  }
  cut(settled, own, search, held);
}

function cut(stretch: Stretch, own: readonly Condition[], search: Search, held: Held): void {
  if (lengthOf(stretch, search.times) < search.dwell) {
    leaveOut(stretch, `shorter than ${search.dwell} s`, search, held);
    return;
  }
  let best: Stretch | undefined = stretch;
  let broken = '';
  for (const one of own) {
    if (!best) break;
    const kept = steadiest(one, best, search.times);
    if (kept?.from !== best.from || kept.to !== best.to) broken = one.words;
    best = kept;
  }
  if (!best || lengthOf(best, search.times) < search.dwell) {
    leaveOut(stretch, `not ${search.dwell} s with ${broken || 'all conditions'}`, search, held);
    return;
  }
  if (best.from > stretch.from) cut({ from: stretch.from, to: best.from - 1 }, own, search, held);
  held.stretches.push(best);
  if (best.to < stretch.to) cut({ from: best.to + 1, to: stretch.to }, own, search, held);
}

// Longest part within the band about its own median; the median moves with the part, so look again until it stands.
function steadiest(condition: Condition, whole: Stretch, times: ArrayLike<number>): Stretch | undefined {
  let part = whole;
  for (let round = 0; round < 4; round += 1) {
    const centre = median(
      Array.from({ length: part.to - part.from + 1 }, (_, i) => condition.values[part.from + i] ?? NaN),
    );
    const longest = stretchesWhere(condition, centre, whole).sort((a, b) => lengthOf(b, times) - lengthOf(a, times))[0];
    if (!longest) return undefined;
    if (longest.from === part.from && longest.to === part.to) return part;
    part = longest;
  }
  return part;
}

function withoutGaps(times: ArrayLike<number>, bridge: number): Stretch[] {
  const found: Stretch[] = [];
  let from = 0;
  for (let i = 1; i <= times.length; i += 1) {
    if (i < times.length && (times[i] ?? 0) - (times[i - 1] ?? 0) <= bridge) continue;
    if (i > from) found.push({ from, to: i - 1 });
    from = i;
  }
  return found;
}

function leaveOut(stretch: Stretch, reason: string, search: Search, held: Held): void {
  if (lengthOf(stretch, search.times) < search.remarkFrom) return;
  held.excluded.push({
    fromSeconds: search.times[stretch.from] ?? 0,
    toSeconds: search.times[stretch.to] ?? 0,
    reason,
  });
}

function lengthOf(stretch: Stretch, times: ArrayLike<number>): number {
  return (times[stretch.to] ?? 0) - (times[stretch.from] ?? 0);
}
