/**
 * Stretches in which a setting (engine speed, door, manifold pressure) stood still, found in a noisy, evenly spaced
 * channel. Nothing is asked of the quantity that the setting will later explain.
 *
 * Short bins are joined from the bottom up, nearest neighbours first, until every pair left differs by more than its
 * tolerance and more than noise and slow wander can make two means differ. Unlike a band about the first value this
 * neither cuts a wandering hold into pieces nor swallows a small step; it costs no tuning to the noise of a recorder.
 */
import { median, selected } from '../numbers/index.ts';

export interface SettingWords {
  /** levels closer than this are one setting, unit of the channel */
  tolerance(level: number): number;
  /** standard deviation of slow wander that is still one setting, unit of the channel */
  wander(level: number): number;
  /** correlation time of that wander, s */
  wanderSeconds: number;
  /** an excursion shorter than this, back to the level before, does not end a hold, s */
  bridgeSeconds: number;
  /** means over 20 s that scatter by more than this are no setting but a hand that kept moving, unit of the channel */
  unrest(level: number): number;
}

export interface SteadyLevel {
  /** first and last sample of the stretch, indices */
  from: number;
  to: number;
  level: number;
  /** robust standard deviation of the samples about the level, unit of the channel */
  scatter: number;
}

/** About this long is a bin: short against any hold, long against a glitch. */
const BIN_SECONDS = 5;

/** Two means that differ by fewer of their own standard deviations than this are one. */
const SIGMAS = 4;

/**
 * Find the steady levels of a channel.
 * @param v evenly spaced readings, any one unit; NaN is missing
 * @param dt spacing, s
 * @param words what counts as one setting, object
 * @returns stretches in order, not overlapping; moves between them belong to none
 */
export function steadyLevels(v: Float64Array, dt: number, words: SettingWords): SteadyLevel[] {
  const bins = binsOf(v, dt);
  const noise = noiseOf(bins);
  const astride = Math.round(BIN_SECONDS / dt);
  const joined = joinBins(alikeJoined(bins), dt, words, noise);
  const cut: SteadyLevel[] = [];
  joined.forEach((piece, i) => {
    const right = joined[i + 1]?.from ?? v.length;
    const least = Math.max((cut[cut.length - 1]?.to ?? -1) + 1, piece.from - astride);
    const level = fitted(piece, v, words, least, Math.min(v.length - 1, right + astride));
    if (level && atRest(level, v, dt, words)) cut.push(level);
  });
  return bridged(cut, dt, words);
}

/** Means over this tell a moving setting from a noisy one, s. */
const REST_SECONDS = 20;

function atRest(level: SteadyLevel, v: Float64Array, dt: number, words: SettingWords): boolean {
  const size = Math.max(1, Math.round(REST_SECONDS / dt));
  let [squares, blocks] = [0, 0];
  for (let from = level.from; from + size - 1 <= level.to; from += size) {
    let [sum, n] = [0, 0];
    for (let i = from; i < from + size; i += 1) {
      const value = v[i] ?? Number.NaN;
      if (Number.isNaN(value)) continue;
      sum += value;
      n += 1;
    }
    if (n === 0) continue;
    squares += (sum / n - level.level) ** 2;
    blocks += 1;
  }
  return blocks < 2 || Math.sqrt(squares / blocks) <= words.unrest(level.level);
}

interface Piece {
  from: number;
  to: number;
  level: number;
  /** samples */
  n: number;
  gapAfter: boolean;
}

function binsOf(v: Float64Array, dt: number): Piece[] {
  const size = Math.max(1, Math.round(BIN_SECONDS / dt));
  const bins: Piece[] = [];
  let held: number[] = [];
  let from = 0;
  const close = (to: number, gapAfter: boolean) => {
    if (held.length > 0) bins.push({ from, to, level: middleOfFew(held), n: held.length, gapAfter });
    else if (gapAfter) {
      const last = bins[bins.length - 1];
      if (last) last.gapAfter = true;
    }
    held = [];
    from = to + 1;
  };
  let missing = 0;
  for (let i = 0; i < v.length; i += 1) {
    const value = v[i] ?? Number.NaN;
    missing = Number.isNaN(value) ? missing + 1 : 0;
    if (!Number.isNaN(value)) held.push(value);
    // a bin's worth of missing samples is a gap that nothing may be joined across
    if (missing >= size) close(i, true);
    else if (i - from + 1 >= size) close(i, false);
  }
  close(v.length - 1, true);
  return bins;
}

// Noise of a bin from the steps between neighbours, most of which lie inside one setting.
function noiseOf(bins: readonly Piece[]): number {
  const steps = bins.slice(1).map((bin, i) => Math.abs(bin.level - (bins[i]?.level ?? bin.level)));
  return steps.length > 0 ? (1.4826 * median(steps)) / Math.SQRT2 : 0;
}

// Bins that read exactly alike (a switch, a door at rest) are one to begin with.
function alikeJoined(bins: readonly Piece[]): Piece[] {
  const out: Piece[] = [];
  for (const bin of bins) {
    const last = out[out.length - 1];
    if (last && !last.gapAfter && last.level === bin.level) out[out.length - 1] = join(last, bin);
    else out.push(bin);
  }
  return out;
}

