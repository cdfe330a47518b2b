/**
 * The airplane's description: everything the catalogue asks of it, in one schema. Paths are the names that the
 * catalogue's conditions and its {{kind path}} references use. What is unknown is left out, never invented.
 */
import * as z from 'zod';
import { alternatorSchema, batterySchema, recorderSchema, runwaySchema, tankSchema } from './fitted.ts';
import { instrumentsSchema } from './instruments.ts';
import { limitsSchema } from './limits.ts';
import { loadingSchema } from './loading.ts';
import { planSchema } from './plan.ts';
import { stated, statedSpeed } from './stated.ts';

const yes = z.boolean().default(false);

export const airplaneSchema = z.strictObject({
  format: z.literal('proveout-airplane-1'),
  name: z.string().min(1).max(40),
  registration: z.string().min(1).max(12),
  description: z.string().max(400).default(''),
  builder: z.string().max(60).default(''),
  pilot: z.string().max(60).default(''),
  /** true for demo airplanes: printed on every sheet */
  invented: yes,

  engine: z.strictObject({
    kind: z.enum(['piston']).default('piston'),
    ratedPower: stated('power').optional(),
    ratedSpeed: stated('frequency').optional(),
    reductionRatio: z.number().positive().default(1),
    cylinders: z.int().min(1).max(12).default(4),
    electronicControl: yes,
    /** control lanes, where electronic */
    lanes: z.int().min(1).max(4).optional(),
    mixtureControl: yes,
    carburettor: yes,
    newOrRebuilt: z.boolean().default(true),
    checkSpeed: stated('frequency').optional(),
    idleSpeed: stated('frequency').optional(),
    takeoffFuelFlow: stated('volume-flow').optional(),
  }),

  cooling: z.strictObject({
    kind: z.enum(['liquid', 'air']),
    exitDoor: yes,
    alternateDoorControl: yes,
    groundFan: yes,
    cowlFlap: yes,
    coolant: z
      .strictObject({
        glycol: z.enum(['ethylene', 'propylene']),
        /** volume fraction of glycol, 0 to 1 */
        fraction: z.number().min(0).max(1),
      })
      .optional(),
    capPressure: stated('pressure').optional(),
    testPressure: stated('pressure').optional(),
    thermostatStart: stated('temperature').optional(),
    thermostatOpen: stated('temperature').optional(),
    fanCurrent: stated('current').optional(),
    fanRunOn: stated('time').optional(),
    /** first-order lag of the coolant sensor */
    sensorLag: stated('time').optional(),
  }),

  propeller: z.strictObject({
    kind: z.enum(['constant-speed', 'fixed', 'ground-adjustable']),
    blades: z.int().min(2).max(6).default(2),
    diameter: stated('length').optional(),
    electric: yes,
  }),

  gear: z.strictObject({
    retractable: yes,
    layout: z.enum(['nose', 'tail']).default('nose'),
    emergencyExtension: yes,
    positionSwitches: yes,
    legs: z.int().min(1).max(4).default(3),
    transitUp: stated('time').optional(),
    transitDown: stated('time').optional(),
    timeLimit: stated('time').optional(),
    currentTypical: stated('current').optional(),
    currentPeak: stated('current').optional(),
    pumpRest: stated('time').optional(),
  }),
  hydraulics: z
    .union([
      z.literal(false),
      z.strictObject({
        electric: yes,
        relief: stated('pressure').optional(),
        pumpRunMaximum: stated('time').optional(),
      }),
    ])
    .default(false),

  /** false, or what moves them */
  flaps: z
    .union([
      z.literal(false),
      z.strictObject({
        settings: z.array(z.string().min(1)).min(1),
        power: z.enum(['electric', 'hydraulic', 'manual']),
      }),
    ])
    .default(false),

  fuel: z.strictObject({
    kind: z.string().min(1).default('gasoline'),
    tanks: z.array(tankSchema).min(1),
    /** independent feeds the pilot can select */
    sources: z.int().min(1).max(8),
    poweredTransfer: yes,
    wingTanksSeparate: yes,
    flowMeter: yes,
    quantityGauge: yes,
    pressureGauge: yes,
    electricPumps: z.int().min(0).max(4).default(0),
    tankTestPressure: stated('pressure').optional(),
    reserve: stated('time').optional(),
  }),

  electrical: z.strictObject({
    batteries: z.array(batterySchema),
    generator: z.union([z.literal(false), alternatorSchema]).default(false),
    backupSupply: yes,
    groundSupplyPlug: yes,
    groundSupplyCurrent: stated('current').optional(),
    essentialLoad: stated('current').optional(),
    busNames: z.array(z.string().min(1)).default([]),
  }),

  trim: z.strictObject({ electric: yes, axes: z.array(z.enum(['pitch', 'roll', 'yaw'])).default(['pitch']) }),
  autopilot: z.union([z.literal(false), z.strictObject({ axes: z.int().min(1).max(3) })]).default(false),
  avionics: z.strictObject({
    radios: z.int().min(0).max(4).default(0),
    transponder: z.union([z.literal(false), z.enum(['single', 'diversity'])]).default(false),
    elt: yes,
    compass: z.boolean().default(true),
    pitotHeat: yes,
    alternateStatic: yes,
  }),
  cabin: z.strictObject({
    canopy: z.union([z.literal(false), z.enum(['slider', 'hinged'])]).default(false),
    heat: z.union([z.literal(false), z.enum(['coolant', 'exhaust', 'electric'])]).default(false),
    seats: z.int().min(1).max(6).default(2),
    smoke: yes,
  }),

  wing: z.strictObject({ area: stated('area').optional(), span: stated('length').optional() }).default({}),
  loading: loadingSchema,
  limits: limitsSchema,
  speeds: z.strictObject({
    stallClean: statedSpeed.optional(),
    stallLanding: statedSpeed.optional(),
    climb: statedSpeed.optional(),
    bestRate: statedSpeed.optional(),
    bestAngle: statedSpeed.optional(),
    bestGlide: statedSpeed.optional(),
    approach: statedSpeed.optional(),
    liftOff: statedSpeed.optional(),
    manoeuvring: statedSpeed.optional(),
    flapsExtended: statedSpeed.optional(),
    gearOperation: statedSpeed.optional(),
    gearExtended: statedSpeed.optional(),
    gearEmergency: statedSpeed.optional(),
    normalOperating: statedSpeed.optional(),
    neverExceed: statedSpeed.optional(),
    stallWarning: statedSpeed.optional(),
    cleared: statedSpeed.optional(),
  }),
  instruments: instrumentsSchema,
  recorders: z.array(recorderSchema).default([]),
  place: z.strictObject({
    name: z.string().min(1),
    elevation: stated('length'),
    runways: z.array(runwaySchema).min(1),
    /** east positive */
    variation: stated('angle').optional(),
    practiceArea: z.string().default(''),
    alternate: z.string().default(''),
    /** offset from UTC of the airfield's clock, such as +01:00 */
    utcOffset: z
      .string()
      .regex(/^[+-]\d\d:\d\d$/, 'an offset such as +01:00')
      .default('+00:00'),
  }),
  plan: planSchema,
  /** paths filled in with usual values, or copied, that no person has confirmed yet */
  toConfirm: z.array(z.string().min(1).max(80)).max(200).default([]),
});

export type AirplaneFile = z.input<typeof airplaneSchema>;
export type Airplane = z.output<typeof airplaneSchema>;
