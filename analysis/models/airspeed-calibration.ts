/**
 * An accepted airspeed calibration: indicated to calibrated airspeed, by flap setting and weight, with its covariance.
 * Carried as static pressure error over impact pressure, a polynomial in lift over impact pressure (the lift coefficient).
 */
import * as z from 'zod';
import { calibratedAirspeed, g0, impactPressure } from '../air/index.ts';
import { combineUncertainty, coverageFactor, type UncertaintyParts, type UncertaintySource } from '../numbers/index.ts';
import { OutOfRange } from '../remarks/index.ts';

const range = z.tuple([z.number(), z.number()]);

/** Degrees of freedom; JSON has no infinity, there null stands for it. */
const freedom = z
  .custom<number | null>((nu) => nu === null || (typeof nu === 'number' && nu > 0))
  .transform((nu) => nu ?? Number.POSITIVE_INFINITY);

export const correctionCurveSchema = z.object({
  /** flap setting as named in the airplane's description */
  flaps: z.string(),
  /** polynomial of (x - centre)/scale, x lift over impact pressure */
  centre: z.number(),
  scale: z.number(),
  coefficients: z.array(z.number()).min(1),
  /** of the coefficients: noise and repeatability together, standard, with its degrees of freedom */
  covariance: z.array(z.array(z.number())),
  nu: freedom,
  /** lack of fit of the polynomial, standard, m/s of calibrated airspeed, and its degrees of freedom */
  lackOfFit: z.number(),
  lackOfFitNu: freedom,
  /** coefficients when one sensor is shifted by its standard uncertainty, with degrees of freedom */
  shifted: z.array(z.object({ sensor: z.string(), nu: freedom, coefficients: z.array(z.number()) })),
  /** indicated airspeeds flown, m/s */
  flown: range,
  speeds: z.number(),
  legs: z.number(),
});

export const airspeedCalibrationSchema = z.object({
  format: z.literal('airspeed-calibration-1'),
  /** mass flown, kg: null where not known, and the curve then holds for the mass flown only */
  mass: z.number().nullable(),
  /** wing area, m2: null where not known; x is then per unit area */
  wingArea: z.number().nullable(),
  /** altimeter and airspeed share one static source, which is taken to hold all of the error */
  commonStatic: z.boolean(),
  /** scatter of one leg, m/s of true airspeed, and its degrees of freedom */
  legScatter: z.number(),
  legScatterNu: freedom,
  curves: z.array(correctionCurveSchema).min(1),
});

export type AirspeedCalibration = z.output<typeof airspeedCalibrationSchema>;
export type CorrectionCurve = z.output<typeof correctionCurveSchema>;

/** How the airplane was loaded when an airspeed was read. */
export interface FlightCondition {
  /** flap setting; the first curve when left out */
  flaps?: string | undefined;
  /** mass, kg; the mass of the calibration when left out */
  mass?: number | undefined;
  loadFactor?: number | undefined;
}

export interface Calibrated {
  cas: number;
  /** expanded uncertainty, m/s: of the mean curve, for this instrument; the instrument's own error is inside it */
  u95: number;
  parts: UncertaintyParts;
  staticError: number; // sensed less true static pressure, Pa, if the pitot is right
}

/** An airspeed this near to a flown one counts as flown: what a leg's own wander covers, m/s. */
const AT_ENDS = 0.5;

/**
 * The calibration carried by an accepted airspeed result.
 * @param model the `model` of the result, any JSON
 * @returns the calibration, or null when the result carries none
 */
export function airspeedCalibrationOf(model: Record<string, unknown> | undefined): AirspeedCalibration | null {
  const parsed = airspeedCalibrationSchema.safeParse(model?.calibration);
  return parsed.success ? parsed.data : null;
}

/**
 * Indicated airspeeds a calibration covers.
 * @param calibration the calibration, object
 * @param flaps flap setting; the first curve when left out, text
 * @returns lowest and highest flown, m/s; null where that setting was not flown
 */
