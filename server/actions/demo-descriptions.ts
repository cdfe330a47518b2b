/** The invented airplanes whose description a new book may be copied from. */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { readAirplane } from '../../analysis/airplane/index.ts';
import type { Desk } from '../desk.ts';
import { DEMO } from './lay-out-demo.ts';

export interface DemoDescription {
  id: string;
  name: string;
  json: unknown;
}

/** Those that came with this program; none where the samples were taken away. */
export function demoDescriptions(desk: Desk): DemoDescription[] {
  return DEMO.flatMap((id) => {
    const place = join(desk.settings.samplesFolder, id, 'airplane.json');
    if (!existsSync(place)) return [];
    const json: unknown = JSON.parse(readFileSync(place, 'utf8'));
    const { airplane } = readAirplane(json);
    return airplane ? [{ id, name: airplane.name, json }] : [];
  });
}
