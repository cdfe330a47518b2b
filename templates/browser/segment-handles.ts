/**
 * The two edges of each segment as things one can drag, or move with the arrow keys. They write into the number fields
 * of the form below the chart, which work without script too, and the form is what is sent.
 */
import type { Chart } from '../charts/chart.ts';
import { clockInWords } from '../words/time.ts';
import type { Drawn } from './mount-chart.ts';

type End = 'from' | 'to';

interface Handle {
  element: HTMLElement;
  field: HTMLInputElement;
  span: Chart['spans'][number];
  end: End;
}

/**
 * Handles for the editable spans of a chart.
 * @param figure the chart's figure; its form is named by data-form
 * @param chart the description; its spans follow the fields
 * @returns place, to be called after each drawing
 */
export function segmentHandles(figure: HTMLElement, chart: Chart): { place(drawn: Drawn): void } {
  const box = figure.querySelector<HTMLElement>('.chart');
  const form = document.getElementById('segments-form');
  if (!box || !(form instanceof HTMLFormElement)) return { place: () => {} };
  let live: Drawn | undefined;

  const redraw = (handle: Handle) => {
    const annotations = live?.options.plugins?.annotation?.annotations;
    const boxes = Array.isArray(annotations) ? annotations : [];
    const drawnBox = boxes.find((one) => one.id === `span-${handle.span.edits}`);
    if (drawnBox?.type === 'box') {
      drawnBox.xMin = handle.span.from;
      drawnBox.xMax = handle.span.to;
    }
    live?.update('none');
  };
  const move = (handle: Handle, seconds: number) => {
    const { span, end } = handle;
    const limited = end === 'from' ? Math.min(seconds, span.to - 1) : Math.max(seconds, span.from + 1);
    span[end] = Math.max(0, Math.round(limited * 10) / 10);
    handle.field.value = String(span[end]);
    handle.field.dispatchEvent(new Event('input', { bubbles: true }));
    say(handle);
    redraw(handle);
  };

  const handles: Handle[] = chart.spans.flatMap((span) =>
    (['from', 'to'] as const).flatMap((end) => {
      const field = form.elements.namedItem(`segments.${span.edits}.${end}Seconds`);
      if (span.edits === undefined || !(field instanceof HTMLInputElement)) return [];
      const handle: Handle = { element: document.createElement('div'), field, span, end };
      listen(handle, box, move, () => live);
      field.addEventListener('change', () => {
        const seconds = Number(field.value);
        if (Number.isFinite(seconds)) {
          span[end] = seconds;
          say(handle);
          redraw(handle);
        }
      });
      box.append(handle.element);
      return [handle];
    }),
  );

  return {
    place: (drawn) => {
      live = drawn;
      const scale = drawn.scales.x;
      if (!scale) return;
      const { left, top, bottom } = drawn.chartArea;
      const inset = drawn.canvas.offsetLeft;
      for (const { element, span, end } of handles) {
        const x = scale.getPixelForValue(span[end]);
        element.hidden = x < left - 1 || x > drawn.chartArea.right + 1;
        element.style.left = `${x + inset}px`;
        element.style.top = `${top + drawn.canvas.offsetTop}px`;
        element.style.height = `${bottom - top}px`;
      }
    },
  };
}

function listen(
  handle: Handle,
  box: HTMLElement,
  move: (handle: Handle, seconds: number) => void,
  drawing: () => Drawn | undefined,
): void {
  const { element } = handle;
  element.className = 'segment-end';
  element.tabIndex = 0;
  element.setAttribute('role', 'slider');
  element.setAttribute('aria-orientation', 'horizontal');
  element.setAttribute('aria-label', `${handle.span.label}: ${handle.end === 'from' ? 'start' : 'end'}`);
  say(handle);
  element.addEventListener('pointerdown', (event) => {
    event.preventDefault();
    element.setPointerCapture(event.pointerId);
    element.focus();
  });
  element.addEventListener('pointermove', (event) => {
    const drawn = drawing();
    const scale = drawn?.scales.x;
    if (!drawn || !scale || !element.hasPointerCapture(event.pointerId)) return;
    const x = event.clientX - box.getBoundingClientRect().left - box.clientLeft - drawn.canvas.offsetLeft;
    const seconds = scale.getValueForPixel(x);
    if (seconds !== undefined) move(handle, Math.round(seconds));
  });
  element.addEventListener('keydown', (event) => {
    const step = { ArrowLeft: -1, ArrowDown: -1, ArrowRight: 1, ArrowUp: 1 }[event.key];
    if (step === undefined) return;
    event.preventDefault();
    move(handle, handle.span[handle.end] + step * (event.shiftKey ? 10 : 1));
  });
}

function say({ element, span, end }: Handle): void {
  element.setAttribute('aria-valuenow', String(span[end]));
  element.setAttribute('aria-valuemin', String(end === 'from' ? 0 : span.from));
  element.setAttribute('aria-valuetext', clockInWords(span[end]));
}
