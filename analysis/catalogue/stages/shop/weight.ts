/** Weighing, and the loading of every later flight. */
import { HYDRAULICS, LIQUID, RETRACTABLE, TRANSFER } from '../../fits.ts';
import { DESK, HANGAR } from '../../settings.ts';
import type { TestData } from '../../test.ts';

export const WEIGHT = [
  {
    id: 'weigh-empty-cg',
    title: 'Weighing and empty centre of gravity',
    stage: 'shop',
    system: 'weight',
    purpose: 'Measure empty weight, moment and the arm of each load station.',
    needs: ['closing-inspection', 'fuel-quantity-calibration'],
    produces: ['empty weight and CG', 'station arms'],
    consumes: ['tank tables', 'unusable fuel', 'zone records'],
    conditions: { ...HANGAR, fuel: 'drained to unusable, or full with density measured' },
    setup: [
      [
        'Closed hangar, calibrated scales, airplane level in pitch and roll as its drawings define, complete and painted as it will fly, full oil',
        { when: LIQUID, text: ', coolant' },
        { when: HYDRAULICS, text: ' and hydraulic fluid' },
        { when: RETRACTABLE, text: ', gear down' },
      ],
    ],
    steps: [
      'Zero the scales; weigh; roll off; three times; swap left and right scale once.',
      'Drop plumb lines; two people measure datum to each wheel centre.',
      'List equipment on board and equipment missing.',
      { when: RETRACTABLE, text: 'Work out the moment change with gear up.' },
      'Load each station in turn (seats, baggage, each tank in steps) or measure its arm.',
      'Reduce to empty weight, CG, arms and an uncertainty.',
    ],
    readings: [
      { what: 'scale reading', measure: 'mass', at: 'per wheel per run' },
      { what: 'wheel arm', measure: 'arm', at: 'twice per wheel' },
      { what: 'fluids aboard', measure: 'fluid', at: 'each fluid' },
      { what: 'level error', measure: 'angle', at: 'once, pitch and roll' },
    ],
    pass: [
      {
        text: 'Three weighings within the scale resolution or 0.2 % of total, whichever is larger',
        source: 'practice',
      },
      {
        text: [
          'Condition is well defined and repeatable: unusable fuel, full oil',
          { when: LIQUID, text: ', coolant' },
          { when: HYDRAULICS, text: ' and hydraulic fluid' },
        ],
        source: '14cfr23-25',
      },
      { text: 'CG range can be met for the planned first-flight load', source: 'ac-90-89a-ch1-sec8-9' },
    ],
    stop: ['repeat weighings disagree: find out why', 'airplane not level or scale off zero after the run'],
    hazards: [
      { hazard: 'Airplane rolls off a scale', mitigation: 'chocks, two people, no one under the wing' },
      { hazard: 'Wrong arm makes CG wrong', mitigation: 'two independent measurements' },
    ],
    reductions: ['weight-balance'],
    groundMinutes: 300,
    blocks: 'once; again after paint or an equipment change',
    planning: { daylight: false },
    sources: ['14cfr23-25', 'faa-h-8083-1', 'ac-90-89a-ch1-sec8-9'],
  },
  {
    id: 'loading-envelope-plan',
    title: 'Loading plan and ballast for every test point',
    stage: 'shop',
    system: 'weight',
    purpose: 'Show before flight that each planned load lies within the limits, from takeoff to zero fuel.',
    needs: ['weigh-empty-cg'],
    produces: ['first-flight load', 'ballast table'],
    consumes: ['empty weight and CG', 'station arms'],
    conditions: { ...DESK },
    setup: ['Empty data, station arms, designer limits, planned test loads'],
    steps: [
      'Compute takeoff, landing and zero-usable-fuel CG for each block.',
      ['Track CG as fuel is burned', { when: TRANSFER, text: ' and as reserve fuel is transferred' }, '.'],
      { when: RETRACTABLE, text: 'Track CG with gear up.' },
      'Choose first-flight load: light, forward half, fuel for the flight plus reserve.',
      "Design ballast that can't shift: weighed, tied to structure rated for it.",
      'Plot all points in the envelope with uncertainty boxes.',
    ],
    readings: [
      { what: 'block weight', measure: 'mass', at: 'per block' },
      { what: 'block CG', measure: 'arm', at: 'per block' },
      { what: 'ballast mass', measure: 'mass', at: 'per block' },
      { what: 'ballast station', measure: 'arm', at: 'per block' },
    ],
    pass: [
      { text: 'Every point including uncertainty lies inside the limits', source: 'maker' },
      { text: 'Ballast weighed and tied', source: 'ac-90-89a-ch6' },
    ],
    stop: ['a point falls outside: change the load, never the limit'],
    hazards: [
      {
        hazard: ['Fuel burn', { when: TRANSFER, text: ' or transfer' }, ' moves CG out of limits'],
        mitigation: 'check the whole burn line, not just takeoff',
      },
    ],
    reductions: ['weight-balance'],
    groundMinutes: 120,
    blocks: 'per block',
    planning: { daylight: false },
    sources: ['faa-h-8083-1', 'ac-90-89a-ch1-sec8-9', 'ac-90-89a-ch6', '14cfr23-25'],
  },
] satisfies readonly TestData[];
