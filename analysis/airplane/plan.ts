/** What the builder agreed with themselves before flying: program kind, margins, heights, floors. */
import * as z from 'zod';
import { stated, statedSpeed } from './stated.ts';

export const planSchema = z.strictObject({
  program: z
    .discriminatedUnion('kind', [
      z.strictObject({ kind: z.literal('fixed-hours'), hours: z.number().positive().max(500) }),
      z.strictObject({
        kind: z.literal('task-list'),
        tasks: z.array(z.strictObject({ title: z.string().min(1), tests: z.array(z.string()) })).default([]),
      }),
    ])
    .default({ kind: 'fixed-hours', hours: 40 }),
  spins: z.boolean().default(false),
  aerobatics: z.boolean().default(false),
  night: z.boolean().default(false),
  ifr: z.boolean().default(false),
  /** air temperature standard of the hot day: 14 CFR 23.1043 or CS 22.1047 */
  hotDay: z.enum(['14cfr23', 'cs22']).default('14cfr23'),
  /** a hotter day at the field, if the builder wants one */
  hotDayAir: stated('temperature').optional(),
  turnBackFuel: stated('volume').optional(),
  stickForceCap: stated('force').optional(),
  aileronCap: stated('force').optional(),
  aerobaticFloor: stated('length').optional(),
  bailOut: stated('length').optional(),
  practiceCeiling: stated('length').optional(),
  speedFloor: stated('length').optional(),
  spinFloor: stated('length').optional(),
  stallFloor: stated('length').optional(),
  speedExpansionTarget: statedSpeed.optional(),
  crosswindAim: stated('speed').optional(),
  /** share of the mean aerodynamic chord, 0 to 1 */
  aftMargin: stated('ratio').optional(),
  descentPower: z.union([stated('pressure'), stated('frequency')]).optional(),
  lineUpTemperature: stated('temperature').optional(),
  coolingMargin: stated('temperature-difference').optional(),
  /** margins between a limit and the stop number printed on cards */
  stopMargin: z
    .strictObject({
      coolant: stated('temperature-difference').optional(),
      oil: stated('temperature-difference').optional(),
      cylinderHead: stated('temperature-difference').optional(),
    })
    .default({}),
});
