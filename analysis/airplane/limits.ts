/** Limits, each with its source: the designer's, the maker's, or the authority's. A missing one stays missing. */
import * as z from 'zod';
import { limit } from './stated.ts';

const temperatureLimits = {
  caution: limit('temperature').optional(),
  limit: limit('temperature').optional(),
};

export const limitsSchema = z.strictObject({
  coolant: z.strictObject({ ...temperatureLimits, hotRestart: limit('temperature').optional() }).default({}),
  oil: z
    .strictObject({
      ...temperatureLimits,
      takeoffMinimum: limit('temperature').optional(),
      pressureLow: limit('pressure').optional(),
      pressureHigh: limit('pressure').optional(),
    })
    .default({}),
  cylinderHead: z.strictObject(temperatureLimits).default({}),
  exhaustGas: z.strictObject(temperatureLimits).default({}),
  fuel: z
    .strictObject({ pressureLow: limit('pressure').optional(), pressureHigh: limit('pressure').optional() })
    .default({}),
  engineSpeed: z
    .strictObject({
      takeoff: limit('frequency').optional(),
      continuous: limit('frequency').optional(),
      maximum: limit('frequency').optional(),
    })
    .default({}),
  manifoldPressure: z
    .strictObject({ takeoff: limit('pressure').optional(), continuous: limit('pressure').optional() })
    .default({}),
  bus: z.strictObject({ low: limit('voltage').optional(), high: limit('voltage').optional() }).default({}),
  battery: z
    .strictObject({ minimum: limit('voltage').optional(), chargeCurrent: limit('current').optional() })
    .default({}),
  engineControl: z.strictObject({ minimum: limit('voltage').optional() }).default({}),
  loadFactor: z
    .strictObject({
      positive: limit('acceleration').optional(),
      negative: limit('acceleration').optional(),
      /** lowest the engine maker allows for oil and fuel */ engineLow: limit('acceleration').optional(),
    })
    .default({}),
  flutterTrueAirspeed: limit('speed').optional(),
  crosswind: limit('speed').optional(),
  mass: z.strictObject({ maximum: limit('mass'), landing: limit('mass').optional() }),
  /** the operating limitations of this airplane, in the authority's words */
  operatingLimitations: z.string().max(8000).default(''),
});
