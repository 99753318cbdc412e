import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';

/**
 * What axe finds wrong with a page, a line for each rule; where a box is open, with the box, since what is behind it is
 * out of reach. In the dark only colours are other: `contrast` leaves out all rules but theirs.
 */
export async function faults(page: Page, contrast = false): Promise<string[]> {
  const axe = new AxeBuilder({ page }).setLegacyMode().options({ resultTypes: ['violations'] });
  if (contrast) axe.withRules(['color-contrast', 'link-in-text-block']);
  else axe.withTags(['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa', 'best-practice']);
  if ((await page.locator('dialog[open]').count()) > 0) axe.include('dialog[open]');
  const { violations } = await axe.analyze();
  return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 160)).join(' | ')}`);
}
