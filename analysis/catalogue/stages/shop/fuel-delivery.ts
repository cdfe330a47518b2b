/** Fuel in the shop: delivery, what cannot be used, transfer. */
import { ELECTRIC_PUMPS, FLAPS, FUEL_PRESSURE_GAUGE, SEVERAL_PUMPS, SEVERAL_SOURCES, TRANSFER } from '../../fits.ts';
import { HANGAR } from '../../settings.ts';
import type { TestData } from '../../test.ts';

export const FUEL_DELIVERY = [
  {
    id: 'fuel-flow-delivery',
    title: 'Fuel delivery at the steepest climb attitude',
    stage: 'shop',
    system: 'fuel',
    purpose: 'Show that more fuel reaches the engine than it can burn.',
    needs: ['fuel-tank-leak-vent', 'fuel-quantity-calibration'],
    produces: ['delivery margin'],
    consumes: ['clean fuel system', 'tank tables'],
    conditions: { ...HANGAR, fuel: 'minimum fuel in the tank on test' },
    setup: [
      'Steepest climb attitude plus 5 deg (tail lowered or nose raised), tied and chocked',
      'Line opened at the engine inlet, normal filters in',
      'Outlet at engine height, back-pressure as in the system if injected',
    ],
    steps: [
      'Main feed one minute into a weighed can; three times.',
      { when: ELECTRIC_PUMPS, text: 'Each pump alone.' },
      { when: SEVERAL_SOURCES, text: 'Each tank, each selector position; return flow if fitted.' },
      { when: FUEL_PRESSURE_GAUGE, text: 'Read pressure at the inlet while flowing.' },
      { when: ELECTRIC_PUMPS, text: 'Electric pumps at {{volts limits.bus.low}} once more.' },
      'Compare with takeoff fuel burn {{flow engine.takeoffFuelFlow}}.',
    ],
    readings: [
      { what: 'fuel weight in 60 s', measure: 'mass', at: '3 per case' },
      { what: 'inlet pressure', quantity: 'fuel-pressure', measure: 'fuel-pressure', at: 'per case' },
      { what: 'pitch attitude', quantity: 'pitch-angle', measure: 'angle', at: 'per case' },
      { what: 'volts at the pump', quantity: 'bus-voltage#1', measure: 'volts', at: 'per case', when: ELECTRIC_PUMPS },
    ],
    channels: ['fuel-pressure', 'fuel-flow', 'bus-voltage#1'],
    pass: [
      { when: ELECTRIC_PUMPS, text: 'Pump feed at least 125 % of takeoff burn', source: '14cfr23-955b-d' },
      { text: 'Gravity feed at least 150 % of takeoff burn', source: '14cfr23-955b-d' },
      {
        text: "The builder's handbook asks the same two figures, and takes 0.55 lb per hp-hour where the burn is not known",
        source: 'ac-90-89a-ch1-sec10-fuel',
      },
      { text: 'Test attitude 5 deg above the steepest expected climb', source: 'ac-90-89a-ch1-sec10-attitude' },
      {
        when: SEVERAL_PUMPS,
        text: "Pressure inside the engine maker's inlet limits with both pumps on",
        source: '14cfr23-955b-d',
      },
    ],
    stop: ['airplane unstable on its props or ramp', 'spill'],
    hazards: [
      {
        hazard: 'Fire',
        mitigation: [
          'outdoors, bonded cans, extinguisher, no electrics',
          { when: ELECTRIC_PUMPS, text: ' except the pump' },
        ],
      },
      { hazard: 'Airplane falls from jacks', mitigation: 'ramp or pit preferred, tied down' },
    ],
    reductions: ['fuel-flow'],
    groundMinutes: 240,
    blocks: 'per tank, per pump where fitted, normal and low volts',
    planning: { risk: 2, daylight: false },
    sources: ['ac-90-89a-ch1-sec10-fuel', 'ac-90-89a-ch1-sec10-attitude', '14cfr23-955b-d', 'ac-90-116'],
  },
  {
    id: 'unusable-fuel-ground',
    title: 'Unusable fuel in climb, level and descent attitude',
    stage: 'shop',
    system: 'fuel',
    purpose: 'Find what stays behind at the worst attitude.',
    needs: ['fuel-flow-delivery'],
    produces: ['unusable fuel'],
    consumes: ['tank tables'],
    conditions: { ...HANGAR, fuel: 'small measured amount' },
    setup: [
      'As for the delivery test',
      ['Also nose down as in a steep glide', { when: FLAPS, text: ' with flaps down' }, ', and one wing low'],
    ],
    steps: [
      'Put in a measured amount; flow at cruise rate until the first break in flow.',
      'Drain and measure what is left.',
      'Repeat level, nose up, nose down, each wing low.',
      'Take the largest as ground value; slips wait for flight.',
    ],
    readings: [
      { what: 'fuel left at first bubble', measure: 'fuel', at: 'per attitude' },
      { what: 'attitude', quantity: 'pitch-angle', measure: 'angle', at: 'per case' },
    ],
    channels: ['fuel-pressure', 'fuel-flow'],
    pass: [
      {
        text: 'Unusable is not less than the amount at first malfunction in the most adverse attitude',
        source: '14cfr23-959',
      },
      { text: 'What remains when flow stops is unusable', source: 'ac-90-89a-ch1-sec10-fuel' },
    ],
    stop: [
      { when: ELECTRIC_PUMPS, text: "pump running dry over its maker's limit" },
      'spill, airplane unsteady on its supports',
    ],
    hazards: [{ when: ELECTRIC_PUMPS, hazard: 'Dry pump damage', mitigation: 'short runs, stop at first bubble' }],
    reductions: ['fuel-flow'],
    groundMinutes: 180,
    blocks: 'per tank: level, nose up, nose down, wing low',
    planning: { risk: 2, daylight: false },
    sources: ['14cfr23-959', 'ac-90-89a-ch1-sec10-fuel'],
  },
  {
    id: 'fuel-transfer-ground',
    title: 'Powered fuel transfer on the ground',
    stage: 'shop',
    system: 'fuel',
    applies: TRANSFER,
    purpose:
      'Measure transfer rate, show full tank does not overflow, and show each single failure is known and harmless.',
    needs: ['fuel-quantity-calibration', 'unusable-fuel-ground', 'first-power-up'],
    produces: ['transfer rate', 'failure table'],
    consumes: ['tank tables', 'unusable fuel'],
    conditions: { ...HANGAR, fuel: 'reserve full, main at half' },
    setup: ['Tanks vented, bonded', 'Ammeter on pump and solenoid valve', 'Stop watch'],
    steps: [
      'Transfer; log both quantities; work out rate and lost volume.',
      'Fill main to the top while transferring: where does the excess go, how much?',
      'Pump failed, valve open: does fuel siphon back?',
      'Valve shut, pump on: current, pressure, warning?',
      'Valve stuck open, pump off: does main drain to reserve or overflow?',
      'Run the reserve empty: pump dry, air into the main feed?',
      'At {{volts limits.bus.low}}: does the valve open and seal?',
      'Work out latest transfer start and longest run on main alone.',
    ],
    readings: [
      { what: 'main quantity', quantity: 'fuel-quantity#1', measure: 'fuel', at: '1 Hz' },
      { what: 'reserve quantity', quantity: 'fuel-quantity#2', measure: 'fuel', at: '1 Hz' },
      { what: 'pump and valve current', quantity: 'bus-current#2', measure: 'amps', at: 'per case' },
      { what: 'overflow', measure: 'fuel', at: 'full case' },
    ],
    channels: ['fuel-quantity#1', 'fuel-quantity#2', 'bus-current#2', 'transfer-valve-state', 'bus-voltage#1'],
    pass: [
      {
        text: 'Transfer rate not below burn at maximum continuous power, or placard tells when to start',
        source: '14cfr23-955b-d',
      },
      { text: 'No damage or overboard loss by overfill', source: '14cfr23-957b' },
      { text: 'Quantities balance within 3 %', source: 'practice' },
    ],
    stop: ['overflow near ignition source', 'pump hot', 'pump dry longer than its maker allows'],
    hazards: [
      { hazard: 'Overfill overboard near exhaust', mitigation: 'find overflow point on the ground with exhaust cold' },
      {
        hazard: 'Unnoticed transfer failure',
        mitigation: 'annunciator or printed time check, main sized to reach land',
      },
    ],
    reductions: ['fuel-transfer'],
    groundMinutes: 180,
    blocks: 'normal; main full; pump failed; valve failed; low volts',
    planning: { risk: 2, daylight: false },
    sources: ['14cfr23-955b-d', '14cfr23-957b'],
  },
] satisfies readonly TestData[];
