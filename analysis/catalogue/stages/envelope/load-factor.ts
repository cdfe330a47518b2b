/** More and less than 1 g, in steps. */
import { CANOPY, FUEL_PRESSURE_GAUGE, LIQUID, RETRACTABLE } from '../../fits.ts';
import { FLIGHT } from '../../settings.ts';
import { FLIGHT_STOPS } from '../../stops.ts';
import type { TestData } from '../../test.ts';

export const LOAD_FACTOR = [
  {
    id: 'load-factor-buildup',
    title: 'Load factor in steps',
    stage: 'envelope',
    system: 'structure',
    purpose: 'Show structure, controls and systems behave to the planned working load factor.',
    needs: ['ten-hour-inspection', 'stall-accelerated', 'airspeed-calibration-full', 'stall-clean-gear-up'],
    produces: ['shown load factor'],
    consumes: ['lift boundary', 'go for expansion', 'position error table (full)', 'manoeuvring speed'],
    conditions: { ...FLIGHT, altitude: '{{show height 6000 ft}} above ground' },
    setup: [
      'Accelerometer checked',
      'Entry at {{kias speeds.manoeuvring}} or below',
      ['Harness, loose items', { when: CANOPY, text: ', canopy' }],
    ],
    steps: [
      'Wind-up turn 2.0 g, left, right; note stick force.',
      [
        'Level; look: skin',
        { when: CANOPY, text: ', canopy' },
        { when: RETRACTABLE, text: ', gear doors' },
        '. Then 2.5 g, then 3.0 g, same look.',
      ],
      'Further 0.5 g steps only as planned, never over {{g derived.loadFactorCap}}.',
      'Pull ends at first buffet.',
    ],
    after: ['Inspect after the highest.'],
    readings: [
      { what: 'load factor', quantity: 'normal-acceleration', measure: 'g', at: 'each' },
      { what: 'airspeed at entry', quantity: 'indicated-airspeed', measure: 'kias', at: 'each' },
      { what: 'stick force', quantity: 'stick-force', measure: 'force', at: 'each' },
      { what: 'what was seen', unit: 'text', at: 'each step' },
    ],
    channels: ['indicated-airspeed', 'normal-acceleration', 'pressure-altitude', 'stick-force'],
    pass: [
      { text: 'Limit not passed; speed under manoeuvring speed', source: 'maker' },
      { text: 'No wrinkle, noise or set', source: 'practice' },
    ],
    stop: [
      ...FLIGHT_STOPS,
      'load factor at {{g derived.loadFactorCap}}',
      'airspeed over {{kias speeds.manoeuvring}}',
      'stick force lighter as load grows',
    ],
    action: ['unload, slow, gentle turns, land, inspect'],
    hazards: [{ hazard: 'Overstress by light stick', mitigation: 'stick force per g known first from gentle steps' }],
    reductions: ['trim-stability'],
    flightMinutes: 30,
    groundMinutes: 60,
    blocks: '0.5 g steps',
    planning: {
      load: 'light-forward',
      risk: 4,
      opens: 'load factor past the stall cards',
      height: { value: 6000, unit: 'ft' },
    },
    sources: ['14cfr23-155', '14cfr91-307'],
  },
  {
    id: 'low-g-push',
    title: 'Low load factor: oil, fuel and loose items',
    stage: 'envelope',
    system: 'structure',
    purpose: 'Show the engine keeps oil pressure and fuel feed in a short push.',
    needs: ['load-factor-buildup', 'tank-switching-flight'],
    produces: ['low load factor rule'],
    consumes: ['sources proven in flight', 'shown load factor'],
    conditions: { ...FLIGHT, altitude: '{{show height 6000 ft}} above ground' },
    setup: ['Overhead', 'Fuel not low', 'Nothing loose', 'Never below {{g derived.lowLoadFactorFloor}}'],
    steps: [
      [
        'Level cruise; push gently to 0.5 g for 2 s; read oil',
        { when: FUEL_PRESSURE_GAUGE, text: ' and fuel' },
        ' pressure.',
      ],
      'Recover; wait for pressures.',
      'Repeat to {{g derived.lowLoadFactorFloor}} for 2 s only if the engine maker allows.',
      ['Look: oil at breather', { when: LIQUID, text: ', coolant overflow' }, ', battery, dust.'],
    ],
    readings: [
      { what: 'lowest load factor', quantity: 'normal-acceleration', measure: 'g', at: 'each' },
      { what: 'lowest oil pressure', quantity: 'oil-pressure', measure: 'oil-pressure', at: 'each' },
      {
        what: 'lowest fuel pressure',
        quantity: 'fuel-pressure',
        measure: 'fuel-pressure',
        at: 'each',
        when: FUEL_PRESSURE_GAUGE,
      },
    ],
    channels: ['normal-acceleration', 'oil-pressure', 'fuel-pressure', 'engine-speed'],
    pass: [
      {
        text: [
          'Oil',
          { when: FUEL_PRESSURE_GAUGE, text: ' and fuel' },
          ' pressure back in limits within 2 s of recovery',
        ],
        source: 'practice',
      },
    ],
    stop: [
      ...FLIGHT_STOPS,
      { when: FUEL_PRESSURE_GAUGE, text: 'fuel pressure under {{pressure limits.fuel.pressureLow}}' },
    ],
    action: ['positive load at once, power back, overhead, land'],
    hazards: [
      { hazard: 'Oil starvation', mitigation: '2 s at most, overhead' },
      { hazard: 'Stick jammed by a loose object', mitigation: 'cockpit swept before' },
    ],
    flightMinutes: 12,
    groundMinutes: 12,
    blocks: '0.5 g; then lower if allowed',
    planning: { load: 'light-forward', risk: 3, opens: 'less than 1 g', height: { value: 6000, unit: 'ft' } },
    sources: [],
  },
] satisfies readonly TestData[];
