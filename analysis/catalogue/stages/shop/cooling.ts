/** Cooling before the first start: the loop, the exit door and the fan. */
import {
  ALTERNATE_DOOR_CONTROL,
  COOLANT_HEAT,
  DOOR_AND_FAN,
  DOOR_ONLY,
  DOOR_OR_FAN,
  ELECTRONIC_CONTROL,
  EXIT_DOOR,
  FAN_ONLY,
  GROUND_FAN,
  LIQUID,
  NOT_ELECTRONIC,
} from '../../fits.ts';
import { HANGAR } from '../../settings.ts';
import type { TestData } from '../../test.ts';

export const COOLING = [
  {
    id: 'coolant-pressure-leak',
    title: 'Coolant fill, pressure and cap check',
    stage: 'shop',
    system: 'cooling',
    applies: LIQUID,
    purpose: 'Show a tight, air-free loop before first start.',
    needs: ['open-inspection'],
    produces: ['tight coolant loop'],
    conditions: { ...HANGAR },
    setup: ['Hand pump and gauge at the header tank', 'Mixture tested for freezing point', 'Cap on bench tester'],
    steps: [
      'Fill slowly from the low point; open bleeds; rock nose up and down.',
      'Pump to {{pressure cooling.testPressure}}; hold 15 min; look at joints, core, pump seal.',
      'Test cap opening at {{pressure cooling.capPressure}} and its vacuum valve.',
      'Check expansion space; overflow clear of exhaust and windshield.',
      'Check the thermostat in hot water: starts {{temp cooling.thermostatStart}}.',
      { when: COOLANT_HEAT, text: 'Cabin heater valve shut, then open: no weep in cabin.' },
      'Mark hose ends with stripe.',
    ],
    readings: [
      { what: 'pressure start, end', quantity: 'coolant-pressure', measure: 'coolant-pressure', at: '15 min' },
      { what: 'cap opening', measure: 'coolant-pressure', at: 'once' },
      { what: 'fill volume', measure: 'fluid', at: 'once' },
      { what: 'freeze point', measure: 'temp', at: 'once' },
      { what: 'thermostat start', measure: 'temp', at: 'once' },
    ],
    channels: ['coolant-pressure'],
    pass: [
      {
        text: 'No visible leak; drop under {{show coolant-pressure 1 psi}} in 15 minutes at constant temperature',
        source: 'practice',
      },
      { text: 'Coolant tank meets its test pressure', source: '14cfr23-1061' },
    ],
    stop: ['hose bulges or creeps', 'pressure over {{pressure cooling.testPressure}}'],
    hazards: [
      { hazard: 'Scald when opened hot', mitigation: 'no cap opening until cold' },
      { hazard: 'Air pocket boils head', mitigation: 'fill from low point, bleed, recheck after each run' },
    ],
    groundMinutes: 180,
    blocks: 'once; again after any opening',
    planning: { daylight: false },
    sources: ['14cfr23-1061'],
  },
  {
    id: 'radiator-door-fan-ground',
    title: [
      { when: EXIT_DOOR, text: 'Scoop exit door' },
      { when: DOOR_AND_FAN, text: ' and ground fan' },
      { when: FAN_ONLY, text: 'Ground fan' },
      ' check, engine off',
    ],
    stage: 'shop',
    system: 'cooling',
    applies: DOOR_OR_FAN,
    purpose: [
      { when: EXIT_DOOR, text: 'Know door angle at each command and time to move. ' },
      { when: GROUND_FAN, text: 'Show that the fan pulls air the right way.' },
    ],
    needs: ['first-power-up'],
    produces: ['door calibration', 'fan airflow'],
    conditions: { ...HANGAR },
    setup: [
      { when: EXIT_DOOR, text: 'Protractor on the door' },
      'Ammeter',
      'Wool tufts and a vane anemometer in the duct',
    ],
    steps: [
      { when: EXIT_DOOR, text: 'Drive the door stop to stop; time; position signal against angle and exit area.' },
      {
        when: EXIT_DOOR,
        text: [
          'Fail power in mid travel: where does it go or stay?',
          { when: ALTERNATE_DOOR_CONTROL, text: ' Try the alternate means.' },
        ],
      },
      { when: EXIT_DOOR, text: "Load the door by hand to the designer's air load; check slip." },
      { when: GROUND_FAN, text: 'Fan: direction, start and steady current.' },
      {
        when: GROUND_FAN,
        text: ['Core face air speed at 5 points', { when: EXIT_DOOR, text: ', each door position' }, '.'],
      },
      { when: GROUND_FAN, text: 'Interlock, thermal cut-out; fan fixing or removal for flight.' },
      'Leak-check the duct with smoke: all air must pass the cores.',
    ],
    readings: [
      { what: 'door angle', quantity: 'cowl-exit-position', measure: 'angle', at: 'each command' },
      { what: 'travel time', measure: 'seconds', at: 'each way', when: EXIT_DOOR },
      {
        what: 'fan current start, steady',
        quantity: 'bus-current#1',
        measure: 'amps',
        at: 'per run',
        when: GROUND_FAN,
      },
      { what: 'core face air speed', measure: 'climb-rate', at: '5 points', when: GROUND_FAN },
    ],
    channels: ['cowl-exit-position', 'cooling-fan-state', 'bus-voltage#1'],
    pass: [
      { when: EXIT_DOOR, text: 'Door position known within 2 deg', source: 'practice' },
      { when: EXIT_DOOR, text: 'Failed door stays or moves to open', source: 'practice' },
      {
        when: GROUND_FAN,
        text: [
          'Fan start does not disturb ',
          { when: ELECTRONIC_CONTROL, text: 'the engine control supply' },
          { when: NOT_ELECTRONIC, text: 'the bus' },
        ],
        source: 'practice',
      },
    ],
    stop: [
      { when: GROUND_FAN, text: 'fan blades touch; motor hot' },
      { when: EXIT_DOOR, text: 'door binds or stalls its motor' },
    ],
    hazards: [
      {
        hazard: ['Hand in the ', { when: GROUND_FAN, text: 'fan' }, { when: DOOR_ONLY, text: 'door' }],
        mitigation: 'breaker out before reaching in',
      },
    ],
    groundMinutes: 180,
    blocks: 'each door position; fan off and on, where fitted',
    planning: { daylight: false },
    sources: ['ac-23-17c'],
  },
] satisfies readonly TestData[];
