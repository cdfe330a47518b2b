/** Sections dealt onto sheets: cut between rows only, heads repeated, groups and last rows kept together. */

/** A run of lines or rows that may be cut between any two, but not after fewer than `least`. */
export interface Section<Part> {
  /** repeated where the section goes on, mm */
  header: number;
  rows: { height: number; part: (from: number, to: number, first: boolean) => Part; keep: boolean }[];
  least: number;
}

/**
 * Deal groups of sections; each group starts on a sheet of its own.
 * @param groups sections in order
 * @param room height of a sheet by its place from 0, mm
 * @returns the parts of each sheet, at least one sheet
 */
export function deal<Part>(groups: Section<Part>[][], room: (sheet: number) => number): Part[][] {
  const sheets: Part[][] = [];
  for (const group of groups) {
    let sheet: Part[] = [];
    let left = room(sheets.length);
    for (const section of group) {
      let from = 0;
      while (from < section.rows.length) {
        const to = fitting(section, from, left, sheet.length === 0);
        if (to === from) {
          sheets.push(sheet);
          sheet = [];
          left = room(sheets.length);
          continue;
        }
        const part = section.rows[from]?.part(from, to, from === 0);
        if (part) sheet.push(part);
        left -= section.header + heightOf(section, from, to);
        from = to;
        if (from < section.rows.length) {
          sheets.push(sheet);
          sheet = [];
          left = room(sheets.length);
        }
      }
    }
    if (sheet.length > 0) sheets.push(sheet);
  }
  return sheets.length > 0 ? sheets : [[]];
}

function heightOf<Part>(section: Section<Part>, from: number, to: number): number {
  return section.rows.slice(from, to).reduce((sum, row) => sum + row.height, 0);
}

/** Rows that fit, cut where a cut is allowed; all of an empty sheet's room is used before a group is torn. */
function fitting<Part>(section: Section<Part>, from: number, left: number, empty: boolean): number {
  let used = section.header;
  let to = from;
  while (to < section.rows.length) {
    const height = section.rows[to]?.height ?? 0;
    if (used + height > left) break;
    used += height;
    to += 1;
  }
  if (to === section.rows.length) return to;
  // no lone last row on the next sheet
  const lone = section.least - (section.rows.length - to);
  if (lone > 0 && to - lone > from + section.least - 1) to -= lone;
  let cut = to;
  while (cut > from && section.rows[cut - 1]?.keep) cut -= 1;
  if (cut > from) to = cut;
  else if (!empty) return from;
  const enough = to - from >= Math.min(section.least, section.rows.length - from);
  if (!enough && !empty) return from;
  return Math.max(to, empty ? from + 1 : from);
}
