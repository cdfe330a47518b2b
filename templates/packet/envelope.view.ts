/** The loading drawn in its envelope: black lines, the airplane's own units, uncertainty as a box round each point. */
import type { EnvelopeFigure } from '../../analysis/cards/index.ts';

const LEFT = 17;
const RIGHT = 4;
const TOP = 3;
const BOTTOM = 10;
/** half size of a mark, mm */
const MARK = 1.1;
/** share of the span left free round the outermost */
const FREE = 0.08;

interface Text {
  x: string;
  y: string;
  text: string;
  anchor: 'start' | 'middle' | 'end';
  bold: boolean;
}

/**
 * The view of an envelope.
 * @param figure corners and points in the airplane's units, object
 * @param width of the drawing, mm
 * @param height of the drawing, mm
 * @returns view of packet/_envelope
 */
export function envelopeView(figure: EnvelopeFigure, width: number, height: number) {
  const { corners, points, massUnit, armUnit } = figure;
  const arms = [...corners, ...points].map((one) => one.arm);
  const masses = [...corners, ...points].map((one) => one.mass);
  const across = axis(Math.min(...arms), Math.max(...arms), LEFT, width - RIGHT);
  const up = axis(Math.min(...masses), Math.max(...masses), height - BOTTOM, TOP);
  const at = (arm: number, mass: number) => `${mm(across.at(arm))} ${mm(up.at(mass))}`;
  const texts: Text[] = [
    ...across.ticks.map((tick) => text(across.at(tick), height - BOTTOM + 4, label(tick, across.step), 'middle')),
    ...up.ticks.map((tick) => text(LEFT - 1.2, up.at(tick) + 1.1, label(tick, up.step), 'end')),
    text(width - RIGHT, height - 0.8, `arm, ${armUnit}`, 'end'),
    text(1, TOP + 2, massUnit, 'start'),
    ...points.map((point, i) => {
      const x = across.at(point.arm);
      const room = x < width / 2;
      return {
        ...text(
          room ? x + 2.4 : x - 2.4,
          up.at(point.mass) + (i === 0 ? -1.6 : 4.2),
          point.name,
          room ? 'start' : 'end',
        ),
        bold: true,
      };
    }),
  ];
  return {
    template: 'packet/_envelope',
    width: mm(width),
    height: mm(height),
    words: points
      .map((one) => `${one.name} ${label(one.mass, 1)} ${massUnit} at ${one.arm.toFixed(3)} ${armUnit}`)
      .join('; '),
    grid: [
      ...across.ticks.map((tick) => `M${mm(across.at(tick))} ${mm(TOP)}V${mm(height - BOTTOM)}`),
      ...up.ticks.map((tick) => `M${mm(LEFT)} ${mm(up.at(tick))}H${mm(width - RIGHT)}`),
    ].join(''),
    edge: `M${corners.map((corner) => at(corner.arm, corner.mass)).join('L')}Z`,
    points: points.map((point, i) => ({
      doubt: boxPath(
        across.at(point.arm - point.armU95),
        across.at(point.arm + point.armU95),
        up.at(point.mass + point.massU95),
        up.at(point.mass - point.massU95),
      ),
      mark: i === 0 ? 'solid' : 'hollow',
      shape: boxPath(
        across.at(point.arm) - MARK,
        across.at(point.arm) + MARK,
        up.at(point.mass) - MARK,
        up.at(point.mass) + MARK,
      ),
    })),
    texts,
  };
}

/** A linear axis with round ticks. */
function axis(low: number, high: number, from: number, to: number) {
  const span = high - low || Math.abs(high) || 1;
  const [start, end] = [low - FREE * span, high + FREE * span];
  const rough = (end - start) / 5;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map((n) => n * power).find((n) => n >= rough) ?? 10 * power;
  const first = Math.ceil(start / step);
  const last = Math.floor(end / step);
  return {
    step,
    ticks: Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => (first + i) * step),
    at: (value: number) => from + ((value - start) / (end - start)) * (to - from),
  };
}

function text(x: number, y: number, words: string, anchor: Text['anchor']): Text {
  return { x: mm(x), y: mm(y), text: words, anchor, bold: false };
}

function boxPath(left: number, right: number, top: number, bottom: number): string {
  return `M${mm(left)} ${mm(top)}H${mm(right)}V${mm(bottom)}H${mm(left)}Z`;
}

function label(value: number, step: number): string {
  return value.toFixed(Math.max(0, -Math.floor(Math.log10(step) + 1e-9)));
}

function mm(value: number): string {
  return String(Number(value.toFixed(2)));
}
