/** An airspeed calibration: the correction at each speed with its U95, the curve through them, and the legs' residuals. */
import type { Result, ResultTable } from '../../analysis/results/index.ts';
import type { InstrumentUnits } from '../words/unit-shown.ts';
import type { Chart, Dataset } from './chart.ts';
import { columnOf, differentIn, paired, rowsWhere } from './column-of.ts';

/**
 * Charts of an airspeed result.
 * @param result as kept
 * @param units the airplane's instrument units, object
 */
export function positionErrorCharts(result: Result, units: InstrumentUnits): Chart[] {
  const table = (name: string) => result.tables.find((one) => one.name === name);
  const [points, curve, legs] = [table('position-error'), table('airspeed-curve'), table('legs')];
  return [...(points ? [correctionChart(points, curve, units)] : []), ...(legs ? [residualChart(legs, units)] : [])];
}

function correctionChart(points: ResultTable, curve: ResultTable | undefined, units: InstrumentUnits): Chart {
  const { symbol } = columnOf(points, 'correction', units, true);
  const flaps = differentIn(points, 'flaps');
  const datasets = flaps.flatMap((setting): Dataset[] => {
    const said = flaps.length > 1 ? `, flaps ${setting}` : '';
    const own = rowsWhere(points, 'flaps', setting);
    const x = columnOf(own, 'indicated-airspeed', units).values;
    const half = columnOf(own, 'u95', units, true).values;
    const measured: Dataset = {
      label: `Measured${said}`,
      axis: 'left',
      draw: 'points',
      ...paired(x, columnOf(own, 'correction', units, true).values),
      half: half.filter((_, i) => x[i] !== null),
    };
    return [measured, ...(curve ? curveLines(rowsWhere(curve, 'flaps', setting), said, units) : [])];
  });
  const { values } = columnOf(points, 'correction', units, true);
  const known = values.filter((one) => one !== null);
  return {
    title: 'Correction to indicated airspeed',
    summary: `Correction from ${Math.min(...known).toFixed(1)} to ${Math.max(...known).toFixed(1)} ${symbol} over ${points.rows.length} speeds.`,
    x: { label: 'Indicated airspeed', unit: symbol },
    left: { label: 'Calibrated less indicated', unit: symbol, includes: [0] },
    datasets,
    limits: [],
    spans: [],
  };
}

function curveLines(curve: ResultTable, said: string, units: InstrumentUnits): Dataset[] {
  const x = columnOf(curve, 'indicated-airspeed', units).values;
  const y = columnOf(curve, 'correction', units, true).values;
  const half = columnOf(curve, 'u95', units, true).values;
  const shifted = (sign: number) => y.map((one, i) => (one === null ? null : one + sign * (half[i] ?? 0)));
  const low = paired(x, shifted(-1));
  const high = paired(x, shifted(1));
  return [
    { label: `Curve${said}`, axis: 'left', draw: 'line', ...paired(x, y) },
    {
      label: `U95 of the curve${said}`,
      axis: 'left',
      draw: 'dashed',
      x: [...low.x, low.x.at(-1) ?? 0, ...high.x],
      y: [...low.y, null, ...high.y],
    },
  ];
}

/** What the fit left over on each leg: no shape should be seen in it. */
function residualChart(legs: ResultTable, units: InstrumentUnits): Chart {
  const number = columnOf(legs, 'leg', units).values;
  const residual = columnOf(legs, 'residual', units, true);
  const largest = Math.max(...residual.values.map((one) => Math.abs(one ?? 0)));
  return {
    title: 'Residual of each leg',
    summary: `${legs.rows.length} legs; the largest residual is ${largest.toFixed(2)} ${residual.symbol}.`,
    x: { label: 'Leg', unit: '' },
    left: { label: 'Residual', unit: residual.symbol },
    datasets: [{ label: 'Residual', axis: 'left', draw: 'points', ...paired(number, residual.values) }],
    limits: [{ label: '', axis: 'left', value: 0, weight: 'caution' }],
    spans: [],
    low: true,
  };
}
