/** Radios, antennas and the locator transmitter in the shop. */
import {
  AUTOPILOT,
  ELECTRIC_TRIM,
  ELECTRONIC_CONTROL,
  ELT,
  IFR,
  NOT_ELECTRONIC,
  QUANTITY_GAUGE,
  RADIO,
} from '../../fits.ts';
import { HANGAR } from '../../settings.ts';
import type { TestData } from '../../test.ts';

export const AVIONICS = [
  {
    id: 'avionics-antenna-ground',
    title: 'Radio, navigation and antenna ground check',
    stage: 'shop',
    system: 'avionics',
    applies: RADIO,
    purpose: 'Show radios, intercom, displays and antennas work with the airframe around them.',
    needs: ['first-power-up', 'electrical-load-survey'],
    produces: ['antenna table'],
    conditions: { ...HANGAR },
    setup: [
      'Airplane outdoors clear of metal',
      ['Antenna analyser', { when: IFR, text: '; navigation signal generator or field signals' }],
    ],
    steps: [
      'Measure standing wave ratio of each antenna over the band.',
      'Voice check low, mid and high frequency, near and at {{show far 10 nmi}}.',
      { when: IFR, text: 'Feed VOR, localizer, glideslope signals: sense, flags, autopilot input.' },
      'Satellite navigator: position, integrity, data in date; compare two sources.',
      'Attitude and heading: level reference; fail one source, see reversion.',
      [
        'Transmit on each com; watch engine gauges',
        { when: ELECTRIC_TRIM, text: ', trim' },
        { when: AUTOPILOT, text: ', autopilot' },
        { when: QUANTITY_GAUGE, text: ', fuel gauges' },
        '.',
      ],
    ],
    readings: [
      { what: 'standing wave ratio', unit: 'ratio', at: '3 frequencies per antenna' },
      { what: 'needle error', unit: 'dots', at: 'per signal', when: IFR },
      { what: 'interference seen', unit: 'text', at: 'per transmitter' },
    ],
    pass: [
      { text: 'Standing wave ratio under 2.5 (under 3 at band ends)', source: 'practice' },
      {
        text: [
          'No interference with engine',
          { when: ELECTRIC_TRIM, text: ', trim' },
          { when: AUTOPILOT, text: ', autopilot' },
          ' or instruments',
        ],
        source: 'practice',
      },
    ],
    stop: [['engine', { when: ELECTRIC_TRIM, text: ', trim' }, ' or instruments react to transmission']],
    hazards: [
      {
        hazard: [
          'Transmitter upsets ',
          { when: ELECTRONIC_CONTROL, text: 'engine control' },
          { when: NOT_ELECTRONIC, text: 'instruments' },
        ],
        mitigation: 'test on the ground with propeller clear first, then running',
      },
    ],
    groundMinutes: 240,
    blocks: 'per radio',
    planning: { daylight: false },
    sources: ['14cfr91-205', 'ac-23-17c'],
  },
  {
    id: 'elt-ground-test',
    title: 'Emergency locator transmitter check',
    stage: 'shop',
    system: 'avionics',
    applies: ELT,
    purpose: 'Show that the beacon arms, fires, is heard and is registered.',
    needs: ['first-power-up'],
    produces: ['ELT due date'],
    conditions: { ...HANGAR },
    setup: [
      "Registration filed with the airplane's code",
      'Receiver on 121.5 MHz',
      'Digital unit: only as its maker says',
    ],
    steps: [
      'Check mount, antenna, cable, remote switch reach and battery date.',
      'Tell the tower; listen on 121.5 MHz.',
      'Analogue: first 5 minutes of the hour, three sweeps at most.',
      'Digital: self-test only as the maker says; read the code if a tester is there.',
      'Check the crash switch as the maker describes.',
      'Arm; listen on 121.5 MHz to prove silence.',
    ],
    readings: [
      { what: 'sweeps heard', unit: 'count', at: 'once' },
      { what: 'battery expiry', unit: 'date', at: 'once' },
      { what: 'code read', unit: 'hex', at: 'once' },
    ],
    pass: [
      { text: 'Heard, then silent and armed', source: 'aim-6-2-4' },
      { text: 'Battery replaced after over 1 hour of use or half of its life', source: '14cfr91-207' },
      { text: 'Inspected within 12 calendar months', source: '14cfr91-207' },
    ],
    stop: ['signal does not stop: disconnect antenna, call the authority'],
    hazards: [
      { hazard: 'False alarm starts a search', mitigation: 'time window, short test, listen afterwards' },
      {
        hazard: 'Beacon left off after the test',
        mitigation: 'arm state is read back in the cockpit and on the remote',
      },
    ],
    groundMinutes: 30,
    blocks: 'once; every 12 calendar months',
    planning: { daylight: false },
    sources: ['14cfr91-207', 'aim-6-2-4', 'ac-43-13-1b-para12-22'],
  },
] satisfies readonly TestData[];
