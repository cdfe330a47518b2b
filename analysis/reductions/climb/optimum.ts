/**
 * Best rate and best angle of one density-altitude band. Two forms are always fitted: a quadratic in true airspeed and
 * the constant-power form a - b V^3 - c/V; half their difference counts as lack of fit. An optimum on a flown end, or a
 * curve that does not bend, is "not bracketed" and gets no number.
 */
import {
  type LeastSquaresFit,
  leastSquares,
  monteCarlo,
  multivariateT,
  type Random,
  type Scatter,
  seededRandom,
  studentTQuantile,
} from '../../numbers/index.ts';
import { bandScatter } from './band-scatter.ts';
import { curveRate, curveRow, type Form, type RateCurve, SCALE } from './rate-curve.ts';

/** one point of the band: true airspeed, rate at constant CAS on the standard day, runs averaged in it */
export interface BandPoint {
  V: number;
  rate: number;
  runs: number;
}

/** a value and the half-widths that make up its U95 */
export interface OptimumValue {
  value: number;
  low: number;
  high: number;
  /** from the scatter between runs */
  repeatability: number;
  /** from the choice of curve */
  fit: number;
}

export interface BandOptimum {
  form: Form;
  scatter: Scatter;
  /** rms of the residuals, m/s, and each point's residual */
  residuals: number[];
  Vy: OptimumValue | null;
  Vx: OptimumValue | null;
  bestRate: OptimumValue | null;
  /** true airspeeds within 2 % of the best rate */
  withinTwoPercent: [number, number] | null;
  /** why a value is missing, in words */
  whyNoVy: string;
  whyNoVx: string;
  /** the curve of the chosen form, for charts and predictions */
  curve: RateCurve;
}

const DRAWS = 4000;
/** more draws than this on a flown end and the optimum is not bracketed */
const MOST_ON_END = 0.025;

/**
 * Best rate and best angle from the points of one band.
 * @param points at least four, speeds in m/s, rates in m/s
 * @param constantSpeed true for a constant-speed propeller, which decides the form quoted, boolean
 * @param seed of the draws, text
 * @param pairs scatter of one run seen within pairs: sum of squares, m2/s2, and degrees of freedom; none when left out
 * @returns both optima with intervals, or why there is none
 * @throws OutOfRange when the points do not separate the unknowns
 * @source forms and bracket rule: the project's own simulations [simulation]; draws [jcgm-101]
 */
export function bandOptimum(
  points: readonly BandPoint[],
  constantSpeed: boolean,
  seed: string,
  pairs: { rss: number; nu: number } = { rss: 0, nu: 0 },
): BandOptimum {
  const chosen: Form = constantSpeed ? 'constant-power' : 'quadratic';
  const fits = { quadratic: fitForm('quadratic', points), 'constant-power': fitForm('constant-power', points) };
  const bent = fits[chosen].atBound.every((bound) => !bound);
  const form: Form = bent ? chosen : 'quadratic';
  const fit = fits[form];
  const other = fits[form === 'quadratic' ? 'constant-power' : 'quadratic'];
  const scatter = bandScatter(fit.rss, Math.max(0, points.length - 3), pairs);
  const covariance = fit.inverse.map((row) => row.map((value) => value * scatter.s ** 2));
  const speeds = points.map((point) => point.V);
  const [first, last] = [Math.min(...speeds), Math.max(...speeds)];
  const random = seededRandom(seed);
  const drawn = drawOptima(form, fit.parameters, covariance, scatter.nu, [first, last], random);
  const ofOther = other.atBound.every((bound) => !bound)
    ? optima(other === fits.quadratic ? 'quadratic' : 'constant-power', other.parameters, first, last)
    : null;
  const best = optima(form, fit.parameters, first, last);
  const curved = isCurved(fit, form, scatter);
  const whyNoVy = curved ? endWords('best rate', best.Vy, drawn.lowVy, drawn.highVy, first, last) : FLAT;
  const whyNoVx = curved ? endWords('best angle', best.Vx, drawn.lowVx, drawn.highVx, first, last) : FLAT;
  const value = (at: number, from: { low: number; high: number }, elsewhere: number | undefined): OptimumValue => {
    // Half the difference is the most the form may be wrong by: rectangular, so 2/sqrt(3) of it at 95 %.
    const fitPart = elsewhere === undefined ? 0 : Math.abs(elsewhere - at) / Math.sqrt(3);
    const repeatability = Math.max(at - from.low, from.high - at);
    const widen = Math.hypot(repeatability, fitPart) / Math.max(repeatability, Number.MIN_VALUE);
    return {
      value: at,
      low: at - (at - from.low) * widen,
      high: at + (from.high - at) * widen,
      repeatability,
      fit: fitPart,
    };
  };
  return {
    form,
    scatter,
    residuals: points.map((point) => point.rate - curveRate(form, fit.parameters, point.V)),
    Vy: whyNoVy === '' ? value(best.Vy, drawn.Vy, ofOther?.Vy) : null,
    Vx: whyNoVx === '' ? value(best.Vx, drawn.Vx, ofOther?.Vx) : null,
    bestRate: whyNoVy === '' ? value(best.rate, drawn.rate, ofOther?.rate) : null,
    withinTwoPercent: whyNoVy === '' ? nearBest(form, fit.parameters, first, last, best) : null,
    whyNoVy,
    whyNoVx,
    curve: { form, parameters: fit.parameters, covariance, nu: scatter.nu },
  };
}

