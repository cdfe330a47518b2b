/** SI inside: a conversion factor stands in analysis/units and nowhere else. */
import { describe, expect, it } from 'vitest';
import { codeOf, filesUnder } from './source-files.ts';

// knot, foot, ice point, inch of mercury, pound, gallon, nautical mile, hour-knot products, degree, psi, horsepower
const STRAY =
  /\b0?\.51444?\d*|\b1\.94384\d*|\b0?\.3048\d*|\b3\.28084?\d*|\b273\.15\b|\b459\.67\b|\b33\.8638\d*|\b3386\.\d+|\b0?\.4535\d*|\b2\.2046\d*|\b3\.7854\d*|\b1852\b|\b1609\.34\d*|\b6894\.7\d*|\b745\.[67]\d*|\b57\.29\d*|\b0?\.01745\d*|\bMath\.PI\s*\/\s*180\b|\b180\s*\/\s*Math\.PI\b|\b101\.269\b|\*\s*9\s*\/\s*5\b|\*\s*5\s*\/\s*9\b/;

describe('unit factors', () => {
  it('stand only in analysis/units', () => {
    const wrong: string[] = [];
    for (const path of ['analysis', 'templates', 'server', 'sample-tests'].flatMap((folder) => filesUnder(folder))) {
      if (path.startsWith('analysis/units/')) continue;
      codeOf(path)
        .split('\n')
        .forEach((line, i) => {
          if (STRAY.test(line)) wrong.push(`${path}:${i + 1} ${line.trim()}`);
        });
    }
    expect(wrong).toEqual([]);
  });
});
