/** Climbs: the rate on the standard day over speed, for each band of height, and the curve through them. */
import type { Result, ResultTable } from '../../analysis/results/index.ts';
import { show } from '../../analysis/units/index.ts';
import type { InstrumentUnits } from '../words/unit-shown.ts';
import type { Chart, Dataset } from './chart.ts';
import { columnOf, differentIn, paired, rowsWhere } from './column-of.ts';

/**
 * Charts of a climb result.
 * @param result as kept
 * @param units the airplane's instrument units, object
 */
export function climbCharts(result: Result, units: InstrumentUnits): Chart[] {
  const climbs = result.tables.find((one) => one.name === 'climbs');
  const curve = result.tables.find((one) => one.name === 'climb-curve');
  if (!climbs) return [];
  const bands = differentIn(climbs, 'band').filter((one) => one !== null);
  const datasets = (bands.length > 0 ? bands : [null]).flatMap((band): Dataset[] => {
    const own = band === null ? climbs : rowsWhere(climbs, 'band', band);
    const x = columnOf(own, 'calibrated-airspeed', units).values;
    const half = columnOf(own, 'rate-standard-u95', units, true).values;
    const said = heightOf(own, units);
    const measured: Dataset = {
      label: `Measured${said}`,
      axis: 'left',
      draw: 'points',
      ...paired(x, columnOf(own, 'rate-standard', units).values),
      half: half.filter((_, i) => x[i] !== null),
    };
    const line = curve && band !== null ? rowsWhere(curve, 'band', band) : undefined;
    if (!line || line.rows.length === 0) return [measured];
    const fitted = paired(columnOf(line, 'calibrated-airspeed', units).values, rateOf(line, units));
    return [measured, { label: `Curve${said}`, axis: 'left', draw: 'line', ...fitted }];
  });
  const rate = columnOf(climbs, 'rate-standard', units);
  const known = rate.values.filter((one) => one !== null);
  return [
    {
      title: 'Rate of climb over speed',
      summary: `${climbs.rows.length} climbs from ${Math.min(...known).toFixed(0)} to ${Math.max(...known).toFixed(0)} ${rate.symbol}.`,
      x: { label: 'Calibrated airspeed', unit: columnOf(climbs, 'calibrated-airspeed', units).symbol },
      left: { label: 'Rate of climb, standard day', unit: rate.symbol },
      datasets,
      limits: [],
      spans: [],
    },
  ];
}

/** The curve's column is named `rate`; it is the same quantity as the measured one. */
function rateOf(table: ResultTable, units: InstrumentUnits): (number | null)[] {
  const columns = table.columns.map((one) => (one.name === 'rate' ? { ...one, name: 'rate-standard' } : one));
  return columnOf({ ...table, columns }, 'rate-standard', units).values;
}

function heightOf(table: ResultTable, units: InstrumentUnits): string {
  const index = table.columns.findIndex((one) => one.name === 'density-altitude');
  const heights = table.rows.flatMap((row) => (typeof row[index] === 'number' ? [row[index]] : []));
  if (heights.length === 0) return '';
  const mean = heights.reduce((sum, one) => sum + one, 0) / heights.length;
  return ` near ${show(mean, units.altitude, { decimals: 0 }).text} density altitude`;
}
