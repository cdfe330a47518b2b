/** The inspections that open and close the shop stage. */
import { HYDRAULICS, LIQUID } from '../../fits.ts';
import { HANGAR } from '../../settings.ts';
import type { TestData } from '../../test.ts';

export const INSPECTION = [
  {
    id: 'open-inspection',
    title: 'Open inspection, zone by zone',
    stage: 'shop',
    system: 'airframe',
    purpose: 'Find build errors while every line, wire and joint can still be seen and reached.',
    produces: ['open zone list'],
    conditions: { ...HANGAR },
    setup: [
      'All access open, good light, drawings and a list by zone',
      'At least one inspector who did not build the zone',
    ],
    steps: [
      'Walk each zone in list order; touch each fastener, pin, jam nut and clamp.',
      [
        'Trace each fuel, oil',
        { when: LIQUID, text: ', coolant' },
        { when: HYDRAULICS, text: ', hydraulic' },
        ' and brake line end to end: chafe, bend, support.',
      ],
      'Trace each wire bundle: chafe, support, boots, clear of fuel lines and heat.',
      'Check bonding straps and grounds against the drawing.',
      'Replace hoses and seals that aged during the build, or record why they stay.',
      'Write every open item; give it an owner.',
    ],
    readings: [
      { what: 'zone seen', unit: 'yes/no, initials', at: 'per zone' },
      { what: 'open item', unit: 'text', at: 'when found' },
      { what: 'hose or seal date', unit: 'year', at: 'per item' },
    ],
    pass: [
      { text: 'Old rubber hoses and cork gaskets checked or replaced', source: 'ac-90-89a-ch1-sec7' },
      { text: 'Every zone seen by two people', source: 'practice' },
    ],
    stop: ['any item that cannot be inspected: stop and make access'],
    hazards: [{ hazard: 'Inspector sees what he expects', mitigation: 'a second person who did not build the zone' }],
    groundMinutes: 480,
    blocks: 'once per zone',
    planning: { daylight: false },
    sources: ['ac-90-89a-ch1-sec7'],
  },
  {
    id: 'closing-inspection',
    title: 'Last look before covers go on',
    stage: 'shop',
    system: 'airframe',
    purpose: 'Close each zone once its leak, load and travel checks are done and a second person has seen it.',
    needs: [
      'control-system-proof',
      'surface-balance-freeplay',
      'first-power-up',
      'pitot-static-leak',
      'fuel-tank-leak-vent',
      'coolant-pressure-leak',
      'hydraulic-leak-proof',
      'brake-ground-check',
      'engine-controls-rigging',
      'gear-rigging-locks',
    ],
    produces: ['zone records'],
    consumes: ['open zone list', 'control travel table', 'control stretch curve'],
    conditions: { ...HANGAR },
    setup: [
      'All access open, good light, drawings and a list by zone',
      'At least one inspector who did not build the zone',
    ],
    steps: [
      'Check that every leak, load and travel test of the zone is on record.',
      'Walk the zone in list order; touch each fastener, pin, jam nut and clamp.',
      'Mark each fastener only after its torque has been checked.',
      'Count tools and rags in and out; vacuum; mirror-check bilge and tail.',
      'Photograph the zone; file the picture with the zone record.',
      'Close; second person signs.',
    ],
    readings: [
      { what: 'zone accepted', unit: 'yes/no, initials', at: 'per zone' },
      { what: 'open item', unit: 'text', at: 'when found' },
    ],
    pass: [{ text: 'Every zone signed by two people and no open item that affects flight', source: 'practice' }],
    stop: ['any item that cannot be inspected: stop and make access'],
    hazards: [
      { hazard: 'Inspector sees what he expects', mitigation: 'a second person who did not build the zone' },
      { hazard: 'Loose object jams a control', mitigation: 'tool count, mirror and vacuum before closing' },
    ],
    groundMinutes: 480,
    blocks: 'once per zone; again after any later opening',
    planning: { daylight: false },
    sources: ['14cfr43-appendix-d', 'ac-20-27g'],
  },
] satisfies readonly TestData[];
