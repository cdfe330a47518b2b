/** The legend as buttons: read out, reached by keyboard, each showing or hiding its line. */
import type { Chart } from '../charts/chart.ts';
import { inksOf } from './chart-inks.ts';
import { type Drawn, strokeOf } from './mount-chart.ts';

const SVG = 'http://www.w3.org/2000/svg';

/**
 * A legend below a chart; none where there is one line only.
 * @param figure the chart's figure
 * @param chart its description
 * @param drawing the live drawing
 */
export function addLegend(figure: HTMLElement, chart: Chart, drawing: () => Drawn): void {
  if (chart.datasets.length < 2) return;
  const list = document.createElement('ul');
  list.className = 'legend';
  chart.datasets.forEach((one, index) => {
    const button = document.createElement('button');
    button.type = 'button';
    button.setAttribute('aria-pressed', 'true');
    button.append(sample(figure, chart, index), one.label);
    button.addEventListener('click', () => {
      const drawn = drawing();
      const shown = !drawn.isDatasetVisible(index);
      drawn.setDatasetVisibility(index, shown);
      drawn.update('none');
      button.setAttribute('aria-pressed', String(shown));
    });
    const item = document.createElement('li');
    item.append(button);
    list.append(item);
  });
  figure.append(list);
}

function sample(figure: HTMLElement, chart: Chart, index: number): SVGElement {
  const one = chart.datasets[index];
  const drawing = document.createElementNS(SVG, 'svg');
  drawing.setAttribute('viewBox', '0 0 38 14');
  drawing.setAttribute('aria-hidden', 'true');
  if (!one) return drawing;
  const stroke = strokeOf(one, index);
  const ink = inksOf(figure)[stroke.ink];
  const mark = document.createElementNS(SVG, one.draw === 'points' ? 'circle' : 'path');
  if (one.draw === 'points') {
    for (const [name, value] of Object.entries({ cx: '19', cy: '7', r: '5' })) mark.setAttribute(name, value);
  } else mark.setAttribute('d', 'M1 7H37');
  mark.setAttribute('fill', 'none');
  mark.setAttribute('stroke', ink);
  mark.setAttribute('stroke-width', '2.5');
  mark.setAttribute('stroke-dasharray', one.draw === 'points' ? '' : stroke.dash.join(' '));
  drawing.append(mark);
  return drawing;
}
