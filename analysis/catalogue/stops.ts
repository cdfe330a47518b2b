/** Stop lines and actions that many tests share. */
import { AIR_COOLED, EXIT, GROUND_FAN, LIQUID, RETRACTABLE } from './fits.ts';
import type { Line, TestData } from './test.ts';

/** Limits that end any test with the engine running. */
export const ENGINE_STOPS = [
  { when: LIQUID, text: 'coolant at {{temp limits.coolant.caution}}' },
  { when: AIR_COOLED, text: 'cylinder head at {{temp limits.cylinderHead.caution}}' },
  'oil at {{temp limits.oil.caution}}, or oil pressure under {{pressure limits.oil.pressureLow}}',
] satisfies readonly Line[];

/** On the ground with the engine running. */
export const RUNNING_STOPS = [
  ...ENGINE_STOPS,
  'leak, fuel smell, smoke or unusual noise',
  'loss of an indication the test depends on',
] satisfies readonly Line[];

/** In flight. */
export const FLIGHT_STOPS = [
  ...ENGINE_STOPS,
  'unexpected force, buffet, vibration, noise or smell',
  'fuel down to {{fuel plan.turnBackFuel}}',
  'weather, traffic or pilot fatigue worse than briefed',
] satisfies readonly Line[];

/** Too hot on the ground. */
export const COOL_DOWN = [
  [
    'idle, nose into wind',
    { when: EXIT, text: ', door open' },
    { when: GROUND_FAN, text: ', fan on' },
    '; still rising: shut down',
  ],
] satisfies readonly Line[];

/** Any stop in cruise. */
export const POWER_BACK_AND_LAND = [
  [
    'power back',
    { when: EXIT, text: ', door open' },
    { when: RETRACTABLE, text: ', leave the gear as it is' },
    ', land',
  ],
] satisfies readonly Line[];

/** Too hot in a climb. */
export const LEVEL_AND_TURN_BACK = [
  ['level off, power back', { when: EXIT, text: ', door full open' }, ', turn for the field'],
] satisfies readonly Line[];

/** A stall that is not as expected. */
export const RECOVER_FROM_STALL = [
  'unload, throttle idle, wings level, recover, end the series',
] satisfies readonly Line[];

/** A gear that is not as expected. */
export const LEAVE_THE_GEAR = [
  'leave the gear as it is, slow, checklist, stay over the field',
] satisfies readonly Line[];

export const STALL_HAZARDS = [
  {
    hazard: 'Unexpected wing drop to spin',
    mitigation:
      '{{show height 6000 ft}} above ground or more, ball centred, unload first, spin recovery and bail-out briefed',
  },
  { hazard: 'Engine stops at high pitch', mitigation: 'near field, idle proven on ground' },
] satisfies TestData['hazards'];
