/**
 * A stated number: what a person entered, in their unit, with where it comes from, and its SI value.
 *
 * The file keeps value and unit as entered; reading adds `si`. Nothing else converts. The dimension stands in the
 * schema's own JSON Schema too, so that a form and the API can say which units are taken.
 */
import * as z from 'zod';
import { type Dimension, isUnit, toSi, unitOf, unitsOf } from '../units/index.ts';

/** where a figure comes from and how far it is to be trusted */
const basis = {
  /** document or person; required on limits */
  source: z.string().min(1).optional(),
  enteredBy: z.string().min(1).optional(),
  /** estimated before test, a designer's or maker's figure, or measured in this airplane */
  status: z.enum(['estimated', 'designer', 'measured']).optional(),
  /** expanded uncertainty (95 %) as a difference in the same unit */
  u95: z.number().nonnegative().optional(),
};

const refusesUnit = (dimension: Dimension) =>
  `unit must be one of ${unitsOf(dimension)
    .map((unit) => unit.id)
    .join(', ')}`;

/**
 * Schema of a stated number of one dimension.
 * @param dimension what kind of quantity, text
 * @returns a zod schema from `{ value, unit, source?, enteredBy?, status?, u95? }` to the same with `si`
 */
export function stated(dimension: Dimension) {
  return z
    .strictObject({ value: z.number(), unit: z.string(), ...basis })
    .refine((one) => isUnit(one.unit) && unitOf(one.unit).dimension === dimension, {
      error: refusesUnit(dimension),
      path: ['unit'],
    })
    .transform((one) => ({ ...one, si: isUnit(one.unit) ? toSi(one.value, one.unit) : Number.NaN }))
    .meta({ dimension });
}

/** A limit: a stated number that must name its source, and may name the margin agreed for tests. */
export function limit(dimension: Dimension) {
  return z
    .strictObject({
      value: z.number(),
      unit: z.string(),
      ...basis,
      source: z.string().min(1, 'a limit names its source'),
    })
    .refine((one) => isUnit(one.unit) && unitOf(one.unit).dimension === dimension, {
      error: refusesUnit(dimension),
      path: ['unit'],
    })
    .transform((one) => ({ ...one, si: isUnit(one.unit) ? toSi(one.value, one.unit) : Number.NaN }))
    .meta({ dimension });
}

/** A speed with its scale; estimates stay marked until measured. */
export const statedSpeed = z
  .strictObject({
    value: z.number().positive(),
    unit: z.enum(['kt', 'mph', 'km/h', 'm/s']),
    scale: z.enum(['IAS', 'CAS', 'TAS']).default('IAS'),
    ...basis,
    status: z.enum(['estimated', 'designer', 'measured']),
  })
  .transform((one) => ({ ...one, si: toSi(one.value, one.unit) }))
  .meta({ dimension: 'speed' });

export type Stated = z.output<ReturnType<typeof stated>>;
