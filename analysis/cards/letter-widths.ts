/**
 * Advance widths of the card's typeface, B612, in thousandths of the letter height; regular and bold are equal.
 * With them the sheets are filled by arithmetic, before any page exists. A test compares them with the font file.
 */

const BY_WIDTH: Readonly<Record<number, string>> = {
  200: "'|¦",
  250: ',;·′',
  300: '.:Iij°²³¹ÌÍÎÏìíîï',
  350: ' !l\u00a0¡‘’‚',
  400: '"frtªº″',
  450: '()-J[s‹›',
  500: '=]cz¢§“”„↑↓',
  521: 'ç',
  525: 'a',
  550: '$*/?FLS\\_`ekvxy£¨©®¯´¸¿àáâãäåèéêë÷ýÿˆ˚˜–−',
  600: '+CEKPTYZbdghnopqu}¤¥±ÈÉÊËÝñòóôõöøùúûüþ•',
  649: '{',
  650: '0123456789<>ABDGRVXµÀÁÂÃÄÅÇÐÞßð',
  700: '&HU«¶»ÙÚÛÜ€',
  750: 'N^w~¼½¾Ñ…',
  800: 'OQÒÓÔÕÖ×Ø',
  850: '#¬Ææ™',
  900: '%Mm',
  950: 'Wœ',
  1000: '@Œ',
  1050: '—',
};

const WIDTHS = new Map(
  Object.entries(BY_WIDTH).flatMap(([width, letters]) =>
    [...letters].map((letter) => [letter, Number(width)] as const),
  ),
);

/** A letter the typeface lacks comes from the fallback face, where none is wider than it is high. */
const FALLBACK = 1000;

/**
 * Width of one letter.
 * @param letter one character, text
 * @returns thousandths of the letter height
 */
export function letterWidth(letter: string): number {
  return WIDTHS.get(letter) ?? FALLBACK;
}

/** Every letter the typeface has, for the test that compares. */
export function knownLetters(): string[] {
  return [...WIDTHS.keys()];
}
