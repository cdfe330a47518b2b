/**
 * Where the tests of a program stand in its drawing: stages as bands from top to bottom, a gate as a bar between two, in
 * a band its layers, in a layer as many rows as the width asks. The drawing has one width, made for a tablet; it grows
 * downward, so that nothing is scrolled sideways and paper takes it as it is. A layout library would set the layers side
 * by side without end: bands, bars and folded rows are what this program needs.
 */
import { fitText, linesIn, pointsToMm, textWidth } from '../../analysis/cards/index.ts';

/** One test as it is drawn: with its title, or as its number alone. */
export interface GraphItem {
  id: string;
  title: string;
  titled: boolean;
  /** place in the program */
  position: number;
}

export interface GraphBand {
  id: string;
  title: string;
  /** layers of tests; those next to each other that show no title are folded into one run of numbers */
  layers: readonly (readonly GraphItem[])[];
  /** words of the gate above it, or empty */
  gate: string;
}

export interface Box {
  left: number;
  top: number;
  width: number;
  height: number;
  /** lines of its title; none where it is drawn as a number */
  lines: string[];
}

export interface PlacedBand {
  id: string;
  /** y of the gate's bar, or null */
  bar: number | null;
  top: number;
  height: number;
  /** true where its layers are drawn */
  open: boolean;
}

export interface GraphLayout {
  width: number;
  height: number;
  boxes: ReadonlyMap<string, Box>;
  bands: PlacedBand[];
  /** y at which the drawing can be parted without cutting a box, first and last edge included */
  cuts: number[];
}

/** Drawing units: CSS pixels on a tablet. */
export const GRAPH = {
  width: 760,
  margin: 10,
  touch: 44,
  gap: 8,
  header: 44,
  bar: 48,
  band: 16,
  between: 26,
  titled: 240,
  textLeft: 46,
  line: 17,
  /** letter height of a title, px */
  letters: 14,
} as const;

/** A px is three quarters of a point; texts are measured in points and mm. */
const PX = 0.75;
const POINTS = GRAPH.letters * PX;
const TEXT_MM = pointsToMm((GRAPH.titled - GRAPH.textLeft - 8) * PX);
const MOST_LINES = 3;

/**
 * Place every test.
 * @param bands stages in order, list
 * @returns boxes by test id, bands and the whole size, px
 */
export function layOutGraph(bands: readonly GraphBand[]): GraphLayout {
  const boxes = new Map<string, Box>();
  const placed: PlacedBand[] = [];
  const cuts: number[] = [];
  let y = 0;
  for (const band of bands) {
    cuts.push(y);
    const bar = band.gate === '' ? null : y + GRAPH.bar / 2;
    if (bar !== null) y += GRAPH.bar;
    const top = y;
    y += GRAPH.header;
    const open = band.layers.flat().some((item) => item.titled);
    for (const [i, layer] of folded(band.layers).entries()) {
      if (i > 0) y += GRAPH.between;
      y = placeRows(layer, y, boxes, cuts, i === 0);
    }
    y += GRAPH.band;
    placed.push({ id: band.id, bar, top, height: y - top, open });
    y += GRAPH.gap;
  }
  return { width: GRAPH.width, height: y, boxes, bands: placed, cuts: [...cuts, y] };
}

/** Width of a text at a letter height, px. */
export function widthOf(text: string, letters: number): number {
  return textWidth(text, letters) / pointsToMm(1);
}

/** Layers without a title put together, in the order of the program. */
function folded(layers: GraphBand['layers']): GraphItem[][] {
  const rows: GraphItem[][] = [];
  let numbers: GraphItem[] | null = null;
  for (const layer of layers) {
    if (layer.some((item) => item.titled)) {
      rows.push([...layer]);
      numbers = null;
    } else if (numbers) numbers.push(...layer);
    else {
      numbers = [...layer];
      rows.push(numbers);
    }
  }
  return rows.map((row) =>
    row.some((item) => item.titled) ? row : row.toSorted((one, other) => one.position - other.position),
  );
}

/** A layer from left to right, in rows as the width allows, each row in the middle. */
function placeRows(
  items: readonly GraphItem[],
  from: number,
  boxes: Map<string, Box>,
  cuts: number[],
  isFirst: boolean,
): number {
  // a band's heading stays with its first row
  if (!isFirst) cuts.push(from - GRAPH.between / 2);
  let top = from;
  for (const [i, row] of rowsOf(items).entries()) {
    if (i > 0) {
      cuts.push(top + GRAPH.gap / 2);
      top += GRAPH.gap;
    }
    let left = (GRAPH.width - widthOfRow(row)) / 2;
    for (const { id, width, height, lines } of row) {
      boxes.set(id, { left, top, width, height, lines });
      left += width + GRAPH.gap;
    }
    top += Math.max(...row.map((one) => one.height));
  }
  return top;
}

interface Sized {
  id: string;
  width: number;
  height: number;
  lines: string[];
}

function rowsOf(items: readonly GraphItem[]): Sized[][] {
  const rows: Sized[][] = [];
  let row: Sized[] = [];
  for (const { id, title, titled } of items) {
    const lines = titled ? linesOf(title) : [];
    const height = Math.max(GRAPH.touch, lines.length * GRAPH.line + 12);
    const one = { id, width: titled ? GRAPH.titled : GRAPH.touch, height, lines };
    if (row.length > 0 && widthOfRow([...row, one]) > GRAPH.width - 2 * GRAPH.margin) {
      rows.push(row);
      row = [];
    }
    row.push(one);
  }
  return row.length > 0 ? [...rows, row] : rows;
}

function widthOfRow(row: readonly Sized[]): number {
  return row.reduce((sum, one) => sum + one.width, 0) + (row.length - 1) * GRAPH.gap;
}

/** A title on as many lines as it needs, cut at the last. */
function linesOf(title: string): string[] {
  const whole = fitText(title, POINTS, TEXT_MM, MOST_LINES);
  const lines: string[] = [];
  let line = '';
  for (const word of whole.split(' ')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (line !== '' && linesIn([{ kind: 'text', text: longer }], { words: POINTS, numbers: POINTS }, TEXT_MM) > 1) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  return [...lines, line];
}
