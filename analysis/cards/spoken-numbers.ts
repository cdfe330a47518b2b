/** Numbers that stand in the words of a step, each with its unit, made numbers of the card: `30 min`, `5, 10, then 20 deg`. */
import type { Line, Token } from './line.ts';

const UNITS = 'kt/s|°C/min|deg|min|rpm|kt|ft|m|s|h|g|V|A|L|%|°C|°F';
const LIST = String.raw`\d+(?:\.\d+)?(?:(?:, then |, | then | or | to | and |[-–])\d+(?:\.\d+)?)*`;
const SPOKEN = new RegExp(String.raw`(?<![\w.])(${LIST}) (${UNITS})(?![\w/])`, 'g');

/**
 * A line with its spoken numbers set apart.
 * @param line tokens, list
 * @returns the same words, numbers with units as number tokens
 */
export function spokenNumbers(line: Line): Line {
  return line.flatMap((token): Token[] => {
    if (token.kind !== 'text') return [token];
    const parts: Token[] = [];
    let from = 0;
    for (const found of token.text.matchAll(SPOKEN)) {
      const [whole, number = '', unit = ''] = found;
      if (found.index > from) parts.push({ kind: 'text', text: token.text.slice(from, found.index) });
      parts.push({ kind: 'number', number, unit, estimated: false });
      from = found.index + whole.length;
    }
    if (from < token.text.length) parts.push({ kind: 'text', text: token.text.slice(from) });
    return parts;
  });
}
