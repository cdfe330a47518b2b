/** Papers, people, and getting out of the airplane. */
import { CANOPY, ELECTRIC_TRIM, EMERGENCY_EXTENSION, LIQUID, NO_CANOPY, RETRACTABLE } from '../../fits.ts';
import { DESK, HANGAR } from '../../settings.ts';
import type { TestData } from '../../test.ts';

export const PEOPLE = [
  {
    id: 'documents-and-placards',
    title: 'Papers, placards and markings on board',
    stage: 'shop',
    system: 'papers',
    purpose: 'Show that the airplane may lawfully be moved and flown under its limitations.',
    produces: ['limitations record'],
    conditions: { ...DESK },
    setup: [
      'Registration, airworthiness certificate and limitations (when issued), weight and balance, checklists, placard list',
    ],
    steps: [
      'Check registration marks and data plate against the certificate.',
      'Read the limitations line by line with the reviewer.',
      'Copy area, airports, hours or tasks, crew and logbook wording into the program.',
      'Fit placards: notice, limits, fuel grade and capacity, switches, emergency controls.',
      'Draft normal and emergency checklists; mark each number estimated or measured.',
      'Set up airframe, engine, propeller and test logs.',
    ],
    readings: [
      { what: 'document present', unit: 'yes/no', at: 'once' },
      { what: 'limitation text copied', unit: 'text', at: 'once' },
      { what: 'placard fitted', unit: 'yes/no', at: 'per placard' },
    ],
    pass: [
      { text: 'All papers the limitations call for are on board', source: 'ac-90-89a-ch1-sec8-9' },
      {
        text: 'Test area, crew and hours or task option entered exactly as issued',
        source: 'order-8130-2-limitations',
      },
    ],
    stop: ['limitations missing or not understood: ask the issuing office first'],
    hazards: [
      {
        hazard: 'Flying outside the limitations',
        mitigation: 'limitations printed on the first page of the card pack',
      },
    ],
    groundMinutes: 180,
    blocks: 'once; again when limitations are reissued',
    planning: { daylight: false },
    sources: [
      'ac-90-89a-ch1-sec8-9',
      'order-8130-2-limitations',
      'policy-2023-phase-one',
      'ac-90-89c-ch2-sec1',
      '14cfr91-205',
      'ac-20-27g',
    ],
  },
  {
    id: 'pilot-and-emergency-plan',
    title: 'Pilot currency and emergency plan',
    stage: 'shop',
    system: 'papers',
    purpose: 'Make the pilot, ground crew and field ready for the bad day before the first fast taxi.',
    needs: ['documents-and-placards'],
    produces: ['runway data', 'emergency drills'],
    consumes: ['limitations record'],
    conditions: { ...DESK },
    setup: ['Pilot logbook, a similar airplane and instructor, airport diagram, helpers'],
    steps: [
      'Check medical, flight review, recent landings and endorsements.',
      'Fly recent hours in an airplane alike in wing loading, power and gear.',
      'Measure runway and overruns; mark landing spots in glide from each pattern point.',
      'Name crew: radio, extinguisher, rescue tools, first aid.',
      [
        'Show the crew the ',
        { when: CANOPY, text: 'canopy' },
        { when: NO_CANOPY, text: 'doors' },
        ', fuel shut-off and battery switches on the airplane.',
      ],
      'Say and touch each drill: engine failure on the roll, below and above {{show height 500 ft}} above ground; fire.',
      [
        'Say and touch: control jam, electrics',
        { when: CANOPY, text: ', canopy open' },
        { when: ELECTRIC_TRIM, text: ', trim runaway' },
        { when: RETRACTABLE, text: ', gear unsafe' },
        { when: LIQUID, text: ', coolant loss' },
        '.',
      ],
      'Set personal limits for sleep, wind, cloud base and time of day.',
    ],
    readings: [
      { what: 'hours in a similar type, last 90 days', unit: 'h', at: 'once' },
      { what: 'endorsement held', unit: 'yes/no', at: 'per endorsement' },
      { what: 'runway length', measure: 'distance', at: 'once' },
      { what: 'runway elevation', measure: 'altitude', at: 'once' },
      { what: 'drill rehearsed', unit: 'yes/no', at: 'per drill' },
    ],
    pass: [
      {
        text: 'Runway about {{show distance 4000 ft}} by {{show distance 100 ft}} at sea level, {{show distance 500 ft}} more for each {{show altitude 1000 ft}} of elevation; over {{show distance 6000 ft}} by {{show distance 150 ft}} for a high-performance airplane',
        source: 'ac-90-89a-ch1-sec2',
      },
      { text: 'Required endorsements held', source: '14cfr61-31' },
      { text: 'Every drill spoken and touched within the last 7 days', source: 'practice' },
    ],
    stop: ['pilot not current: use another qualified pilot'],
    hazards: [
      {
        hazard: 'Owner pilot out of practice after years of building',
        mitigation: 'transition training or an additional qualified pilot',
      },
      {
        hazard: ['Rescuers cannot open the ', { when: CANOPY, text: 'canopy' }, { when: NO_CANOPY, text: 'doors' }],
        mitigation: 'practical session with the crew',
      },
    ],
    groundMinutes: 600,
    blocks: 'once; drills repeated before first flight',
    planning: { daylight: false },
    sources: ['ac-90-89a-ch1-sec2', 'ac-90-89a-ch1-sec3-6', 'ac-90-109a', 'ac-90-116', '14cfr61-31'],
  },
  {
    id: 'canopy-harness-egress',
    title: [{ when: CANOPY, text: 'Canopy, harness' }, { when: NO_CANOPY, text: 'Doors, harness' }, ' and getting out'],
    stage: 'shop',
    system: 'cabin',
    purpose: [
      'Show the ',
      { when: CANOPY, text: 'canopy cannot open unlatched in flight' },
      { when: NO_CANOPY, text: 'doors cannot open in flight' },
      ' and that people get out fast.',
    ],
    needs: ['open-inspection'],
    produces: ['egress time'],
    conditions: { ...HANGAR, crew: 'pilot in full kit and parachute if used, helper' },
    setup: ['Full flight clothing', 'Stopwatch', 'Latch gauge'],
    steps: [
      'Check latch engagement at each point; warning out only when all are made.',
      { when: CANOPY, text: "Push up from inside to the designer's load." },
      'Jettison or emergency release, where fitted: force and path, with foam catch.',
      [
        'Get out: normal, ',
        { when: CANOPY, text: 'canopy' },
        { when: NO_CANOPY, text: 'door' },
        ' jammed, one side blocked; blindfold once.',
      ],
      [
        'Harness tight: reach every control, breaker and the fuel shut-off',
        { when: EMERGENCY_EXTENSION, text: ', and the emergency gear control' },
        '.',
      ],
      'Check harness anchors against the drawing.',
      'Rescuer opens from outside with the tool.',
    ],
    readings: [
      { what: 'latch engagement', measure: 'small', at: 'each' },
      { what: 'egress time', measure: 'seconds', at: 'each way' },
      { what: 'control out of reach', unit: 'name', at: 'once' },
    ],
    pass: [
      { text: 'Out in under 15 s normal', source: 'practice' },
      { text: "Harness points built to the designer's loads", source: 'ac-90-89a-ch1-sec7' },
      { when: CANOPY, text: 'Canopy warning shows each latch', source: 'practice' },
    ],
    stop: ['release jams', 'person stuck or panicked: open at once'],
    hazards: [
      {
        hazard: [{ when: CANOPY, text: 'Canopy' }, { when: NO_CANOPY, text: 'Door' }, ' opens on takeoff'],
        mitigation: 'latch on the pre-takeoff list, drill: fly the airplane first',
      },
    ],
    groundMinutes: 120,
    blocks: 'once; new occupant again',
    planning: { daylight: false },
    sources: ['ac-90-89a-ch1-sec7'],
  },
] satisfies readonly TestData[];