export function calibratedRange(calibration: AirspeedCalibration, flaps?: string): [number, number] | null {
  const curve = curveOf(calibration, flaps);
  return curve ? [curve.flown[0], curve.flown[1]] : null;
}

/**
 * Calibrated airspeed of an indicated one. The uncertainty holds for the instrument that was calibrated: its own error
 * is inside the correction, so do not add it again.
 * @param calibration the calibration, object
 * @param ias indicated airspeed, m/s, as the calibrated channel shows it
 * @param condition flap setting, mass, load factor, object
 * @returns calibrated airspeed with U95 and parts, m/s, and the static pressure error, Pa
 * @throws OutOfRange when the speed lies beyond the flown ones, or the flap setting was not flown
 * @source dp_s/qc as a function of lift coefficient: similarity of the static port's pressure field [memory]; scatter and
 * all else expanded apart and added in quadrature [jcgm-100]
 */
export function calibrate(calibration: AirspeedCalibration, ias: number, condition: FlightCondition = {}): Calibrated {
  const curve = coveringCurve(calibration, ias, condition.flaps);
  const x = liftOverImpact(calibration, ias, condition);
  const cas = correctedAirspeed(ias, errorRatio(curve, curve.coefficients, x));
  const [scatter, ...others] = sourcesAt(curve, ias, x);
  const rest = combineUncertainty(others);
  const repeatability = coverageFactor(curve.nu) * (scatter?.u ?? 0);
  const parts = { ...rest.parts, repeatability };
  return {
    cas,
    u95: Math.hypot(repeatability, rest.u95),
    parts,
    staticError: impactPressure(cas) - impactPressure(ias),
  };
}

/**
 * Covariance of the calibrated airspeeds at several readings of one flap setting: differences of neighbouring speeds
 * are known better than the speeds.
 * @param calibration the calibration, object
 * @param speeds indicated airspeeds, m/s
 * @param condition flap setting, mass, load factor, object
 * @returns standard covariance, m2/s2, square list of rows; lack of fit on the diagonal only
 * @throws OutOfRange as calibrate
 * @source first-order propagation of the coefficients' covariance and of each sensor's shift [jcgm-100]
 */
export function calibrationCovariance(
  calibration: AirspeedCalibration,
  speeds: readonly number[],
  condition: FlightCondition = {},
): number[][] {
  const rows = speeds.map((ias) => {
    const curve = coveringCurve(calibration, ias, condition.flaps);
    const x = liftOverImpact(calibration, ias, condition);
    return { curve, gradient: gradientAt(curve, ias, x), shifts: shiftsAt(curve, ias, x) };
  });
  return rows.map((a, i) =>
    rows.map((b, j) => {
      const random = a.gradient.reduce(
        (sum, one, k) =>
          sum + one * b.gradient.reduce((inner, other, l) => inner + (a.curve.covariance[k]?.[l] ?? 0) * other, 0),
        0,
      );
      const common = a.shifts.reduce((sum, one, k) => sum + one * (b.shifts[k] ?? 0), 0);
      return random + common + (i === j ? a.curve.lackOfFit ** 2 : 0);
    }),
  );
}

/**
 * Lift over impact pressure, n m g/(S qc): the lift coefficient but for compressibility; per unit of mass or area where
 * those are not known.
 * @param calibration mass and wing area, object
 * @param ias indicated airspeed, m/s
 * @param condition mass and load factor, object
 * @returns x, pure number where mass and area are known
 * @throws OutOfRange when the airspeed is not above 0
 * @source definition of the lift coefficient, qc in place of the dynamic pressure [memory]
 */
export function liftOverImpact(
  calibration: { mass: number | null; wingArea: number | null },
  ias: number,
  condition: FlightCondition = {},
): number {
  if (!(ias > 0)) throw new OutOfRange('indicated airspeed', ias, 'above 0 m/s');
  const mass = calibration.mass === null ? 1 : (condition.mass ?? calibration.mass);
  return ((condition.loadFactor ?? 1) * mass * g0) / ((calibration.wingArea ?? 1) * impactPressure(ias));
}

