/** The lines of the drawing: which are drawn, how heavy, and the way they take. */
import type { Chain, ProgramGraph, ProgramTest } from '../../analysis/program/index.ts';
import type { Box, GraphLayout } from './graph-layout.ts';

export const LINE_KINDS = ['plain', 'before', 'after', 'needed', 'unlocked'] as const;
export type LineKind = (typeof LINE_KINDS)[number];

export interface GraphChoice {
  /** tests drawn with their titles */
  titled: ReadonlySet<string>;
  chosen: string | null;
  /** what leads to the chosen one and what it leads to */
  chain: Chain | null;
  stateOf(test: string): string;
  hrefOf(test: string): string;
  stageHref(stage: string): string;
  gateHref(gate: string): string;
}

export interface GraphLine {
  kind: LineKind;
  path: string;
  tip: string;
  top: number;
  bottom: number;
}

/**
 * Lines: those of tests with titles inside their band, and those of the chosen test wherever they lead. The rest is told
 * by the edges of the boxes, lest the drawing be grown over. The heaviest come last, over the others.
 */
export function linesOf(
  graph: ProgramGraph,
  layout: GraphLayout,
  choice: GraphChoice,
  tests: ReadonlyMap<string, ProgramTest>,
): GraphLine[] {
  const found = [...graph.needs].flatMap(([to, needs]) =>
    needs.flatMap((from): GraphLine[] => {
      const [upper, lower] = [layout.boxes.get(from), layout.boxes.get(to)];
      if (!upper || !lower) return [];
      const kind = lineKind(from, to, choice);
      const isInside = tests.get(from)?.stage === tests.get(to)?.stage;
      const isShown = isInside && (choice.titled.has(from) || choice.titled.has(to));
      if (!isShown && kind !== 'needed' && kind !== 'unlocked') return [];
      return [{ kind, ...curve(upper, lower) }];
    }),
  );
  const weight = { plain: 0, before: 1, after: 1, needed: 2, unlocked: 2 };
  return found.sort((a, b) => weight[a.kind] - weight[b.kind]);
}

function lineKind(from: string, to: string, { chosen, chain }: GraphChoice): LineKind {
  if (!chain) return 'plain';
  if (to === chosen) return 'needed';
  if (from === chosen) return 'unlocked';
  if (chain.before.has(from) && chain.before.has(to)) return 'before';
  return chain.after.has(from) && chain.after.has(to) ? 'after' : 'plain';
}

function curve(upper: Box, lower: Box): { path: string; tip: string; top: number; bottom: number } {
  const [x1, y1] = [upper.left + upper.width / 2, upper.top + upper.height];
  const [x2, y2] = [lower.left + lower.width / 2, lower.top];
  const bend = Math.max(14, Math.min(90, Math.abs(y2 - y1) / 2));
  const at = (x: number, y: number) => `${show(x)} ${show(y)}`;
  return {
    path: `M${at(x1, y1)}C${at(x1, y1 + bend)} ${at(x2, y2 - bend)} ${at(x2, y2)}`,
    tip: `M${at(x2 - 4, y2 - 8)}h8L${at(x2, y2 - 1)}z`,
    top: Math.min(y1, y2) - bend,
    bottom: Math.max(y1, y2) + bend,
  };
}

/** A length as the drawing writes it. */
export function show(value: number): string {
  return String(Number(value.toFixed(1)));
}
