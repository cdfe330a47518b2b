/** What a person may state for an airspeed calibration, and legs or course runs written on a card. */
import * as z from 'zod';
import { stated } from '../../airplane/index.ts';

export const airspeedOptions = z.strictObject({
  /** flap setting of the whole log, where no flap position was logged */
  flaps: z.string().min(1).optional(),
  /** mass at the first record of the first log */
  startMass: stated('mass').optional(),
  fuelDensity: stated('density').optional(),
  /** dew point of the air flown in: settles the doubt of humidity */
  dewPoint: stated('temperature').optional(),
  /** outside air as read by hand, where it was not logged */
  airTemperature: stated('temperature').optional(),
  /** the altimeter's setting, where only its indication was logged */
  altimeterSetting: stated('pressure').optional(),
  /** expected scatter of one leg, in place of the default */
  legScatter: stated('speed').optional(),
});

export type AirspeedOptions = z.output<typeof airspeedOptions>;

/**
 * One leg from a card. Over the ground it says either speed and track from a satellite receiver, or the run along a
 * measured course on its heading (length and time, or the speed along it), or the stretch of the log to take them from.
 */
export const airspeedPoint = z
  .strictObject({
    'indicated-airspeed': stated('speed').optional(),
    'pressure-altitude': stated('length').optional(),
    'indicated-altitude': stated('length').optional(),
    'outside-air-temperature': stated('temperature').optional(),
    'ground-speed': stated('speed').optional(),
    'track-true': stated('angle').optional(),
    /** direction of the course, from true north, flown on its heading with drift allowed */
    'course-true': stated('angle').optional(),
    'course-length': stated('length').optional(),
    'course-time': stated('time').optional(),
    'from-seconds': z.number().optional(),
    'to-seconds': z.number().optional(),
    /** when the leg was flown, from any common start; tells a drifting wind from a steady one */
    clock: stated('time').optional(),
    flaps: z.string().min(1).optional(),
    mass: stated('mass').optional(),
    label: z.string().optional(),
  })
  .superRefine((one, context) => {
    const say = (path: string, message: string) => context.addIssue({ code: 'custom', path: [path], message });
    const hasSpan = one['from-seconds'] !== undefined || one['to-seconds'] !== undefined;
    if (hasSpan) {
      if (!((one['to-seconds'] ?? 0) > (one['from-seconds'] ?? 0)))
        say('to-seconds', 'a stretch of the log ends after it starts');
    } else if (one['course-true']) {
      const timed = one['course-length'] && one['course-time'];
      if (!timed && !one['ground-speed'])
        say('course-length', 'a course run needs length and time, or a speed along it');
      if (one['course-time'] && !(one['course-time'].si > 0)) say('course-time', 'the time must be above 0');
    } else if (!one['ground-speed'] || !one['track-true']) {
      say('ground-speed', 'a leg needs ground speed and true track, or a course, or a stretch of the log');
    }
    if (one['ground-speed'] && !(one['ground-speed'].si > 0)) say('ground-speed', 'ground speed must be above 0');
  });

export const airspeedPoints = z.strictObject({ kind: z.literal('airspeed'), points: z.array(airspeedPoint).min(1) });
export type AirspeedPoint = z.output<typeof airspeedPoint>;

/** Conditions of a prediction: the reading expected to be corrected. */
export const airspeedConditions = z.strictObject({
  'indicated-airspeed': stated('speed'),
  'pressure-altitude': stated('length').optional(),
  'outside-air-temperature': stated('temperature').optional(),
  flaps: z.string().min(1).optional(),
  mass: stated('mass').optional(),
});
