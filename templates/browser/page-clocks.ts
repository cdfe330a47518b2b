/**
 * Two recorders over each other: the second is moved by dragging the strip, by its arrow keys, or by the number field
 * that is sent. Both drawings follow, and how well the signals agree is said at each place.
 */
import { correlationAt } from '../../analysis/logs/align/correlation.ts';
import type { ShiftedClocks } from '../pages/clocks.view.ts';
import { typedNumber } from '../words/typed-number.ts';
import { addLegend } from './chart-legend.ts';
import { type Drawn, mountChart, replaceSamples } from './mount-chart.ts';

const form = document.querySelector<HTMLFormElement>('form[data-clocks]');
const field = form?.elements.namedItem('shift');
const strip = form?.querySelector<HTMLElement>('.move');
const says = form?.querySelector('output');
if (form && field instanceof HTMLInputElement && strip && says) start(form, field, strip, says);

function start(form: HTMLFormElement, field: HTMLInputElement, strip: HTMLElement, says: HTMLOutputElement): void {
  // written by our own server from the same type; not user text
  const clocks = JSON.parse(form.dataset.clocks ?? '{}') as ShiftedClocks;
  const figures = [...document.querySelectorAll<HTMLElement>('figure[data-shifted]')];
  const drawings = figures.flatMap((figure, k): Drawn[] => {
    const chart = clocks.charts[k]?.chart;
    const canvas = figure.querySelector('canvas');
    if (!chart || !canvas) return [];
    const drawn = mountChart(canvas, chart);
    addLegend(figure, chart, () => drawn);
    figure.append(tools(drawn));
    return [drawn];
  });
  const [first] = drawings;
  if (!first) return;
  strip.hidden = false;
  says.parentElement?.removeAttribute('hidden');
  let shift = Math.round(clocks.shift * 10) / 10;

  const place = (seconds: number, from: 'field' | 'strip') => {
    shift = Math.round(seconds * 10) / 10;
    if (from === 'strip') field.value = String(shift);
    clocks.charts.forEach(({ chart, own }, k) => {
      const moved = chart.datasets[1];
      const drawn = drawings[k];
      if (!moved || !drawn) return;
      moved.x = own.map((t) => t + shift + clocks.drift * t);
      replaceSamples(drawn, chart.datasets);
    });
    say();
  };
  const say = () => {
    strip.setAttribute('aria-valuenow', String(shift));
    strip.setAttribute('aria-valuetext', `${shift} seconds`);
    const found =
      clocks.found === null
        ? ''
        : ` (${agreement(clocks, clocks.found)} at the ${clocks.found.toFixed(1)} s that the signals tell)`;
    says.textContent = `Agreement of the signals at ${shift} s: ${agreement(clocks, shift)}${found}; 1 is perfect, 0 is none.`;
  };
  say();
  field.addEventListener('input', () => {
    const typed = typedNumber(field.value);
    if (typed !== null) place(typed, 'field');
  });
  strip.addEventListener('keydown', (event) => {
    const step = { ArrowLeft: -0.1, ArrowDown: -0.1, ArrowRight: 0.1, ArrowUp: 0.1, PageDown: -1, PageUp: 1 }[
      event.key
    ];
    if (step === undefined) return;
    event.preventDefault();
    place(shift + step * (event.shiftKey ? 100 : 1), 'strip');
  });
  let grip: { x: number; shift: number } | null = null;
  strip.addEventListener('pointerdown', (event) => {
    event.preventDefault();
    strip.setPointerCapture(event.pointerId);
    strip.focus();
    grip = { x: event.clientX, shift };
  });
  strip.addEventListener('pointermove', (event) => {
    const scale = first.scales.x;
    if (!grip || !scale) return;
    // As the drawing moves under the finger: nearer in view, finer in time.
    const secondsAPixel = (scale.max - scale.min) / Math.max(1, first.chartArea.width);
    place(grip.shift + (event.clientX - grip.x) * secondsAPixel, 'strip');
  });
  for (const end of ['pointerup', 'pointercancel'] as const) {
    strip.addEventListener(end, () => {
      grip = null;
    });
  }
}

/** Correlation of the first signal at a shift, to the nearest step. */
function agreement({ charts, step }: ShiftedClocks, seconds: number): string {
  const signal = charts[0]?.signal;
  if (!signal) return 'not known';
  const numbers = (list: (number | null)[]) => Float64Array.from(list, (value) => value ?? Number.NaN);
  const value = correlationAt(numbers(signal.a), numbers(signal.b), Math.round(seconds / step), 30);
  return Number.isNaN(value) ? 'none, they do not overlap' : value.toFixed(2).replace('-', '−');
}

function tools(drawn: Drawn): HTMLElement {
  const box = document.createElement('div');
  box.className = 'chart-tools';
  const acts: [string, () => void][] = [
    ['Nearer', () => drawn.zoom(1.6)],
    ['Farther', () => drawn.zoom(1 / 1.6)],
    ['Show all', () => drawn.resetZoom()],
  ];
  for (const [text, act] of acts) {
    const button = document.createElement('button');
    button.type = 'button';
    button.textContent = text;
    button.addEventListener('click', act);
    box.append(button);
  }
  return box;
}
