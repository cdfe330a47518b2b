/**
 * Certified fits of the NIST Statistical Reference Datasets and worked examples of the Guide and its supplement.
 * Data and certified values recalled from memory; that a fit returns every certified digit is what confirms the recall.
 */
import { describe, expect, it } from 'vitest';
import { fitLine, leastSquares, monteCarlo, seededRandom, valueOnLine } from '../../analysis/numbers/index.ts';
import { OutOfRange } from '../../analysis/remarks/index.ts';

/** Certified to 11 digits; ours must keep 9, which leaves room for differences in place of derivatives. */
const NINE_DIGITS = 1e-9;
/** Standard deviations rest on the Jacobian by differences: 7 digits. */
const SEVEN_DIGITS = 1e-7;

const relative = (got: number | undefined, want: number) => Math.abs(((got ?? Number.NaN) - want) / want);

describe('NIST StRD Norris, linear regression (from memory)', () => {
  const y = [
    0.1, 338.8, 118.1, 888.0, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3, 0.1, 778.1, 668.8, 339.3, 448.9, 10.8,
    557.7, 228.3, 998.0, 888.8, 119.6, 0.3, 0.6, 557.6, 339.3, 888.0, 998.5, 778.9, 10.2, 117.6, 228.9, 668.4, 449.2,
    0.2,
  ];
  const x = [
    0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777.0, 558.2, 0.4, 0.6, 775.5, 666.9, 338.0, 447.5,
    11.6, 556.0, 228.1, 995.8, 887.6, 120.2, 0.3, 0.3, 556.8, 339.1, 887.2, 999.0, 779.0, 11.1, 118.3, 229.2, 669.1,
    448.9, 0.5,
  ];

  it('intercept, slope, their standard deviations and the residual standard deviation', () => {
    const fit = fitLine(x, y);
    expect(relative(fit.intercept, -0.262323073774029)).toBeLessThan(NINE_DIGITS);
    expect(relative(fit.slope, 1.00211681802045)).toBeLessThan(NINE_DIGITS);
    expect(relative(valueOnLine(fit, 0).u, 0.232818234301152)).toBeLessThan(NINE_DIGITS);
    expect(relative(fit.uSlope, 0.000429796848199937)).toBeLessThan(NINE_DIGITS);
    expect(relative(fit.s, 0.884796396144373)).toBeLessThan(NINE_DIGITS);
  });
});

describe('NIST StRD Longley, six terms and a constant, higher difficulty (from memory)', () => {
  const y = [
    60323, 61122, 60171, 61187, 63221, 63639, 64989, 63761, 66019, 67857, 68169, 66513, 68655, 69564, 69331, 70551,
  ];
  const x = [
    [83.0, 88.5, 88.2, 89.5, 96.2, 98.1, 99.0, 100.0, 101.2, 104.6, 108.4, 110.8, 112.6, 114.2, 115.7, 116.9],
    [
      234289, 259426, 258054, 284599, 328975, 346999, 365385, 363112, 397469, 419180, 442769, 444546, 482704, 502601,
      518173, 554894,
    ],
    [2356, 2325, 3682, 3351, 2099, 1932, 1870, 3578, 2904, 2822, 2936, 4681, 3813, 3931, 4806, 4007],
    [1590, 1456, 1616, 1650, 3099, 3594, 3547, 3350, 3048, 2857, 2798, 2637, 2552, 2514, 2572, 2827],
    [
      107608, 108632, 109773, 110929, 112075, 113270, 115094, 116219, 117388, 118734, 120445, 121950, 123366, 125368,
      127852, 130081,
    ],
    Array.from({ length: 16 }, (_, i) => 1947 + i),
  ];
  const parameters = [
    -3482258.63459582, 15.0618722713733, -0.035819179292591, -2.02022980381683, -1.03322686717359, -0.0511041056535807,
    1829.15146461355,
  ];
  const deviations = [
    890420.383607373, 84.9149257747669, 0.0334910077722432, 0.488399681651699, 0.214274163161675, 0.22607320006937,
    455.478499142212,
  ];

  it('coefficients and their standard deviations, centred as the regression of flight cooling is', () => {
    const middle = x.map((column) => column.reduce((sum, one) => sum + one / column.length, 0));
    const rows = y.map((_, i) => [1, ...x.map((column, k) => (column[i] ?? 0) - (middle[k] ?? 0))]);
    const fit = leastSquares({
      start: [66000, 0, 0, 0, 0, 0, 0],
      residuals: (b) => rows.map((row, i) => (y[i] ?? 0) - row.reduce((sum, one, k) => sum + one * (b[k] ?? 0), 0)),
      jacobian: () => rows.map((row) => row.map((one) => -one)),
    });
    const s = Math.sqrt(fit.rss / fit.nu);
    expect(relative(s, 304.854073561965)).toBeLessThan(NINE_DIGITS);
    parameters.slice(1).forEach((certified, k) => {
      expect(relative(fit.parameters[k + 1], certified), `b${k + 1}`).toBeLessThan(SEVEN_DIGITS);
      const deviation = s * Math.sqrt(fit.inverse[k + 1]?.[k + 1] ?? Number.NaN);
      expect(relative(deviation, deviations[k + 1] ?? Number.NaN), `s(b${k + 1})`).toBeLessThan(SEVEN_DIGITS);
    });
    const constant = middle.reduce((sum, one, k) => sum - one * (fit.parameters[k + 1] ?? 0), fit.parameters[0] ?? 0);
    expect(relative(constant, parameters[0] ?? 0)).toBeLessThan(SEVEN_DIGITS);
  });
});

