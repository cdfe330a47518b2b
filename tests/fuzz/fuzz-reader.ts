/** Structured mutations of good files: no crash, no hang, and a refusal says why. */
import process from 'node:process';
import { readLogBytes } from '../../analysis/logs/index.ts';
import { seededRandom } from '../../analysis/numbers/index.ts';

const ROWS = 40;
const good = `Time (s),RPM,Coolant Temp (degC),Oil Temp (degC)\n${Array.from({ length: ROWS }, (_, i) => `${i},2500,${(88 + i / 10).toFixed(1)},${(80 + i / 20).toFixed(2)}`).join('\n')}\n`;
const bytes = new TextEncoder().encode(good);

export interface FuzzCount {
  tried: number;
  accepted: number;
  asked: number;
  refused: number;
  slowestMs: number;
}

/**
 * Read mutated files.
 * @param count how many
 * @param seed of the mutations
 */
export function fuzzReader(count: number, seed: number): FuzzCount {
  const random = seededRandom(seed);
  const found: FuzzCount = { tried: 0, accepted: 0, asked: 0, refused: 0, slowestMs: 0 };
  for (let k = 0; k < count; k++) {
    const mutated = mutate(random);
    const start = performance.now();
    const outcome = readLogBytes(mutated, { file: 'x.csv', sha256: '0'.repeat(64) });
    found.slowestMs = Math.max(found.slowestMs, performance.now() - start);
    found.tried += 1;
    if (outcome.accepted === 'yes') found.accepted += 1;
    else if (outcome.accepted === 'ask') found.asked += 1;
    else {
      found.refused += 1;
      if (outcome.problems.length === 0) throw new Error(`refused without a reason: mutation ${k} of seed ${seed}`);
    }
  }
  return found;
}

function mutate(random: ReturnType<typeof seededRandom>): Uint8Array {
  let out = bytes.slice();
  const changes = 1 + random.whole(4);
  for (let c = 0; c < changes; c++) {
    const at = random.whole(out.length);
    switch (random.whole(7)) {
      case 0:
        out[at] = random.whole(256);
        break;
      case 1:
        out = splice(out, at, 1 + random.whole(20), new Uint8Array(0));
        break;
      case 2:
        out = splice(
          out,
          at,
          0,
          new TextEncoder().encode(
            [',', '\n', '"', '\r', '\0', '=1+1', '1e9', 'NaN', '-', '\ufeff'][random.whole(10)] ?? '',
          ),
        );
        break;
      case 3:
        out = out.slice(0, at + 1);
        break;
      case 4:
        out = splice(out, at, 0, out.slice(random.whole(out.length)));
        break;
      case 5:
        out = out.map((byte) => (byte === 44 ? 59 : byte));
        break;
      default:
        out = splice(out, at, 0, new Uint8Array(1 + random.whole(50)));
    }
  }
  return out;
}

function splice(from: Uint8Array<ArrayBuffer>, at: number, remove: number, put: Uint8Array): Uint8Array<ArrayBuffer> {
  const out = new Uint8Array(from.length - Math.min(remove, from.length - at) + put.length);
  out.set(from.subarray(0, at));
  out.set(put, at);
  out.set(from.subarray(at + remove), at + put.length);
  return out;
}

if (process.argv[1]?.endsWith('fuzz-reader.ts')) {
  const found = fuzzReader(Number(process.argv[2] ?? 100_000), Number(process.argv[3] ?? 1));
  process.stdout.write(`${JSON.stringify(found)}\n`);
}
