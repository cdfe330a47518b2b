/** Surroundings that many tests share; a test says only what differs. */

/** still, in the shop or the hangar */
export const HANGAR = {
  wind: 'not critical (hangar)',
  weather: 'dry, sheltered',
  altitude: 'ground',
  crew: 'builder and one helper who reads back',
} as const;

/** at a table, two people */
export const DESK = {
  crew: 'builder and one reviewer who did not do the work',
} as const;

/** standing, engine running */
export const ENGINE_RUN = {
  wind: 'nose into wind, under {{show kt 15 kt}}',
  weather: 'dry, clean surface, no loose stones',
  fuel: 'at least one third in every tank used',
  altitude: 'ground',
  crew: 'one at the controls, one outside with extinguisher and agreed hand signals',
} as const;

/** rolling under power */
export const RUNWAY = {
  wind: 'under {{show kt 10 kt}}, crosswind under {{show kt 5 kt}}',
  weather: 'day VMC, dry runway',
  weight: 'first-flight weight',
  cg: 'forward half of the range',
  fuel: 'first-flight fuel',
  altitude: 'ground',
  crew: 'pilot only; helper with radio and extinguisher beside the runway',
} as const;

/** in flight, unless the test says otherwise */
export const FLIGHT = {
  wind: 'under {{show kt 15 kt}}, crosswind within the value shown so far',
  weather: 'day VMC, smooth air',
  weight: 'light to mid',
  cg: 'forward half of the range',
  fuel: 'test plus transit plus reserve',
  altitude: '{{show height 5000 ft}} above ground or more unless a step says otherwise',
  crew: 'pilot only, unless the limitations allow another',
} as const;
