/** Fills every chart figure of a page, with keys, buttons, picture and numbers; long traces are fetched as seen. */
import type { Chart, Dataset } from '../charts/chart.ts';
import { addLegend } from './chart-legend.ts';
import { type Drawn, mountChart, replaceSamples } from './mount-chart.ts';
import { segmentHandles } from './segment-handles.ts';

/** A fetched trace waits until zooming pauses. */
const SETTLE_MS = 150;

for (const figure of document.querySelectorAll<HTMLElement>('figure[data-chart]')) fill(figure);

function fill(figure: HTMLElement): void {
  const canvas = figure.querySelector('canvas');
  if (!canvas) return;
  // written by our own server from the same type; not user text
  const chart = JSON.parse(figure.dataset.chart ?? '{}') as Chart;
  const handles = segmentHandles(figure, chart);
  let waiting: ReturnType<typeof setTimeout> | undefined;
  let drawn = draw();

  function draw(): Drawn {
    return mountChart(canvas as HTMLCanvasElement, chart, {
      onLayout: (one) => handles.place(one),
      onView: (from, to) => {
        clearTimeout(waiting);
        waiting = setTimeout(() => void fetchSamples(chart, drawn, from, to), SETTLE_MS);
      },
    });
  }
  const view = (act: (drawn: Drawn) => void) => {
    act(drawn);
    const scale = drawn.scales.x;
    if (scale) void fetchSamples(chart, drawn, scale.min, scale.max);
  };
  addLegend(figure, chart, () => drawn);
  const tools = document.createElement('div');
  tools.className = 'chart-tools';
  tools.append(
    button('Nearer', () => view((one) => one.zoom(1.6))),
    button('Farther', () => view((one) => one.zoom(1 / 1.6))),
    button('Show all', () => view((one) => one.resetZoom())),
    button('Picture (PNG)', () => savePicture(drawn, chart.title)),
    button('Numbers (CSV)', () => saveNumbers(chart)),
  );
  figure.append(tools);
  canvas.addEventListener('keydown', (event) => {
    const act = KEYS[event.key];
    if (!act) return;
    event.preventDefault();
    view(act);
  });
  if (chart.samples) {
    const scale = drawn.scales.x;
    if (scale) void fetchSamples(chart, drawn, scale.min, scale.max);
  }
  matchMedia('(prefers-color-scheme: dark)').addEventListener('change', () => {
    drawn.destroy();
    drawn = draw();
  });
  addEventListener('beforeprint', () => drawn.resize());
  addEventListener('afterprint', () => drawn.resize());
}

const KEYS: Record<string, ((drawn: Drawn) => void) | undefined> = {
  ArrowLeft: (one) => one.pan({ x: 80 }),
  ArrowRight: (one) => one.pan({ x: -80 }),
  '+': (one) => one.zoom(1.3),
  '=': (one) => one.zoom(1.3),
  '-': (one) => one.zoom(1 / 1.3),
  '0': (one) => one.resetZoom(),
};

async function fetchSamples(chart: Chart, drawn: Drawn, from: number, to: number): Promise<void> {
  if (!chart.samples) return;
  const address = new URL(chart.samples, location.href);
  address.searchParams.set('from', String(from));
  address.searchParams.set('to', String(to));
  address.searchParams.set('width', String(Math.max(50, Math.round(drawn.chartArea.width))));
  const answer = await fetch(address);
  if (!answer.ok) return;
  const { datasets } = (await answer.json()) as { datasets: Dataset[] };
  chart.datasets = datasets;
  replaceSamples(drawn, datasets);
}

function button(text: string, act: () => void): HTMLButtonElement {
  const made = document.createElement('button');
  made.type = 'button';
  made.textContent = text;
  made.addEventListener('click', act);
  return made;
}

function savePicture(drawn: Drawn, title: string): void {
  const { canvas } = drawn;
  const sheet = document.createElement('canvas');
  sheet.width = canvas.width;
  sheet.height = canvas.height;
  const pen = sheet.getContext('2d');
  if (!pen) return;
  pen.fillStyle = getComputedStyle(canvas).getPropertyValue('--sheet').trim() || '#ffffff';
  pen.fillRect(0, 0, sheet.width, sheet.height);
  pen.drawImage(canvas, 0, 0);
  sheet.toBlob((blob) => blob && save(blob, `${fileName(title)}.png`));
}

function saveNumbers(chart: Chart): void {
  const unit = (of: { label: string; unit: string }) => (of.unit === '' ? of.label : `${of.label} (${of.unit})`);
  const lines = [['what', unit(chart.x), 'value', 'U95', 'unit'].map(quoted).join(',')];
  for (const one of chart.datasets) {
    const axis = one.axis === 'right' && chart.right ? chart.right : chart.left;
    one.x.forEach((x, i) => {
      lines.push([quoted(one.label), x, one.y[i] ?? '', one.half?.[i] ?? '', quoted(axis.unit)].join(','));
    });
  }
  save(new Blob([`${lines.join('\r\n')}\r\n`], { type: 'text/csv' }), `${fileName(chart.title)}.csv`);
}

/** Text for a CSV cell; one that a spreadsheet would run as a formula gets a mark before it. */
function quoted(text: string): string {
  return `"${text.replace(/^([=+\-@\t\r])/, "'$1").replaceAll('"', '""')}"`;
}

function fileName(title: string): string {
  return (
    title
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, '-')
      .replace(/^-|-$/g, '') || 'chart'
  );
}

function save(blob: Blob, name: string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(blob);
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 1000);
}
