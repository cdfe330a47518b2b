/** A name that fits several quantities, settled by what else the file holds; what stays open is asked. */
import type { FileContext } from './file-context.ts';
import type { NameMatch } from './match-name.ts';

/** In a file of satellite positions and nothing else, these words can mean one thing only. */
const FROM_SATELLITES = ['gps-altitude', 'ground-speed', 'track-true'];

/**
 * Settle the open names of a file.
 * @param matches what the names say, one a column
 * @param context what the columns tell together, object
 * @returns the matches, with fewer quantities where the file leaves fewer
 */
export function settleNames(matches: readonly NameMatch[], context: FileContext): NameMatch[] {
  const taken = new Set(
    matches.flatMap(({ quantities, confidence }) => {
      const [only, second] = quantities;
      return only !== undefined && second === undefined && confidence >= 0.6 ? [only] : [];
    }),
  );
  return matches.map((match) => {
    if (context.satelliteOnly) {
      const given = match.quantities.find((one) => FROM_SATELLITES.includes(one));
      if (match.quantities.length > 1 && given !== undefined && !taken.has(given)) {
        const why = `${match.why}; in a file of satellite positions alone it is ${given.replaceAll('-', ' ')}`;
        return { ...match, quantities: [given], confidence: 0.8, why };
      }
      if (match.quantities.some((one) => one === 'battery-current' || one === 'bus-voltage')) {
        const why = `${match.why}, but a recorder of satellite positions alone tells of its own battery`;
        return { ...match, quantities: [], confidence: 0, why };
      }
      if (match.quantities[0] === 'heading-magnetic') {
        // A receiver knows where it moves, not where the nose points.
        const why = `${match.why}, but a recorder of satellite positions has no compass of necessity`;
        return { ...match, quantities: ['track-true', 'heading-magnetic'], confidence: 0.4, why };
      }
    }
    if (match.quantities.length < 2) return settlePump(match, taken);
    const left = match.quantities.filter((one) => !taken.has(one) || isIndexed(one));
    if (left.length === 0) {
      return { ...match, quantities: [], confidence: 0, why: `${match.why}, and the file has those in other columns` };
    }
    return { ...match, quantities: left };
  });
}

/** Of these an airplane has several, so that one more column is no surprise. */
function isIndexed(quantity: string): boolean {
  return [
    'cylinder-head-temperature',
    'exhaust-gas-temperature',
    'fuel-quantity',
    'bus-voltage',
    'bus-current',
  ].includes(quantity);
}

/** The current of a pump: of the gear's where the file tells of the gear, of a fuel pump where it tells of fuel. */
function settlePump(match: NameMatch, taken: ReadonlySet<string>): NameMatch {
  if (match.quantities[0] !== 'gear-current' || match.confidence >= 0.6 || taken.has('gear-current')) return match;
  const has = (...names: string[]) => names.find((one) => taken.has(one))?.replaceAll('-', ' ');
  const ofGear = has('gear-position', 'hydraulic-pressure');
  const ofFuel = has('transfer-valve-state', 'fuel-quantity', 'fuel-flow');
  if (ofGear !== undefined && ofFuel === undefined) {
    return { ...match, confidence: 0.75, why: `${match.why} a pump, and the file holds ${ofGear}: the gear's pump` };
  }
  if (ofFuel !== undefined && ofGear === undefined) {
    const why = `the name speaks of a pump, and the file holds ${ofFuel}: a fuel pump's current, which no reduction uses`;
    return { ...match, quantities: [], confidence: 0, why, otherQuantity: true };
  }
  return match;
}
