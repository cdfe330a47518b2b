/** How far the peak of one climb differs from the next: from climbs flown alike, steadied by a weak prior. */
import { DEFAULT_REPEATABILITY, type HotDayLaw } from '../../models/index.ts';
import { type Scatter, scatterWithPrior } from '../../numbers/index.ts';
import { type Flag, flag } from '../../remarks/index.ts';
import { toSi } from '../../units/index.ts';
import type { Found } from './answer.ts';
import { onHotDay } from './corrected.ts';
import type { CoolingClimbOptions } from './input.ts';

// Two climbs are alike within these; common practice, no source.
const SAME_SPEED = toSi(5, 'kt');
const SAME_EXIT = 0.05;
const SAME_ENGINE = 0.02;

/**
 * Whether two climbs of one temperature were flown alike: airspeed, engine speed and exit door at the peak.
 * @param a one, object
 * @param b the other, object
 * @returns true where everything logged of both agrees
 */
export function isAlike(a: Found, b: Found): boolean {
  const near = (name: string, band: (value: number) => number) => {
    const [x, y] = [a.settings[name], b.settings[name]];
    if (x === undefined || x === null || y === undefined || y === null) return true;
    return Math.abs(x - y) <= band(Math.max(x, y));
  };
  return (
    a.course.quantity === b.course.quantity &&
    near('indicated-airspeed', () => SAME_SPEED) &&
    near('cowl-exit-position', () => SAME_EXIT) &&
    near('engine-speed', (value) => SAME_ENGINE * value)
  );
}

/**
 * Scatter of one climb from peaks reached again.
 * @param found all temperatures of all climbs, list
 * @param law the hot day they are brought to, object
 * @param options what a person stated, object
 * @returns scatter of one climb by quantity, K, and a remark while it is mostly assumed
 * @throws OutOfRange when a height is beyond any airplane's
 */
export function climbScatter(
  found: readonly Found[],
  law: HotDayLaw,
  options: CoolingClimbOptions,
): { repeat: (quantity: string) => Scatter; flags: Flag[] } {
  const usual = DEFAULT_REPEATABILITY['climb-peak-temperature'];
  const s0 = options.runScatter?.si ?? usual.s0;
  const byQuantity = new Map<string, { rss: number; nu: number }>();
  for (const group of alikeGroups(found)) {
    const peaks = group.map((one) => onHotDay(one.course, one.peak.at, law).value);
    const mean = peaks.reduce((sum, value) => sum + value, 0) / peaks.length;
    const quantity = group[0]?.course.quantity ?? '';
    const known = byQuantity.get(quantity) ?? { rss: 0, nu: 0 };
    byQuantity.set(quantity, {
      rss: known.rss + peaks.reduce((sum, value) => sum + (value - mean) ** 2, 0),
      nu: known.nu + peaks.length - 1,
    });
  }
  const repeat = (quantity: string) => {
    const { rss, nu } = byQuantity.get(quantity) ?? { rss: 0, nu: 0 };
    return scatterWithPrior({ s0, nu0: usual.nu0 }, rss, nu);
  };
  const assumed = found.some((one) => repeat(one.course.quantity).assumed);
  const most = Math.max(0, ...[...byQuantity.values()].map((one) => one.nu));
  const seen = most === 0 ? 'no climb was flown twice alike' : `${most} repeat${most === 1 ? '' : 's'} seen`;
  const flags = assumed
    ? [
        flag(
          'assumed-repeatability',
          `climb-to-climb scatter of a peak: ${s0.toFixed(1)} K (standard deviation) assumed, ${seen}; it enters corrected peaks and margins, not the reading of this climb`,
        ),
      ]
    : [];
  return { repeat, flags };
}

function alikeGroups(found: readonly Found[]): Found[][] {
  const groups: Found[][] = [];
  for (const one of found) {
    if (!one.peak.peaked || one.regimes[one.peak.at] === 'regulated') continue;
    const group = groups.find((other) => other[0] && isAlike(other[0], one));
    if (group) group.push(one);
    else groups.push([one]);
  }
  return groups;
}