interface Certified {
  name: string;
  x: number[];
  y: number[];
  model: (b: readonly number[], x: number) => number;
  starts: number[][];
  parameters: number[];
  deviations: number[];
  rss: number;
}

const CERTIFIED: Certified[] = [
  {
    name: 'Misra1a, lower difficulty',
    x: [77.6, 114.9, 141.1, 190.8, 239.9, 289.0, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760.0],
    y: [10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.4, 75.47, 81.78],
    model: (b, x) => (b[0] ?? 0) * (1 - Math.exp(-(b[1] ?? 0) * x)),
    starts: [
      [500, 0.0001],
      [250, 0.0005],
    ],
    parameters: [238.94212918, 5.5015643181e-4],
    deviations: [2.7070075241, 7.2668688436e-6],
    rss: 0.12455138894,
  },
  {
    name: 'Rat42, higher difficulty',
    x: [9, 14, 21, 28, 42, 57, 63, 70, 79],
    y: [8.93, 10.8, 18.59, 22.33, 39.35, 56.11, 61.73, 64.62, 67.08],
    model: (b, x) => (b[0] ?? 0) / (1 + Math.exp((b[1] ?? 0) - (b[2] ?? 0) * x)),
    starts: [
      [100, 1, 0.1],
      [75, 2.5, 0.07],
    ],
    parameters: [72.462237576, 2.6180768402, 0.067359200066],
    deviations: [1.7340283401, 0.088295217536, 0.0034465663377],
    rss: 8.0565229338,
  },
  {
    name: 'BoxBOD, higher difficulty',
    x: [1, 2, 3, 5, 7, 10],
    y: [109, 149, 149, 191, 213, 224],
    model: (b, x) => (b[0] ?? 0) * (1 - Math.exp(-(b[1] ?? 0) * x)),
    starts: [[100, 0.75]],
    parameters: [213.80940889, 0.54723748542],
    deviations: [12.354515176, 0.10455993237],
    rss: 1168.0088766,
  },
];

describe.each(CERTIFIED)('NIST StRD $name (from memory)', ({ x, y, model, starts, parameters, deviations, rss }) => {
  it.each(starts.map((start) => [start]))('from the start %j', (start) => {
    const fit = leastSquares({ start, residuals: (b) => x.map((value, i) => model(b, value) - (y[i] ?? 0)) });
    expect(fit.converged).toBe(true);
    expect(relative(fit.rss, rss)).toBeLessThan(NINE_DIGITS);
    const s = Math.sqrt(fit.rss / fit.nu);
    parameters.forEach((want, j) => {
      expect(relative(fit.parameters[j], want)).toBeLessThan(2e-8); // flat valley: rss keeps twice the digits of b
      expect(relative(s * Math.sqrt(fit.inverse[j]?.[j] ?? 0), deviations[j] ?? 0)).toBeLessThan(10 * SEVEN_DIGITS);
    });
  });
});

