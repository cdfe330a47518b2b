/** What stands over and under the data of a chart: limits, segments, and the U95 of each point. */
import type { AnnotationOptions } from 'chartjs-plugin-annotation';
import type { Chart, Limit, Span } from '../charts/chart.ts';
import type { Inks } from './chart-inks.ts';
import type { Drawn } from './mount-chart.ts';

/** A limit with its words. */
export function limitLine(limit: Limit, inks: Inks): AnnotationOptions {
  const across = limit.axis === 'x';
  return {
    type: 'line',
    scaleID: limit.axis,
    value: limit.value,
    borderColor: inks.ink,
    borderWidth: limit.weight === 'limit' ? 2 : 1.5,
    borderDash: limit.weight === 'limit' ? [] : [6, 4],
    label: {
      display: true,
      content: limit.label,
      position: 'end',
      backgroundColor: inks.sheet,
      color: inks.ink,
      font: { size: 13, weight: limit.weight === 'limit' ? 'bold' : 'normal' },
      padding: 3,
      // a limit stands above its line and a caution below, so that close ones don't cover each other
      yAdjust: across ? 0 : limit.weight === 'limit' ? -12 : 12,
    },
  };
}

/** A segment. */
export function spanBox(span: Span, inks: Inks): AnnotationOptions {
  return {
    type: 'box',
    id: `span-${span.edits ?? span.from}`,
    xScaleID: 'x',
    xMin: span.from,
    xMax: span.to,
    backgroundColor: `${inks.accent}17`,
    borderColor: inks.accent,
    borderWidth: 0,
    drawTime: 'beforeDatasetsDraw',
    label: {
      display: span.label !== '',
      content: span.label,
      position: { x: 'center', y: 'start' },
      color: inks.ink,
      font: { size: 13, weight: 'normal' },
      padding: 3,
    },
  };
}

/** U95 as bars through the points: half-widths are part of the number, so they are part of the picture. */
export function drawBars(drawn: Drawn, chart: Chart, inks: Inks): void {
  const { ctx, chartArea, scales } = drawn;
  const xScale = scales.x;
  ctx.save();
  ctx.beginPath();
  ctx.rect(chartArea.left, chartArea.top, chartArea.width, chartArea.height);
  ctx.clip();
  ctx.strokeStyle = inks.ink;
  ctx.lineWidth = 1.5;
  chart.datasets.forEach((one, index) => {
    const yScale = scales[one.axis];
    if (!one.half || !xScale || !yScale || !drawn.isDatasetVisible(index)) return;
    one.half.forEach((half, i) => {
      const [x, y] = [one.x[i], one.y[i]];
      if (half === null || x === undefined || y === undefined || y === null) return;
      const [px, top, bottom] = [
        xScale.getPixelForValue(x),
        yScale.getPixelForValue(y + half),
        yScale.getPixelForValue(y - half),
      ];
      ctx.beginPath();
      ctx.moveTo(px, top);
      ctx.lineTo(px, bottom);
      for (const end of [top, bottom]) {
        ctx.moveTo(px - 5, end);
        ctx.lineTo(px + 5, end);
      }
      ctx.stroke();
    });
  });
  ctx.restore();
}
