/** Chapters of the plan, and the lines that are filled in by hand. */

export const CONTENTS: readonly { id: string; text: string }[] = [
  { id: 'airplane', text: 'The airplane' },
  { id: 'limitations', text: 'Operating limitations' },
  { id: 'limits', text: 'Limits and speeds' },
  { id: 'place', text: 'Airfield, area and heights agreed' },
  { id: 'people', text: 'People and roles' },
  { id: 'balance', text: 'Weight and balance' },
  { id: 'stops', text: 'Conditions, what stops a test, and what is done then' },
  { id: 'hours', text: 'Hours, and how the program ends' },
  { id: 'gates', text: 'Gates: what must be shown before going on' },
  { id: 'program', text: 'The program, stage by stage' },
  { id: 'flights', text: 'The flights' },
  { id: 'left-out', text: 'Left out, missing, and changes' },
  { id: 'sources', text: 'Sources' },
  { id: 'signatures', text: 'Signatures' },
];

/** What the description does not hold, and a reader of the plan asks for. */
export const BY_HAND: readonly { title: string; lines: readonly string[] }[] = [
  {
    title: 'The papers, by hand',
    lines: [
      'Serial numbers of airframe, engine and propeller',
      'Models of engine and propeller, as on their plates',
      'Certificate of airworthiness or permit: number, issued on',
      'Operating limitations: document and date',
      'Insurance: insurer, policy, phase-one conditions',
    ],
  },
  {
    title: 'The pilot, by hand',
    lines: [
      'Licence, ratings and medical, valid until',
      'Hours in all, and in the last 90 days',
      'Hours on airplanes like this one: gear, propeller, wing loading',
      'Flown with an instructor for this: when, and on what',
    ],
  },
];
