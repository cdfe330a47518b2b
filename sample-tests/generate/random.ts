/**
 * Seeded randomness of the sample generator. Its own, so that the samples share nothing with the code they test.
 * Each use draws from its own stream (`stream('gust')`), so that adding a sensor does not change the weather.
 */

export interface Random {
  /** evenly spread over 0..1 */
  uniform(): number;
  /** standard normal */
  normal(): number;
  /** an independent stream with the same seed and another name */
  stream(name: string): Random;
}

/**
 * A stream of random numbers (small fast counter generator, 128 bits of state).
 * @param seed whole number
 * @param name what the stream is for; another name is another stream
 */
export function randomFrom(seed: number, name = ''): Random {
  let [a, b, c] = [seed | 0, hash(name), 0x9e3779b9 | 0];
  let counter = 1;
  let spare: number | null = null;
  const next = (): number => {
    const t = (((a + b) | 0) + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (c << 21) | (c >>> 11);
    c = (c + t) | 0;
    return (t >>> 0) / 4294967296;
  };
  for (let i = 0; i < 16; i += 1) next();
  const normal = (): number => {
    if (spare !== null) {
      const kept = spare;
      spare = null;
      return kept;
    }
    const radius = Math.sqrt(-2 * Math.log(1 - next()));
    const angle = 2 * Math.PI * next();
    spare = radius * Math.sin(angle);
    return radius * Math.cos(angle);
  };
  return { uniform: next, normal, stream: (other) => randomFrom(seed, `${name}/${other}`) };
}

function hash(text: string): number {
  let h = 2166136261;
  for (let i = 0; i < text.length; i += 1) h = Math.imul(h ^ text.charCodeAt(i), 16777619);
  return h | 0;
}
