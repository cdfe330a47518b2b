/** Draws a chart description with Chart.js: only what we use of it, no animation, our own thinning of long traces. */
import {
  Chart as Drawing,
  LinearScale,
  LineElement,
  type Plugin,
  PointElement,
  ScatterController,
  type ScatterDataPoint,
  type Tick,
  Tooltip,
} from 'chart.js';
import annotation from 'chartjs-plugin-annotation';
import zoom from 'chartjs-plugin-zoom';
import type { Axis, Chart, Dataset } from '../charts/chart.ts';
import { clockInWords } from '../words/time.ts';
import { type Inks, inksOf } from './chart-inks.ts';
import { drawBars, limitLine, spanBox } from './chart-marks.ts';

export type Drawn = Drawing<'scatter', ScatterDataPoint[]>;

export interface Stroke {
  ink: keyof Inks;
  dash: number[];
  point: 'circle' | 'rect' | 'triangle' | 'rectRot' | 'crossRot';
}

// Told apart by stroke and point, not by colour alone: the second of each pair prints differently in one ink.
const STROKES: readonly Stroke[] = [
  { ink: 'accent', dash: [], point: 'circle' },
  { ink: 'ink', dash: [], point: 'rect' },
  { ink: 'accent', dash: [8, 3], point: 'triangle' },
  { ink: 'ink', dash: [2, 3], point: 'rectRot' },
  { ink: 'soft', dash: [10, 3, 2, 3], point: 'crossRot' },
  { ink: 'soft', dash: [], point: 'circle' },
];

Drawing.register(ScatterController, LinearScale, PointElement, LineElement, Tooltip, zoom, annotation);

/**
 * Draw a chart.
 * @param canvas where
 * @param chart its description
 * @param more onView is told of the visible span after a zoom or a pan; onLayout after each drawing
 * @returns the live drawing
 */
export function mountChart(
  canvas: HTMLCanvasElement,
  chart: Chart,
  more: { onView?: (from: number, to: number) => void; onLayout?: (drawn: Drawn) => void } = {},
): Drawn {
  const inks = inksOf(canvas);
  const onAxis = (axis: Dataset['axis']) => chart.datasets.filter((one) => one.axis === axis);
  const seen = ({ chart: drawn }: { chart: Drawing }) => {
    const { min, max } = drawn.scales.x ?? { min: 0, max: 0 };
    more.onView?.(min, max);
  };
  const bars: Plugin<'scatter'> = {
    id: 'bars',
    afterDatasetsDraw: (drawn) => drawBars(drawn as Drawn, chart, inks),
    afterDraw: (drawn) => more.onLayout?.(drawn as Drawn),
  };
  const made = new Drawing<'scatter', ScatterDataPoint[]>(canvas, {
    type: 'scatter',
    data: { datasets: chart.datasets.map((one, index) => datasetOf(one, index, inks)) },
    plugins: [bars],
    options: {
      animation: false,
      parsing: false,
      normalized: true,
      maintainAspectRatio: false,
      font: { family: getComputedStyle(canvas).fontFamily, size: 14 },
      interaction: { mode: 'nearest', axis: 'x', intersect: false },
      scales: {
        x: {
          type: 'linear',
          ...axisOf(chart.x, inks, chart.x.clock === true, []),
          ...(chart.whole ? { min: chart.whole.from, max: chart.whole.to } : {}),
        },
        left: { type: 'linear', position: 'left', ...axisOf(chart.left, inks, false, onAxis('left')) },
        ...(chart.right
          ? {
              right: {
                type: 'linear',
                position: 'right',
                ...axisOf(chart.right, inks, false, onAxis('right')),
                grid: { display: false },
              },
            }
          : {}),
      },
      plugins: {
        legend: { display: false },
        tooltip: {
          backgroundColor: inks.ink,
          titleColor: inks.sheet,
          bodyColor: inks.sheet,
          bodyFont: { size: 14 },
          titleFont: { size: 14 },
          callbacks: {
            title: ([item]) => (item ? textOf(item.parsed.x ?? 0, chart.x) : ''),
            label: (item) => {
              const axis = item.dataset.yAxisID === 'right' && chart.right ? chart.right : chart.left;
              return `${item.dataset.label ?? ''}: ${textOf(item.parsed.y ?? 0, axis)}`;
            },
          },
        },
        annotation: {
          annotations: [...chart.spans.map((s) => spanBox(s, inks)), ...chart.limits.map((l) => limitLine(l, inks))],
        },
        zoom: {
          limits: { x: { min: 'original', max: 'original' } },
          zoom: {
            mode: 'x',
            wheel: { enabled: true, modifierKey: 'ctrl' },
            pinch: { enabled: true },
            drag: { enabled: true, backgroundColor: inks.accentSoft, borderColor: inks.accent, borderWidth: 1 },
            onZoomComplete: seen,
          },
          pan: { enabled: true, mode: 'x', modifierKey: 'shift', onPanComplete: seen },
        },
      },
    },
  });
  if (chart.view) made.zoomScale('x', { min: chart.view.from, max: chart.view.to }, 'none');
  return made;
}

