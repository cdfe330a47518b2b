/** The page's own inks, read where a chart stands, so that it follows the page into the dark and onto paper. */

export interface Inks {
  ink: string;
  soft: string;
  rule: string;
  accent: string;
  accentSoft: string;
  sheet: string;
}

/**
 * The inks in force at an element.
 * @param element where the chart stands
 * @returns colours as text
 */
export function inksOf(element: Element): Inks {
  const style = getComputedStyle(element);
  const ink = (name: string) => style.getPropertyValue(name).trim() || '#000000';
  return {
    ink: ink('--ink'),
    soft: ink('--ink-soft'),
    rule: ink('--rule'),
    accent: ink('--accent'),
    accentSoft: ink('--accent-soft'),
    sheet: ink('--sheet'),
  };
}
