/** What somebody answers to the ten questions of a new book, by field; invented. */
export const ANSWERS: Record<string, string> = {
  name: 'Dipper',
  registration: '0X-DIP',
  builder: 'Ada',
  'fuel.tanks.0.capacity.value': '38',
  'limits.mass.maximum.value': '600',
  'limits.mass.maximum.source': 'plans',
  'speeds.stallLanding.value': '42',
  'place.name': 'Fennick Field',
  'place.elevation.value': '740',
  'place.runways.0.name': '08/26',
  'place.runways.0.length.value': '1180',
  'plan.program.hours': '25',
};
