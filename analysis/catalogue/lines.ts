/**
 * A test made ready for one airplane: lines that apply, pieces that apply, references answered in the units of its
 * instruments. What is missing is listed and printed as a blank; nothing is invented.
 */
import type { Airplane } from '../airplane/index.ts';
import { CITATIONS } from './citations.ts';
import { factsFor, holds } from './condition-words.ts';
import type { Known } from './derived.ts';
import { type Measure, shows } from './measures.ts';
import { type At, type PreparedLine, prepare, preparedLine, sentences, tidy } from './prepare-line.ts';
import { quantityFits } from './reading-fits.ts';
import type { MissingNumber } from './reference.ts';
import type { CatalogueTest, Line, Mark, Text } from './test.ts';

export interface PreparedReading {
  what: string;
  /** glossary name, where there is one */
  quantity: string | null;
  /** printed in the column head: unit with its scale, or what is written */
  unit: string;
  /** unit id of analysis/units; null where words are written */
  unitId: string | null;
  measure: Measure | null;
  at: string;
}

export interface PreparedTest {
  id: string;
  title: string;
  purpose: string;
  conditions: { what: string; line: PreparedLine }[];
  setup: PreparedLine[];
  steps: PreparedLine[];
  after: PreparedLine[];
  readings: PreparedReading[];
  /** quantities worth logging; 'all' for every one recorded */
  channels: string[];
  pass: { line: PreparedLine; source: string; mark: Mark }[];
  stop: PreparedLine[];
  action: PreparedLine[];
  hazards: { hazard: PreparedLine; mitigation: PreparedLine }[];
  sources: { says: string; mark: Mark }[];
  /** numbers without which the card cannot be flown */
  missing: MissingNumber[];
}

/**
 * A test made ready for an airplane.
 * @param test the test, object
 * @param airplane the description, object
 * @param known accepted results so far, object
 * @returns its lines, readings, sources and what is missing
 */
export function linesFor(test: CatalogueTest, airplane: Airplane, known: Known = {}): PreparedTest {
  const facts = factsFor(airplane);
  const at = { airplane, known, facts };
  const prepared = (text: Text) => prepare(text, at, false);
  const list = (lines: readonly Line[], stop = false) => lines.flatMap((line) => preparedLine(line, at, stop));
  const fits = <T extends { when?: CatalogueTest['applies'] }>(one: T) => holds(one.when, facts);

  const conditions = Object.entries(test.conditions).flatMap(([what, text]) =>
    text === undefined ? [] : [{ what, line: prepared(text) }],
  );
  const ready: Omit<PreparedTest, 'missing'> = {
    id: test.id,
    title: tidy(prepared(test.title).text),
    purpose: tidy(prepared(test.purpose).text),
    conditions,
    setup: sentences(list(test.setup)),
    steps: sentences(list(test.steps)),
    after: sentences(list(test.after)),
    readings: readingsFor(test, at),
    channels: test.channels.filter((name) => holds(quantityFits(name), facts)),
    pass: test.pass.filter(fits).map((one) => ({ line: prepared(one.text), ...cited(one.source) })),
    stop: list(test.stop, true),
    action: list(test.action),
    hazards: test.hazards
      .filter(fits)
      .map((one) => ({ hazard: prepared(one.hazard), mitigation: prepared(one.mitigation) })),
    sources: test.sources.map((source) => {
      const { source: says, mark } = cited(source);
      return { says, mark };
    }),
  };
  return { ...ready, missing: missingIn(ready) };
}

/**
 * A text of the catalogue as plain words for an airplane.
 * @param text text with its pieces and references
 * @param airplane the description, object
 * @returns the words
 */
export function wordsFor(text: Text, airplane: Airplane): string {
  return tidy(prepare(text, { airplane, known: {}, facts: factsFor(airplane) }, false).text);
}

function readingsFor(test: CatalogueTest, at: At): PreparedReading[] {
  return test.readings
    .filter((one) => holds(one.when, at.facts))
    .filter((one) => one.quantity === undefined || holds(quantityFits(one.quantity), at.facts))
    .map((one) => {
      const show = one.measure ? shows(one.measure, at.airplane) : null;
      return {
        what: prepare(one.what, at, false).text,
        quantity: one.quantity ?? null,
        unit: show ? show.symbol : (one.unit ?? ''),
        unitId: show ? show.unit : null,
        measure: one.measure ?? null,
        at: one.at,
      };
    });
}

function cited(source: CatalogueTest['pass'][number]['source']): { source: string; mark: Mark } {
  if (typeof source !== 'string') return { source: source.says, mark: source.mark };
  const citation = Object.entries(CITATIONS).find(([key]) => key === source)?.[1];
  return citation ? { source: citation.says, mark: citation.mark } : { source, mark: 'practice' };
}

function missingIn(ready: Omit<PreparedTest, 'missing'>): MissingNumber[] {
  const lines = [
    ...ready.conditions.map((one) => one.line),
    ...ready.setup,
    ...ready.steps,
    ...ready.after,
    ...ready.pass.map((one) => one.line),
    ...ready.stop,
    ...ready.action,
    ...ready.hazards.flatMap((one) => [one.hazard, one.mitigation]),
  ];
  const byPath = new Map<string, MissingNumber>();
  for (const piece of lines.flatMap((line) => line.pieces)) {
    if (piece.kind === 'missing') byPath.set(piece.path, { path: piece.path, meaning: piece.meaning });
  }
  return [...byPath.values()];
}
