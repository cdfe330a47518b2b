/** Units the airplane's own instruments show, and how well each channel is known. */
import * as z from 'zod';
import { isUnit, QUANTITIES, quantityOf, unitOf } from '../units/index.ts';
import { stated } from './stated.ts';

const unitFor = (dimension: string, fallback: string) =>
  z
    .string()
    .refine((id) => isUnit(id) && unitOf(id).dimension === dimension, `a unit of ${dimension}`)
    .meta({ unitOf: dimension })
    .default(fallback);

const names = new Set(QUANTITIES.map((one) => one.name));

/** An accuracy is a difference in the channel's own dimension, or a share of the reading. */
function fits(name: string, unit: string): boolean {
  if (!isUnit(unit)) return false;
  const dimension = quantityOf(name)?.dimension;
  const given = unitOf(unit).dimension;
  if (given === 'ratio') return true;
  return given === (dimension === 'temperature' ? 'temperature-difference' : dimension);
}

/** U95 half-width of a channel, with what it rests on; `exact` states that the calibration is known without doubt. */
export const accuracySchema = z.strictObject({
  u95: z.number().nonnegative(),
  unit: z.string().refine(isUnit, 'a known unit'),
  /** taken as normal, or rectangular for a stated maximum error */
  distribution: z.enum(['normal', 'rectangular']).default('normal'),
  basis: z.string().min(1),
});

export const instrumentsSchema = z.strictObject({
  units: z
    .strictObject({
      airspeed: unitFor('speed', 'kt'),
      wind: unitFor('speed', 'kt'),
      altitude: unitFor('length', 'ft'),
      verticalSpeed: unitFor('speed', 'ft/min'),
      distance: unitFor('length', 'm'),
      temperature: unitFor('temperature', 'degC'),
      oilPressure: unitFor('pressure', 'bar'),
      fuelPressure: unitFor('pressure', 'bar'),
      manifoldPressure: unitFor('pressure', 'inHg'),
      coolantPressure: unitFor('pressure', 'bar'),
      hydraulicPressure: unitFor('pressure', 'bar'),
      tankPressure: unitFor('pressure', 'hPa'),
      altimeterSetting: unitFor('pressure', 'hPa'),
      fuelFlow: unitFor('volume-flow', 'L/h'),
      fuel: unitFor('volume', 'L'),
      mass: unitFor('mass', 'kg'),
      arm: unitFor('length', 'm'),
      force: unitFor('force', 'N'),
      acceleration: unitFor('acceleration', 'g0'),
    })
    .prefault({}),
  /** per channel, by glossary name */
  accuracy: z
    .record(
      z.string().refine((name) => names.has(name), 'a quantity of the glossary'),
      accuracySchema,
    )
    .superRefine((all, context) => {
      for (const [name, one] of Object.entries(all)) {
        if (fits(name, one.unit)) continue;
        const message = `a difference in the unit of ${name}, or % of the reading`;
        context.addIssue({ code: 'custom', message, path: [name, 'unit'] });
      }
    })
    .default({}),
  /** recovery factor of the outside-air probe, 0 to 1 */
  probeRecovery: z.number().min(0).max(1).optional(),
  /** true where airspeed and altimeter share one static port */
  commonStatic: z.boolean().default(true),
  /** true where the outside-air channel is already corrected to static temperature */
  airTemperatureIsStatic: z.boolean().default(false),
  airspeedLag: stated('time').optional(),
});