function joinBins(bins: Piece[], dt: number, words: SettingWords, noise: number): Piece[] {
  let pieces = bins;
  for (;;) {
    const apart = pieces.map((piece, i) => distance(piece, pieces[i + 1], dt, words, noise));
    const next: Piece[] = [];
    let merged = false;
    for (let i = 0; i < pieces.length; i += 1) {
      const piece = pieces[i];
      const right = pieces[i + 1];
      if (!piece) continue;
      const here = apart[i] ?? Number.POSITIVE_INFINITY;
      // nearest for both sides; of equal ones the first, so that a pass over still readings joins every other pair
      const nearest =
        here <= (apart[i + 1] ?? Number.POSITIVE_INFINITY) && here <= (apart[i - 1] ?? Number.POSITIVE_INFINITY);
      if (right && here <= 1 && nearest) {
        next.push(join(piece, right));
        merged = true;
        i += 1;
      } else next.push(piece);
    }
    pieces = next;
    if (!merged) return pieces;
  }
}

// Difference of two levels over what they may differ by: 1 or less is one setting.
function distance(a: Piece, b: Piece | undefined, dt: number, words: SettingWords, noise: number): number {
  if (!b || a.gapAfter) return Number.POSITIVE_INFINITY;
  const level = (a.level * a.n + b.level * b.n) / (a.n + b.n);
  const perSecond = 1 / (a.n * dt) + 1 / (b.n * dt);
  const wander = words.wander(level) * Math.sqrt(Math.min(2, 2 * words.wanderSeconds * perSecond));
  const white = noise * Math.sqrt(Math.max(dt, BIN_SECONDS) * perSecond);
  const allowed = Math.max(words.tolerance(level), SIGMAS * Math.hypot(wander, white));
  return Math.abs(a.level - b.level) / allowed;
}

function join(a: Piece, b: Piece): Piece {
  const n = a.n + b.n;
  return { from: a.from, to: b.to, level: (a.level * a.n + b.level * b.n) / n, n, gapAfter: b.gapAfter };
}

// The level of a joined piece is the mean of what lies about its median: finer than the recorder's step. Its ends move inwards past samples that still belong to the move, or
// outwards, by less than a bin, over samples that a bin astride the move has hidden.
function fitted(piece: Piece, v: Float64Array, words: SettingWords, left: number, right: number): SteadyLevel | null {
  const inside = v.subarray(piece.from, piece.to + 1).filter((value) => !Number.isNaN(value));
  const middle = selected(inside, Math.floor(inside.length / 2));
  const scatter =
    1.4826 *
    selected(
      inside.map((value) => Math.abs(value - middle)),
      Math.floor(inside.length / 2),
    );
  const band = Math.max(words.tolerance(middle), 3 * scatter);
  let [sum, near] = [0, 0];
  for (const value of inside) {
    if (Math.abs(value - middle) > band) continue;
    sum += value;
    near += 1;
  }
  const level = sum / near;
  const settled = (i: number) => Math.abs(middleOf(v[i - 1], v[i], v[i + 1]) - level) <= band;
  const there = (i: number) => !Number.isNaN(v[i] ?? Number.NaN);
  let from = piece.from;
  let to = piece.to;
  while (from <= to && !settled(from)) from += 1;
  while (to >= from && !settled(to)) to -= 1;
  if (from > to) return null;
  if (from === piece.from) while (from > left && there(from - 1) && settled(from - 1)) from -= 1;
  if (to === piece.to) while (to < right && there(to + 1) && settled(to + 1)) to += 1;
  return { from, to, level, scatter };
}

function bridged(levels: readonly SteadyLevel[], dt: number, words: SettingWords): SteadyLevel[] {
  const out: SteadyLevel[] = [];
  for (const level of levels) {
    const back = out.findLastIndex(
      (one) =>
        (level.from - one.to) * dt <= words.bridgeSeconds &&
        Math.abs(one.level - level.level) <= words.tolerance(level.level),
    );
    const before = out[back];
    if (before) {
      const n = [before.to - before.from + 1, level.to - level.from + 1] as const;
      const mean = (before.level * n[0] + level.level * n[1]) / (n[0] + n[1]);
      out.splice(back, out.length - back, {
        ...before,
        to: level.to,
        level: mean,
        scatter: Math.max(before.scatter, level.scatter),
      });
    } else out.push(level);
  }
  return out;
}

// Few readings are sorted by hand: a long log has tens of thousands of bins.
function middleOfFew(values: number[]): number {
  for (let i = 1; i < values.length; i += 1) {
    const value = values[i] ?? 0;
    let j = i - 1;
    for (; j >= 0 && (values[j] ?? 0) > value; j -= 1) values[j + 1] = values[j] ?? 0;
    values[j + 1] = value;
  }
  const half = values.length >> 1;
  return values.length % 2 === 1 ? (values[half] ?? 0) : ((values[half - 1] ?? 0) + (values[half] ?? 0)) / 2;
}

// The middle of three readings, of fewer where some are missing or at an end.
function middleOf(before: number | undefined, here: number | undefined, after: number | undefined): number {
  const there = [before, here, after].filter((value): value is number => value !== undefined && !Number.isNaN(value));
  return there.length === 0 ? Number.NaN : middleOfFew(there);
}
