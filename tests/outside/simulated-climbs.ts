/** True climbs of the independent simulation, and the rows of a result that belong to them. Origin: climb/README.md. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Result } from '../../analysis/results/index.ts';

export interface TrueClimb {
  fromSeconds: number;
  toSeconds: number;
  geometricRateFpm: number;
  energyRateFpm?: number;
  steadyRateFpm?: number;
  casKt: number;
  densityAltitudeFt: number;
  massLb: number;
}

export interface TrueClimbs {
  file: string;
  massLb: number;
  wingAreaM2: number;
  variationEastDeg: number;
  climbs: TrueClimb[];
  best?: { bestRateSpeedCasKt: number; flatWithin5FpmKt: [number, number]; bestRateFpm: number };
  byAltitude?: { densityAltitudeFt: number; steadyRateFpm: number }[];
}

export function climbFlights(): TrueClimbs[] {
  const path = join(import.meta.dirname, 'truth', 'climb-simulated.json');
  return JSON.parse(readFileSync(path, 'utf8')).flights;
}

/** Rows of the table of climbs, each beside the climb its middle lies in; a column is read by its name. */
export function matchedClimbs(
  result: Result | undefined,
  flight: TrueClimbs,
): { row: (column: string) => number; truth: TrueClimb }[] {
  const table = result?.tables.find((one) => one.name === 'climbs');
  return (table?.rows ?? []).flatMap((cells) => {
    const row = (column: string) => Number(cells[table?.columns.findIndex((one) => one.name === column) ?? -1]);
    const middle = (row('from-seconds') + row('to-seconds')) / 2;
    const truth = flight.climbs.find((one) => one.fromSeconds < middle && middle < one.toSeconds);
    return truth ? [{ row, truth }] : [];
  });
}