/**
 * Calibrated airspeed when the static source errs by a share of the impact pressure.
 * @param ias indicated airspeed free of instrument error, m/s
 * @param ratio sensed less true static pressure over sensed impact pressure, pure number
 * @returns calibrated airspeed, m/s
 * @throws OutOfRange outside the airspeed relations
 * @source qc true = qc sensed + dp_s, the pitot taken as right [rp-1046]
 */
export function correctedAirspeed(ias: number, ratio: number): number {
  return calibratedAirspeed(impactPressure(ias) * (1 + ratio));
}

/**
 * Value of a curve's polynomial.
 * @param curve centre and scale, object
 * @param coefficients its own, or those of a shifted sensor, list
 * @param x lift over impact pressure, pure number
 * @returns static pressure error over impact pressure, pure number
 * @source polynomial by Horner's rule [memory]
 */
export function errorRatio(
  curve: { centre: number; scale: number },
  coefficients: readonly number[],
  x: number,
): number {
  const z1 = (x - curve.centre) / curve.scale;
  return coefficients.reduceRight((sum, c) => sum * z1 + c, 0);
}

function sourcesAt(curve: CorrectionCurve, ias: number, x: number): UncertaintySource[] {
  const gradient = gradientAt(curve, ias, x);
  const variance = gradient.reduce(
    (sum, one, k) =>
      sum + one * gradient.reduce((inner, other, l) => inner + (curve.covariance[k]?.[l] ?? 0) * other, 0),
    0,
  );
  const shifts = shiftsAt(curve, ias, x);
  return [
    { part: 'repeatability', u: Math.sqrt(Math.max(0, variance)), nu: curve.nu },
    { part: 'fit', u: curve.lackOfFit, nu: curve.lackOfFitNu },
    ...curve.shifted.map(({ nu }, k): UncertaintySource => ({ part: 'calibration', u: Math.abs(shifts[k] ?? 0), nu })),
  ];
}

// Change of calibrated airspeed with each coefficient, m/s.
function gradientAt(curve: CorrectionCurve, ias: number, x: number): number[] {
  const ratio = errorRatio(curve, curve.coefficients, x);
  const h = 1e-5;
  const slope = (correctedAirspeed(ias, ratio + h) - correctedAirspeed(ias, ratio - h)) / (2 * h);
  const z1 = (x - curve.centre) / curve.scale;
  return curve.coefficients.map((_, k) => slope * z1 ** k);
}

function shiftsAt(curve: CorrectionCurve, ias: number, x: number): number[] {
  const base = correctedAirspeed(ias, errorRatio(curve, curve.coefficients, x));
  return curve.shifted.map(({ coefficients }) => correctedAirspeed(ias, errorRatio(curve, coefficients, x)) - base);
}

function curveOf(calibration: AirspeedCalibration, flaps: string | undefined): CorrectionCurve | undefined {
  return flaps === undefined ? calibration.curves[0] : calibration.curves.find((one) => one.flaps === flaps);
}

function coveringCurve(calibration: AirspeedCalibration, ias: number, flaps: string | undefined): CorrectionCurve {
  const curve = curveOf(calibration, flaps);
  if (!curve)
    throw new OutOfRange(`airspeed with flaps ${flaps}`, ias, `the settings flown: ${settingsOf(calibration)}`);
  const [low, high] = curve.flown;
  if (!(ias >= low - AT_ENDS && ias <= high + AT_ENDS))
    throw new OutOfRange('indicated airspeed', ias, `the airspeeds flown, ${low.toFixed(1)} to ${high.toFixed(1)} m/s`);
  return curve;
}

function settingsOf(calibration: AirspeedCalibration): string {
  return calibration.curves.map((one) => one.flaps).join(', ');
}
