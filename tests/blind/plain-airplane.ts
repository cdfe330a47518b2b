/** The demo airplane's file as JSON, for simulated flights that change a part of it. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';

export const plainAirplane = JSON.parse(
  readFileSync(join(import.meta.dirname, '..', '..', 'sample-tests', 'ouzel', 'airplane.json'), 'utf8'),
);
