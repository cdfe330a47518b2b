/** Electrical power before the engine runs: power-up, supply plug, load. */
import { FLAPS, GENERATOR, GROUND_FAN, GROUND_SUPPLY_PLUG, RETRACTABLE } from '../../fits.ts';
import { HANGAR } from '../../settings.ts';
import type { TestData } from '../../test.ts';

export const ELECTRICAL = [
  {
    id: 'first-power-up',
    title: 'First electrical power and circuit check',
    stage: 'shop',
    system: 'electrical',
    purpose: 'Bring the wiring alive one circuit at a time.',
    needs: ['open-inspection'],
    produces: ['circuit current list'],
    conditions: { ...HANGAR },
    setup: [
      'Current-limited ground supply, all breakers out, meter on the bus, extinguisher at hand, fuel tanks empty or vented away',
    ],
    steps: [
      'Measure resistance bus to ground before power.',
      'Apply power at low current limit; watch volts and amps.',
      'Close one breaker at a time; work the load; read current and polarity.',
      'Check master, contactors, essential feed and emergency-off open the right circuits.',
      'Check every light, label and warning; press to test.',
      'After 10 min at load, feel or scan contactors, shunts and main terminals.',
    ],
    readings: [
      { what: 'bus to ground resistance', unit: 'ohm', at: 'before power' },
      { what: 'circuit current', quantity: 'bus-current#1', measure: 'amps', at: 'per circuit' },
      { what: 'terminal temperature', measure: 'temp', at: 'after 10 min' },
    ],
    channels: ['bus-voltage#1', 'bus-current#1'],
    pass: [
      { text: 'Each circuit within its breaker rating and its wire rating', source: 'maker' },
      { text: 'Emergency-off removes all but the intended circuits', source: 'practice' },
    ],
    stop: ['smoke, smell, breaker trip or unexpected current', 'a terminal too hot to keep a finger on'],
    hazards: [
      { hazard: 'Electrical fire', mitigation: 'current-limited supply, extinguisher, one circuit at a time' },
      {
        hazard: ['Propeller moves', { when: RETRACTABLE, text: ' or gear retracts' }, ' by wiring error'],
        mitigation: ['propeller blocked', { when: RETRACTABLE, text: ', gear pump breaker out, ground locks in' }],
      },
    ],
    groundMinutes: 360,
    blocks: 'per bus',
    planning: { risk: 1, daylight: false },
    sources: ['ac-90-89a-ch1-sec7', 'ac-23-17c'],
  },
  {
    id: 'ground-supply-plug',
    title: 'External ground supply plug',
    stage: 'shop',
    system: 'electrical',
    applies: GROUND_SUPPLY_PLUG,
    purpose: 'Show the plug feeds the right bus, refuses wrong polarity and voltage, and comes off without an arc.',
    needs: ['first-power-up'],
    produces: ['ground supply rules'],
    conditions: { ...HANGAR },
    setup: [
      'Ground supply, voltmeter at the plug, reversible test lead with a lamp or current limit, battery switches off',
    ],
    steps: [
      'Measure volts and polarity at the supply before plugging in.',
      'Plug in, batteries off: which bus comes alive? Read volts.',
      'Current-limited lead reversed, then over-voltage: plug contactor stays open.',
      'Batteries on: read charge current of each battery.',
      { when: RETRACTABLE, text: 'Read the lowest volts at the relay box at pump start.' },
      'Unplug with loads on: no arc at the pin, no reset, door closes.',
    ],
    readings: [
      { what: 'volts at the bus', quantity: 'bus-voltage#1', measure: 'volts', at: 'each state' },
      { what: 'charge current', quantity: 'battery-current', measure: 'amps', at: 'each battery' },
      {
        what: 'lowest volts at pump start',
        quantity: 'bus-voltage#1',
        measure: 'volts',
        at: 'once',
        when: RETRACTABLE,
      },
    ],
    channels: ['bus-voltage#1', 'battery-current'],
    pass: [
      { text: 'Reversed or over-voltage supply is never connected', source: 'practice' },
      { text: 'Plug can be pulled by the crew clear of the propeller arc', source: 'practice' },
    ],
    stop: [
      'smoke, smell or a warm plug',
      'bus over {{volts limits.bus.high}}',
      'battery charge over {{amps limits.battery.chargeCurrent}}',
    ],
    hazards: [
      { hazard: 'Wrong supply destroys avionics', mitigation: 'polarity and volts measured first, avionics off' },
      {
        hazard: 'Helper near the propeller at unplugging',
        mitigation: 'route behind the wing; supply is off before unplugging with engine running',
      },
    ],
    reductions: ['electrical'],
    groundMinutes: 60,
    blocks: 'each bus',
    planning: { daylight: false },
    sources: [],
  },
  {
    id: 'electrical-load-survey',
    title: 'Electrical load in each phase of flight',
    stage: 'shop',
    system: 'electrical',
    purpose: 'Measure what the generator and batteries must carry.',
    needs: ['first-power-up'],
    produces: ['load table'],
    consumes: ['circuit current list'],
    conditions: { ...HANGAR },
    setup: ['Ground supply at normal bus voltage, clamp meter'],
    steps: [
      'Measure steady and peak current of each consumer.',
      [
        'Total: start, taxi, takeoff, cruise, landing',
        { when: RETRACTABLE, text: ' with the gear pump' },
        { when: FLAPS, text: ' and the flaps' },
        '.',
      ],
      { when: GENERATOR, text: 'Total with generator failed; list what stays and the switch moves.' },
      { when: GROUND_FAN, text: 'Add the ground fan at idle.' },
      { when: RETRACTABLE, text: 'Add the pump at gear extension.' },
      ['Compare with ', { when: GENERATOR, text: 'generator, ' }, 'contactor, shunt and wire ratings.'],
    ],
    readings: [
      { what: 'current per load', quantity: 'bus-current#1', measure: 'amps', at: 'each load' },
      { what: 'total per phase', measure: 'amps', at: 'computed' },
      { what: 'peak at pump start', quantity: 'gear-current', measure: 'amps', at: 'each event' },
      { what: 'peak at fan start', quantity: 'bus-current#1', measure: 'amps', at: 'each event', when: GROUND_FAN },
    ],
    channels: ['bus-voltage#1', 'bus-current#1', 'gear-current', 'cooling-fan-state'],
    pass: [
      {
        text: 'Continuous load not over 80 % of generator rating, unless load-limiting placard or monitor is fitted',
        source: 'ac-43-13-1b-para11-35',
      },
      { text: 'Peak loads never trip the main feed', source: 'practice' },
    ],
    stop: ['voltage collapses or a breaker trips', 'bus under {{volts limits.bus.low}}'],
    hazards: [
      {
        hazard: 'Battery drained unnoticed',
        mitigation: 'low-volt warning set and tested (13 V or 26 V class system)',
      },
    ],
    reductions: ['electrical'],
    groundMinutes: 180,
    blocks: 'per phase of flight',
    planning: { daylight: false },
    sources: ['ac-43-13-1b-para11-35', '14cfr23-2525', 'ac-23-17c'],
  },
] satisfies readonly TestData[];
