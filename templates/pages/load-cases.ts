/** The load cases of a weight-and-balance result, ready to be drawn. */
import type { Result } from '../../analysis/results/index.ts';
import type { DrawnLoad } from '../parts/envelope.view.ts';

/** Cases with mass and arm; those the result could not place are not drawn. */
export function loadCases(result: Result): DrawnLoad[] {
  const cases = result.tables.find((table) => table.name === 'load-cases');
  return (cases?.rows ?? []).flatMap((row): DrawnLoad[] => {
    const at = (name: string) => row[cases?.columns.findIndex((column) => column.name === name) ?? -1];
    const [label, mass, massU95, arm, armU95] = ['case', 'mass', 'mass-u95', 'arm', 'arm-u95'].map(at);
    const isPlaced = typeof mass === 'number' && typeof arm === 'number';
    if (!isPlaced || typeof massU95 !== 'number' || typeof armU95 !== 'number') return [];
    return [{ label: String(label), mass, massU95, arm, armU95 }];
  });
}
