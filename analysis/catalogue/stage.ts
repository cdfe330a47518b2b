/** The nine stages of a program, in the order they are worked through. */

export const STAGES = [
  'shop',
  'engine-ground',
  'taxi',
  'first-flight',
  'envelope',
  'systems-flight',
  'performance',
  'handling',
  'sign-off',
] as const;

export type Stage = (typeof STAGES)[number];

export const STAGE_TITLES: Readonly<Record<Stage, string>> = {
  shop: 'In the shop',
  'engine-ground': 'Engine on the ground',
  taxi: 'Taxi',
  'first-flight': 'First flights',
  envelope: 'Opening the envelope',
  'systems-flight': 'Systems in flight',
  performance: 'Performance',
  handling: 'Handling',
  'sign-off': 'Sign-off',
};

/** Systems a test belongs to: what the Program page filters by, and what shares one set-up in the shop. */
export const SYSTEMS = [
  'papers',
  'airframe',
  'controls',
  'electrical',
  'instruments',
  'avionics',
  'autopilot',
  'fuel',
  'cooling',
  'gear',
  'cabin',
  'engine',
  'propeller',
  'weight',
  'air data',
  'stall',
  'structure',
  'performance',
  'stability',
] as const;

export type System = (typeof SYSTEMS)[number];
