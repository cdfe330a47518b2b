/** Units held against what the other columns say: open ones settled, stated ones confirmed or doubted. */
import { unitOf, unitsOf } from '../../units/index.ts';
import { fileColumns } from '../relations/file-columns.ts';
import type { ScaledColumn, ScaleEvidence } from '../relations/scale-evidence.ts';
import { weighUnits } from '../relations/weigh-units.ts';
import type { UnitChoice } from './choose-unit.ts';
import type { FileContext } from './file-context.ts';
import type { Draft } from './recognise.ts';

/** Confidence of a unit that other columns measured. */
const MEASURED = 0.85;
/** A unit taken from the family of a column is a weaker claim than one a relation measured. */
const WEAK = 0.75;

/**
 * Settle the units of all columns.
 * @param drafts columns on their way; their choices are changed
 * @param t seconds of the rows, s
 * @param context what the columns tell together, object
 */
export function settleUnits(drafts: readonly Draft[], t: Float64Array, context: FileContext): void {
  // Twice: a unit settled in the first pass is a reference in the second.
  for (let pass = 0; pass < 2; pass += 1) {
    const columns = drafts.flatMap((draft, place): ScaledColumn[] => {
      const { quantity, numbers, choice, header } = draft;
      if (!quantity || !numbers || !choice) return [];
      return [{ place, column: header.column, quantity: quantity.name, numbers, unit: choice.unit }];
    });
    const evidence = weighUnits(fileColumns(columns), t);
    let changed = false;
    drafts.forEach((draft, place) => {
      const { choice, quantity } = draft;
      if (!choice || !quantity || draft.confirmed || choice.doubt !== null) return;
      const about = evidence.filter((one) => one.place === place);
      if (about.length === 0) return;
      const settled = settle(choice, quantity.dimension, quantity.tradeUnits, about);
      if (settled === choice) return;
      draft.choice = settled;
      changed = true;
    });
    if (!changed) break;
  }
  if (context.satelliteOnly) heightOfReceiver(drafts);
}

/** A receiver that gives metres a second gives metres: it writes what it computes (common practice, no source). */
function heightOfReceiver(drafts: readonly Draft[]): void {
  const of = (name: string) => drafts.find((one) => one.quantity?.name === name);
  const [height, speed] = [of('gps-altitude'), of('ground-speed')];
  if (!height?.choice || height.choice.unit !== null || height.choice.doubt !== null) return;
  if (speed?.choice?.unit !== 'm/s' || !height.choice.candidates.includes('m')) return;
  const why = `no unit is stated; "${speed.header.column}" is in m/s, and a receiver that gives those gives metres`;
  height.choice = { ...height.choice, unit: 'm', confidence: 0.68, why, candidates: ['m', 'ft'] };
}

function settle(
  choice: UnitChoice,
  dimension: Parameters<typeof unitsOf>[0],
  tradeUnits: readonly string[],
  about: readonly ScaleEvidence[],
): UnitChoice {
  const agrees = (unit: string) =>
    about.every((one) => Math.abs(Math.log(one.factor / unitOf(unit).factor)) <= Math.log(1 + one.tolerance));
  const by = about.map((one) => one.by).join(' and ');
  const known = choice.unit;
  if (known !== null && agrees(known)) {
    return choice.stated || choice.confidence >= MEASURED
      ? choice
      : { ...choice, confidence: MEASURED, why: `${choice.why}; ${by} agrees` };
  }
  const usual = tradeUnits.filter(agrees);
  const possible =
    usual.length > 0
      ? usual
      : unitsOf(dimension)
          .map((unit) => unit.id)
          .filter(agrees);
  const [only, second] = possible;
  if (known === null || (!choice.stated && choice.confidence < WEAK)) {
    if (only !== undefined && second === undefined) {
      return {
        ...choice,
        unit: only,
        confidence: MEASURED,
        why: `no unit is stated; ${by} makes it ${only}`,
        candidates: [only],
      };
    }
    if (known === null) {
      const left = possible.filter((unit) => choice.candidates.includes(unit));
      return left.length > 0 && left.length < choice.candidates.length
        ? { ...choice, candidates: left, why: `no unit is stated, and ${by} leaves ${left.join(' or ')}` }
        : choice;
    }
  }
  if (only === undefined) return choice;
  return {
    ...choice,
    unit: null,
    confidence: 0.4,
    doubt: 'contradictory',
    why: `the unit ${unitOf(known).symbol} is ${choice.stated ? 'stated' : 'guessed'}, but ${by} makes it ${possible.join(' or ')}`,
    candidates: [known, ...possible.filter((unit) => unit !== known)],
  };
}