describe('NIST StRD BoxBOD from its far start (from memory)', () => {
  it('runs out to where the rate no longer matters, and is refused rather than answered wrongly', () => {
    const { x, y, model } = CERTIFIED.find((one) => one.name.startsWith('BoxBOD')) ?? fail();
    const fit = () =>
      leastSquares({ start: [1, 1], residuals: (b) => x.map((value, i) => model(b, value) - (y[i] ?? 0)) });
    expect(fit).toThrow(OutOfRange);
  });
});

function fail(): never {
  throw new Error('no such data set');
}

describe('JCGM 100 (Guide) H.3: calibration of a thermometer, from memory', () => {
  const t = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.01, 26.511];
  const b = [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.16];
  const fit = fitLine(
    t.map((one) => one - 20),
    b,
  );

  it('y1 -0.1712(29), y2 0.00218(67), s 0.0035', () => {
    const atZero = valueOnLine(fit, 0);
    expect(Math.abs(atZero.value - -0.1712)).toBeLessThan(5e-5); // last printed digit
    expect(Math.abs(atZero.u - 0.0029)).toBeLessThan(5e-5);
    expect(Math.abs(fit.slope - 0.00218)).toBeLessThan(5e-6);
    expect(Math.abs(fit.uSlope - 0.00067)).toBeLessThan(5e-6);
    expect(Math.abs(fit.s - 0.0035)).toBeLessThan(5e-5);
  });

  it('correction at 30 degrees -0.1494 with u 0.0041: the correlation is in it', () => {
    const at30 = valueOnLine(fit, 10);
    expect(Math.abs(at30.value - -0.1494)).toBeLessThan(5e-5);
    expect(Math.abs(at30.u - 0.0041)).toBeLessThan(5e-5);
  });
});

describe('JCGM 101 (supplement 1) 9.2: sums of four inputs of unit standard deviation, from memory', () => {
  const sum = (inputs: readonly number[]) => [inputs.reduce((total, one) => total + one, 0)];
  const intervalOf = (draw: () => number) => {
    const [drawn] = monteCarlo(() => [draw(), draw(), draw(), draw()], sum, 100_000);
    return { low: drawn?.low ?? 0, high: drawn?.high ?? 0, u: drawn?.u ?? 0 };
  };

  it('9.2.2 normal inputs: u 2.00, interval -3.92 to 3.92', () => {
    const random = seededRandom('supplement 9.2.2');
    const { low, high, u } = intervalOf(() => random.normal());
    expect(Math.abs(u - 2)).toBeLessThan(0.02); // 4 standard errors of 100 000 draws
    expect(Math.abs(low + 3.92)).toBeLessThan(0.06);
    expect(Math.abs(high - 3.92)).toBeLessThan(0.06);
  });

  it('9.2.3 rectangular inputs: u 2.00, interval -3.88 to 3.88', () => {
    const random = seededRandom('supplement 9.2.3');
    const { low, high, u } = intervalOf(() => Math.sqrt(3) * (2 * random.uniform() - 1));
    expect(Math.abs(u - 2)).toBeLessThan(0.02);
    expect(Math.abs(low + 3.88)).toBeLessThan(0.05);
    expect(Math.abs(high - 3.88)).toBeLessThan(0.05);
  });

  it('9.2.4 one wide rectangular input among three: u 10.1, interval -17.0 to 17.0', () => {
    const random = seededRandom('supplement 9.2.4');
    const unit = () => Math.sqrt(3) * (2 * random.uniform() - 1);
    const [drawn] = monteCarlo(() => [unit(), unit(), unit(), 10 * unit()], sum, 100_000);
    expect(Math.abs((drawn?.u ?? 0) - 10.1)).toBeLessThan(0.1);
    expect(Math.abs((drawn?.high ?? 0) - 17)).toBeLessThan(0.1);
  });
});
