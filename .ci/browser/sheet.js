// Opens the set-up sheets of programmes in Chromium: on a phone, at a desk, in light and dark, and on paper, where each
// has to fill one A4 page and no second one. Usage: node sheet.js SHEET...
import { resolve } from 'node:path';
import { SCHEMES, WINDOWS, accessibilityFaults, launch, makeTally, open } from './bench.js';
import { layoutFaults } from './rules.js';

const sheets = process.argv.slice(2).map((file) => resolve(file));
if (sheets.length === 0) {
  console.error('usage: node sheet.js SHEET...');
  process.exit(2);
}
const { tell, end } = makeTally();

/** Pages of a PDF; Chromium leaves the objects of pages unpacked. */
function pages(pdf) {
  return pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)?.length ?? 0;
}

const browser = await launch();
try {
  for (const file of sheets) {
    for (const scheme of SCHEMES) {
      for (const window of WINDOWS) {
        const where = `${file} (${window.name}, ${scheme})`;
        const { context, page, troubles } = await open(browser, file, window, scheme);
        tell(where, [...(await page.evaluate(layoutFaults)), ...(await accessibilityFaults(page)), ...troubles]);
        await context.close();
      }
      const { context, page } = await open(browser, file, WINDOWS[2], scheme);
      const count = pages(await page.pdf({ preferCSSPageSize: true }));
      tell(`${file} (paper, ${scheme})`, count === 1 ? [] : [`it takes ${count} pages`]);
      await context.close();
    }
  }
} finally {
  await browser.close();
}
end();
