/** The KIND of the command line: another one is wrong usage. */
import { WrongUsage } from './verb.ts';

/** @throws WrongUsage with the kinds there are */
export async function knownKind(kind: string): Promise<void> {
  const { REDUCTIONS, reductionOf } = await import('../../analysis/reductions/index.ts');
  if (reductionOf(kind)) return;
  throw new WrongUsage(`there is no reduction "${kind}"; there are ${REDUCTIONS.map((one) => one.kind).join(', ')}.`);
}
