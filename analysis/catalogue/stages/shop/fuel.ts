/** Fuel in the shop: tightness and quantity. */
import { ELECTRIC_PUMPS, QUANTITY_GAUGE } from '../../fits.ts';
import { HANGAR } from '../../settings.ts';
import type { TestData } from '../../test.ts';

export const FUEL = [
  {
    id: 'fuel-tank-leak-vent',
    title: 'Tank tightness, vents and flushing',
    stage: 'shop',
    system: 'fuel',
    purpose: 'Show tanks and lines are clean, tight and breathe.',
    needs: ['open-inspection'],
    produces: ['clean fuel system'],
    conditions: { ...HANGAR, weather: 'no ignition source, good ventilation', fuel: 'test fluid then fuel' },
    setup: ['Low-pressure gauge and balloon or manometer, bonding strap, clean fuel'],
    steps: [
      'Each tank slowly to {{pressure fuel.tankTestPressure}}; decay, soap joints.',
      'Low air through each vent, caps on; block one vent: the other breathes.',
      'Flush each line into a clean can through a fine filter until clean.',
      'Fill; wait 24 h; look for stains.',
      'Check each drain is the lowest point, airplane level and tilted.',
      'Open filter and gascolator; note debris; lock-wire.',
      { when: ELECTRIC_PUMPS, text: 'Run the electric pumps; look at every joint.' },
    ],
    readings: [
      { what: 'pressure decay', measure: 'tank-pressure', at: '10 min per tank' },
      { what: 'debris', unit: 'text', at: 'per flush' },
      { what: 'leak', unit: 'text', at: 'after 24 h' },
    ],
    channels: ['fuel-pressure'],
    pass: [
      {
        text: ['No leak in 24 h full', { when: ELECTRIC_PUMPS, text: ', no leak with pumps on' }],
        source: 'ac-90-89a-ch1-sec7',
      },
      { text: "Tank pressure within the designer's test figure", source: '14cfr23-965' },
      { text: 'Last flush clean', source: 'practice' },
    ],
    stop: ['tank bulges or pressure over {{pressure fuel.tankTestPressure}}', 'fuel smell in the cockpit, spill'],
    hazards: [
      { hazard: 'Burst tank by air pressure', mitigation: 'water manometer, low pressure only' },
      { hazard: 'Static spark', mitigation: 'bond can, tank and airframe' },
    ],
    groundMinutes: 360,
    blocks: 'per tank',
    planning: { risk: 1, daylight: false },
    sources: ['ac-90-89a-ch1-sec7', '14cfr23-965', '14cfr23-957b'],
  },
  {
    id: 'fuel-quantity-calibration',
    title: 'Fuel gauge and dipstick calibration',
    stage: 'shop',
    system: 'fuel',
    purpose: 'Know how much fuel is aboard in flight and in ground attitude.',
    needs: ['fuel-tank-leak-vent', 'first-power-up'],
    produces: ['tank tables'],
    consumes: ['clean fuel system'],
    conditions: { ...HANGAR, fuel: 'empty, filled by measured steps' },
    setup: [
      'Airplane level as in cruise, then in ground attitude',
      'Metered cans or weighing scale',
      'Density by hydrometer',
    ],
    steps: [
      'Drain to no flow at the drain; read zero.',
      [
        'Add by fixed steps, finer at the low end; read ',
        { when: QUANTITY_GAUGE, text: 'sensor, display, ' },
        'dipstick.',
      ],
      'At full: note spill point and expansion space.',
      'Drain back in steps; note hysteresis.',
      'Repeat in ground attitude; make two tables.',
      { when: QUANTITY_GAUGE, text: 'Set the low-level alarm, if fitted, with measured fuel.' },
    ],
    readings: [
      { what: 'fuel added', measure: 'fuel', at: 'each step' },
      { what: 'sensor raw', unit: 'count', at: 'each step', when: QUANTITY_GAUGE },
      { what: 'display', quantity: 'fuel-quantity#1', measure: 'fuel', at: 'each step' },
      { what: 'dipstick', measure: 'small', at: 'each step' },
      { what: 'density', measure: 'density', at: 'once' },
    ],
    channels: ['fuel-quantity#1', 'fuel-quantity#2'],
    pass: [
      {
        when: QUANTITY_GAUGE,
        text: 'Display within 3 % of capacity and never reads more than true at low level',
        source: 'practice',
      },
      { when: QUANTITY_GAUGE, text: 'Display reads zero at unusable', source: 'practice' },
    ],
    stop: ['overflow, leak'],
    hazards: [
      {
        hazard: 'Fuel exhaustion from optimistic gauge',
        mitigation: 'calibrate low end in finer steps, set low-level alarm by measured fuel',
      },
    ],
    reductions: ['fuel-sender'],
    groundMinutes: 240,
    blocks: 'per tank; flight and ground attitude',
    planning: { risk: 1, daylight: false },
    sources: ['14cfr91-205', 'faa-h-8083-1'],
  },
] satisfies readonly TestData[];
