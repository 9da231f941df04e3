// A page whose scripts are not run has everything but the reading of values.
import { WINDOWS, open } from './bench.js';
import { layoutFaults, structureFaults } from './rules.js';

export async function plainFaults(browser, file) {
  const { context, page, troubles } = await open(browser, file, WINDOWS[2], 'light', async () => {}, {
    javaScriptEnabled: false,
  });
  const faults = [...(await page.evaluate(layoutFaults)), ...(await page.evaluate(structureFaults)), ...troubles];
  if ((await page.locator('.reader, .reading, .sides').count()) > 0) {
    faults.push('something of the script is there');
  }
  const charts = await page.locator('svg.chart').count();
  const visible = await page.locator('svg.chart:visible').count();
  if (charts === 0 || visible !== charts) {
    faults.push(`${visible} of ${charts} charts are seen`);
  }
  // each figure is followed by its table, or shares one further down its section
  const bare = await page.evaluate(() =>
    [...document.querySelectorAll('section')]
      .filter((section) => section.querySelector('svg.chart') && !section.querySelector('table'))
      .map((section) => section.id),
  );
  bare.forEach((id) => faults.push(`the section ${id} has a chart and no table`));
  await context.close();
  return faults;
}
