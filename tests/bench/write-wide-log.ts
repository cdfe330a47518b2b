/** A wide log as recorders write them, for the bench: date and clock, 38 channels that wander, fixed decimals. */
import { closeSync, openSync, writeSync } from 'node:fs';

interface Channel {
  name: string;
  unit: string;
  decimals: number;
  middle: number;
  swing: number;
}

const c = (name: string, unit: string, decimals: number, middle: number, swing: number): Channel => ({
  name,
  unit,
  decimals,
  middle,
  swing,
});

const CHANNELS: readonly Channel[] = [
  c('IAS', 'kt', 0, 95, 25),
  c('PALT', 'ft', 0, 3500, 1500),
  c('OAT', 'degC', 1, 12, 6),
  c('GPSALT', 'ft', 0, 3500, 1500),
  c('GS', 'kt', 1, 105, 30),
  c('HDG', 'deg mag', 0, 180, 170),
  c('PITCH', 'deg', 1, 2, 5),
  c('ROLL', 'deg', 0, 0, 15),
  c('NZ', 'g', 1, 1, 0.2),
  c('RPM', 'rpm', 0, 2400, 200),
  c('MAP', 'inHg', 1, 23, 3),
  c('FF', 'gal/h', 1, 9, 3),
  c('OIL T', 'degF', 0, 195, 15),
  c('OIL P', 'psi', 0, 58, 5),
  c('COOL T', 'degC', 0, 92, 8),
  c('BUS', 'V', 1, 13.9, 0.2),
  c('AMP', 'A', 0, 12, 4),
  ...[1, 2, 3, 4].map((k) => c(`CHT${k}`, 'degF', 0, 370, 40)),
  ...[1, 2, 3, 4].map((k) => c(`EGT${k}`, 'degF', 0, 1400, 100)),
  c('FUEL L', 'gal', 0, 14, 6),
  c('FUEL R', 'gal', 0, 14, 6),
  c('FLAP', 'deg', 0, 0, 0),
  c('TRIM', '%', 0, 50, 8),
  c('FAN', 'none', 0, 0, 0),
  c('AUX1', 'V', 1, 2.5, 1.2),
  c('AUX2', 'V', 1, 2.5, 1.2),
  ...[1, 2, 3, 4, 5, 6].map((k) => c(`AUX STATE ${k}`, 'none', 0, k, 0)),
];

const pad = (n: number) => String(Math.floor(n)).padStart(2, '0');

/** Columns of the file, the two of the clock among them. */
export const WIDE_COLUMNS = CHANNELS.length + 2;

/**
 * @param path where to
 * @param rows five a second
 */
export function writeWideLog(path: string, rows: number): void {
  const file = openSync(path, 'w');
  let seed = 1;
  const random = () => {
    seed = (Math.imul(seed, 1_103_515_245) + 12_345) >>> 0;
    return seed / 4_294_967_296;
  };
  writeSync(
    file,
    `DATE,UTC,${CHANNELS.map(({ name, unit }) => (unit === 'none' ? name : `${name} (${unit})`)).join(',')}\n`,
  );
  let block = '';
  for (let row = 0; row < rows; row += 1) {
    const t = row * 0.2;
    const day = Math.floor(t / 86_400);
    const s = t - day * 86_400;
    block += `2031-05-${pad(4 + day)},${pad(s / 3600)}:${pad((s / 60) % 60)}:${(s % 60).toFixed(1).padStart(4, '0')}`;
    for (let k = 0; k < CHANNELS.length; k += 1) {
      const one = CHANNELS[k];
      if (!one) continue;
      const wander = 0.9 * Math.sin(t / (300 + 40 * k) + k) + 0.03 * (random() + random() - 1);
      block += `,${(one.middle + one.swing * wander).toFixed(one.decimals)}`;
    }
    block += '\n';
    if (block.length > 1 << 20) {
      writeSync(file, block);
      block = '';
    }
  }
  writeSync(file, block);
  closeSync(file);
}