/** Put new samples into a drawing without changing its view. */
export function replaceSamples(drawn: Drawn, datasets: readonly Dataset[]): void {
  datasets.forEach((one, index) => {
    const dataset = drawn.data.datasets[index];
    if (dataset) dataset.data = pointsOf(one);
  });
  drawn.update('none');
}

/** How a dataset is drawn, for the drawing and its legend alike. */
export function strokeOf(one: Dataset, index: number): Stroke {
  const stroke = STROKES[index % STROKES.length] ?? { ink: 'ink', dash: [], point: 'circle' };
  return one.draw === 'dashed' ? { ...stroke, dash: [6, 4] } : stroke;
}

function datasetOf(one: Dataset, index: number, inks: Inks) {
  const stroke = strokeOf(one, index);
  const isLine = one.draw !== 'points';
  return {
    label: one.label,
    yAxisID: one.axis,
    data: pointsOf(one),
    showLine: isLine,
    spanGaps: false,
    borderColor: inks[stroke.ink],
    backgroundColor: isLine ? inks[stroke.ink] : inks.sheet,
    borderWidth: 2,
    borderDash: isLine ? stroke.dash : [],
    pointRadius: isLine ? 0 : 5,
    pointHitRadius: 12,
    pointStyle: isLine ? ('line' as const) : stroke.point,
  };
}

function pointsOf(one: Dataset): ScatterDataPoint[] {
  return one.x.map((x, i) => ({ x, y: one.y[i] ?? Number.NaN }));
}

function axisOf(axis: Axis, inks: Inks, clock: boolean, datasets: readonly Dataset[]) {
  const unit = axis.unit === '' ? '' : ` (${axis.unit})`;
  return {
    title: { display: true, text: `${axis.label}${unit}`, color: inks.ink, font: { size: 14 } },
    ticks: {
      color: inks.soft,
      font: { size: 13 },
      maxRotation: 0,
      ...(clock ? { callback: (value: number | string) => clockInWords(Number(value)) } : {}),
    },
    grid: { color: inks.rule },
    border: { color: inks.ink },
    ...(clock ? { bounds: 'data' as const, afterBuildTicks: clockTicks } : roomFor(datasets)),
    ...(axis.includes && axis.includes.length > 0
      ? { suggestedMin: Math.min(...axis.includes), suggestedMax: Math.max(...axis.includes) }
      : {}),
  };
}

/** Room at the ends; but what starts near nothing starts at nothing, and never goes below it. */
function roomFor(datasets: readonly Dataset[]) {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  let hasBars = false;
  for (const { y, half } of datasets) {
    y.forEach((value, i) => {
      if (value === null) return;
      const reach = half?.[i] ?? 0;
      hasBars ||= reach > 0;
      if (value - reach < low) low = value - reach;
      if (value + reach > high) high = value + reach;
    });
  }
  if (low >= 0 && low < 0.25 * high) return { beginAtZero: true, grace: 0, suggestedMax: high };
  return hasBars ? { grace: '5%', suggestedMin: low, suggestedMax: high } : { grace: '5%' };
}

/** Ticks on whole minutes or round seconds, which a base of ten never gives. */
function clockTicks(scale: { min: number; max: number; ticks: Tick[] }): void {
  const steps = [1, 2, 5, 10, 15, 30, 60, 120, 300, 600, 900, 1800, 3600];
  const step = steps.find((one) => (scale.max - scale.min) / one <= 10) ?? 7200;
  const ticks: Tick[] = [];
  for (let at = Math.ceil(scale.min / step) * step; at <= scale.max; at += step) ticks.push({ value: at });
  scale.ticks = ticks;
}

function textOf(value: number, axis: Axis): string {
  if (axis.clock) return clockInWords(value);
  const digits = Math.abs(value) >= 100 ? 0 : Math.abs(value) >= 10 ? 1 : 2;
  return `${value.toFixed(digits).replace('-', '−')}${axis.unit === '' ? '' : ` ${axis.unit}`}`;
}
