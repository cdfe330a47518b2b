/** The legend as buttons: read out, reached by keyboard, each showing or hiding its line. */
import type { Chart } from '../charts/chart.ts';
import { inksOf } from './chart-inks.ts';
import { type Drawn, strokeOf } from './mount-chart.ts';

const SVG = 'http://www.w3.org/2000/svg';

/** The points as the drawing has them, so that a mark is found again without its colour. */
const POINTS: Record<ReturnType<typeof strokeOf>['point'], string> = {
  circle: 'M14 7a5 5 0 1 0 10 0a5 5 0 1 0 -10 0Z',
  rect: 'M14.5 2.5h9v9h-9Z',
  triangle: 'M19 2L24 11.5H14Z',
  rectRot: 'M19 1.5L24.5 7L19 12.5L13.5 7Z',
  crossRot: 'M15 3L23 11M23 3L15 11',
};

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
  const mark = document.createElementNS(SVG, 'path');
  mark.setAttribute('d', one.draw === 'points' ? POINTS[stroke.point] : 'M1 7H37');
  mark.setAttribute('fill', 'none');
  mark.setAttribute('stroke', ink);
  mark.setAttribute('stroke-width', '2.5');
  mark.setAttribute('stroke-dasharray', one.draw === 'points' ? '' : stroke.dash.join(' '));
  drawing.append(mark);
  return drawing;
}
