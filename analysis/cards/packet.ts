/** A flight packet: briefing, the cards in order, emergency sheet, return sheet. */
import { CATALOGUE } from '../catalogue/index.ts';
import { briefingOf } from './briefing.ts';
import type { Card } from './card.ts';
import { emergencySheet } from './emergency-sheet.ts';
import type { PacketPage } from './packet-page.ts';
import { cardsOfProgram, outingName, type ProgramCardsInput } from './program-cards.ts';
import { returnSheet } from './return-sheet.ts';

export interface Packet {
  briefing: PacketPage;
  cards: Card[];
  emergency: PacketPage;
  return: PacketPage;
}

/**
 * The packet of one outing.
 * @param input as for the cards of a program, its selection an outing or a flight
 * @returns the packet, or null where the program has no such outing
 */
export function packetOf(input: ProgramCardsInput): Packet | null {
  const { airplane, program, selection, revision, printed, ownTests = [], known = {} } = input;
  if (selection.kind !== 'outing' && selection.kind !== 'flight') return null;
  const outing = program.outings.find((one) =>
    selection.kind === 'flight' ? one.flight === selection.number : one.number === selection.number,
  );
  if (!outing) return null;
  const byId = new Map([...CATALOGUE, ...ownTests].map((test) => [test.id, test]));
  const tests = outing.parts.flatMap((part) => byId.get(part.test) ?? []);
  const cards = cardsOfProgram(input);
  const name = outingName(outing, program);
  const identity = {
    registration: airplane.registration,
    airplane: airplane.name,
    invented: airplane.invented,
    place: name,
    outing: name,
    revision,
    printed,
  };
  return {
    briefing: briefingOf({ airplane, program, outing, tests, cards, identity, known }),
    cards,
    emergency: emergencySheet(airplane, identity, known),
    return: returnSheet(airplane, outing.kind === 'flight', identity),
  };
}
