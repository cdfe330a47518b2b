/** A header cell taken apart: the name, and the unit where it stands in the same cell. */
import { isUnitText, readUnitText } from './unit-text.ts';

export interface HeaderText {
  name: string;
  /** unit as written, or empty */
  unitText: string;
}

/** Units that are names as well: they end the name and tell the unit (`E1 RPM`, `Bus Volts`, `FF GPH`). */
const NAME_AND_UNIT = /^(rpm|volts?|amps?|gph|lph|fpm|kias|kcas|ktas)$/i;

const BRACKETED = /^(.*?)[\s_]*[([{]([^()[\]{}]*)[)\]}]\s*(.*)$/;

/**
 * Name and unit of a header cell: `IAS (kt)`, `Oil T [degC]`, `CHT1_F`, `Fuel Flow gal/h`, `MAP, inHg`, `OAT/°C`.
 * @param raw the header cell, text
 * @returns the name, and the unit text where the cell holds one
 */
export function splitHeader(raw: string): HeaderText {
  const text = raw.trim().replace(/\s+/g, ' ');
  const bracketed = BRACKETED.exec(text);
  if (bracketed) {
    const [, before = '', inside = '', after = ''] = bracketed;
    if (isUnitText(inside)) return { name: `${before} ${after}`.trim() || inside.trim(), unitText: inside.trim() };
    // A bracket that is no known unit still parts from the name when nothing follows it: `AOA (raw)`.
    if (before !== '' && after === '' && inside !== '' && !/^\d+$/.test(inside.trim())) {
      return { name: `${before} ${inside}`.trim(), unitText: '' };
    }
  }
  for (const mark of [',', ' ', '_', '/', '-', ':', '.']) {
    const at = mark === '/' ? firstSlash(text) : text.lastIndexOf(mark);
    if (at <= 0 || at >= text.length - 1) continue;
    const name = text.slice(0, at).trim();
    const tail = text.slice(at + 1).trim();
    if (name === '' || !(isTailUnit(tail) || isLetterOf(name, tail))) continue;
    return NAME_AND_UNIT.test(tail) ? { name: text, unitText: tail } : { name, unitText: tail };
  }
  // Two words of unit at the end: `OAT deg C`, `Track deg true`.
  const words = text.split(/[ _]/);
  if (words.length >= 3) {
    const tail = words.slice(-2).join(' ');
    if (readUnitText(tail).units.length > 0) return { name: words.slice(0, -2).join(' '), unitText: tail };
  }
  const joined = JOINED.exec(text);
  if (joined) {
    const name = joined[1] ?? joined[3] ?? '';
    const tail = joined[2] ?? joined[4] ?? '';
    if (isTailUnit(tail) && !NAME_AND_UNIT.test(tail) && (tail.length > 1 || isLetterOf(name, tail))) {
      return { name, unitText: tail };
    }
  }
  return { name: text, unitText: NAME_AND_UNIT.test(text) ? text : '' };
}

/** `IASkt`, `GpsAltFt`, `OilTempC`: the unit starts where the case changes. */
const JOINED = /^([A-Z][A-Z0-9]+)([a-z/]{2,4})$|^(.*\p{Ll})(\p{Lu}[\p{L}/]*)$/u;

/** Letters that are a unit after some names and a side, a tank or a bus after others. */
function isLetterOf(name: string, tail: string): boolean {
  if (tail === 'm') return /(alt|alti\w+|ele\w*|h(oe|ö)he|height|hgt|msl)$/i.test(name);
  if (tail === 'g') return /(n[xyz]|acc\w*|load|norm\w*|lat\w*)$/i.test(name);
  return /^[CF]$/.test(tail) && /(t|temp\w*|oat|iat|clt|cht|egt)[ _-]?\d*$/i.test(name);
}

/** In `FF/L/h` the unit starts at the first slash. */
function firstSlash(text: string): number {
  const at = text.indexOf('/');
  return at > 0 && isTailUnit(text.slice(at + 1).trim()) ? at : text.lastIndexOf('/');
}

/** Single letters end many names (`OIL T`, `FUEL L`, `RPM R`); only those that are a unit and no such mark count. */
function isTailUnit(tail: string): boolean {
  if (/^[A-Za-z]$/.test(tail)) return /^[CFVAK]$/.test(tail);
  if (/^(in|min|h|hr|g|s|as|number|text|flag|c|time|date|local|lcl|am\/?pm)$/i.test(tail)) return false;
  return isUnitText(tail);
}