const FLAT = 'the rates do not bend with speed beyond their scatter';

/**
 * The optima themselves, without their doubt: for a rerun with something shifted.
 * @param points of a band, speeds and rates in m/s
 * @param form the form quoted, text
 * @returns true airspeeds of best rate and best angle and the best rate, m/s, kept inside the speeds flown
 * @throws OutOfRange when the points do not separate the unknowns
 */
export function optimaOf(points: readonly BandPoint[], form: Form): Optima {
  const speeds = points.map((point) => point.V);
  return optima(form, fitForm(form, points).parameters, Math.min(...speeds), Math.max(...speeds));
}

function fitForm(form: Form, points: readonly BandPoint[]): LeastSquaresFit {
  const rows = points.map((point) => ({ ...point, w: Math.sqrt(point.runs) }));
  const jacobian = rows.map(({ V, w }) => curveRow(form, V).map((value) => value * w));
  const top = Math.max(...points.map((point) => point.rate));
  return leastSquares({
    residuals: (q) => rows.map(({ V, rate, w }) => w * (curveRate(form, q, V) - rate)),
    jacobian: () => jacobian,
    start: form === 'quadratic' ? [top, 0, 0] : [2 * top, top / 2, top / 2],
    ...(form === 'constant-power' ? { lower: [Number.NEGATIVE_INFINITY, 0, 0] } : {}),
    scale: [1, 1, 1],
  });
}

export interface Optima {
  Vy: number;
  Vx: number;
  rate: number;
}

// The optimum inside the flown ends; it lands on an end when the curve still rises or falls there.
function optima(form: Form, q: readonly number[], first: number, last: number): Optima {
  const [, b = 0, c = 0] = q;
  const inside = (x: number) => Math.min(last, Math.max(first, x));
  let Vy: number;
  let Vx: number;
  if (form === 'quadratic') {
    Vy = c < 0 ? (-b / (2 * c)) * SCALE : curveRate(form, q, last) > curveRate(form, q, first) ? last : first;
    const [a = 0] = q;
    Vx = c < 0 && a / c > 0 ? Math.sqrt(a / c) * SCALE : first;
  } else {
    Vy = b > 0 ? (c / (3 * b)) ** 0.25 * SCALE : last;
    Vx = steepest(q, first, last);
  }
  Vy = inside(Vy);
  Vx = inside(Vx);
  return { Vy, Vx, rate: curveRate(form, q, Vy) };
}

// Of the constant-power form: rate over speed is steepest where 2 c = a x + 2 b x^4, x the scaled speed; by halving.
function steepest(q: readonly number[], first: number, last: number): number {
  const [a = 0, b = 0, c = 0] = q;
  let [low, high] = [first / SCALE, last / SCALE];
  for (let i = 0; i < 40; i += 1) {
    const x = (low + high) / 2;
    if (2 * c > a * x + 2 * b * x ** 4) low = x;
    else high = x;
  }
  return ((low + high) / 2) * SCALE;
}

function drawOptima(
  form: Form,
  q: readonly number[],
  covariance: number[][],
  nu: number,
  ends: [number, number],
  random: Random,
) {
  const [first, last] = ends;
  const draw = multivariateT(random, q, covariance, nu);
  const [Vy, Vx, rate] = monteCarlo(
    draw,
    (one) => {
      const at = optima(form, one, first, last);
      return [at.Vy, at.Vx, at.rate];
    },
    DRAWS,
  );
  if (!Vy || !Vx || !rate) throw new Error('three results were drawn');
  const share = (sorted: Float64Array, at: (value: number) => boolean) => sorted.filter(at).length / sorted.length;
  return {
    Vy,
    Vx,
    rate,
    lowVy: share(Vy.sorted, (value) => value <= first + 1e-6),
    highVy: share(Vy.sorted, (value) => value >= last - 1e-6),
    lowVx: share(Vx.sorted, (value) => value <= first + 1e-6),
    highVx: share(Vx.sorted, (value) => value >= last - 1e-6),
  };
}

function isCurved(fit: LeastSquaresFit, form: Form, scatter: Scatter): boolean {
  if (form === 'constant-power') return fit.atBound.every((bound) => !bound);
  const c = fit.parameters[2] ?? 0;
  const u = scatter.s * Math.sqrt(fit.inverse[2]?.[2] ?? Number.POSITIVE_INFINITY);
  return c < 0 && Math.abs(c) / u >= studentTQuantile(0.975, scatter.nu);
}

function endWords(what: string, at: number, low: number, high: number, first: number, last: number): string {
  if (low > MOST_ON_END || at <= first + 1e-6) return `${what} lies at or below the slowest speed flown`;
  if (high > MOST_ON_END || at >= last - 1e-6) return `${what} lies at or above the fastest speed flown`;
  return '';
}

function nearBest(form: Form, q: readonly number[], first: number, last: number, best: Optima): [number, number] {
  const enough = (V: number) => curveRate(form, q, V) >= 0.98 * best.rate;
  const edge = (outer: number) => {
    if (enough(outer)) return outer;
    let [inside, outside] = [best.Vy, outer];
    for (let i = 0; i < 50; i += 1) {
      const middle = (inside + outside) / 2;
      if (enough(middle)) inside = middle;
      else outside = middle;
    }
    return inside;
  };
  return [edge(first), edge(last)];
}
