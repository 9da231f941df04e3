// Opens the pages of a demo folder in Chromium and checks them as a reader meets them: on a phone, at a desk and on
// paper, in light and dark. Usage: node check.js DEMO [PICTURES]
import { mkdtempSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { SCHEMES, WINDOWS, accessibilityFaults, launch, makeTally, open } from './bench.js';
import { layoutFaults, paperFaults, structureFaults } from './rules.js';

const PAGES = ['before/report.html', 'after/report.html', 'before-and-after.html'];

const demo = process.argv[2];
if (!demo) {
  console.error('usage: node check.js DEMO [PICTURES]');
  process.exit(2);
}
const pictures = process.argv[3] ?? mkdtempSync(join(tmpdir(), 'offtape-pages-'));
const { tell, end } = makeTally();

async function onScreen(browser, file, window, scheme) {
  const where = `${file} (${window.name}, ${scheme})`;
  const { context, page, troubles } = await open(browser, join(demo, file), window, scheme);
  tell(`${where} layout`, await page.evaluate(layoutFaults));
  await page.screenshot({ path: join(pictures, picture(file, window.name, scheme)), fullPage: true });
  // What is folded away has to fit as well once it is opened.
  await page.evaluate(() => document.querySelectorAll('details').forEach((part) => (part.open = true)));
  tell(`${where} layout, all opened`, await page.evaluate(layoutFaults));
  tell(`${where} structure`, await page.evaluate(structureFaults));
  if (window.name !== 'narrow') {
    tell(`${where} accessibility`, await accessibilityFaults(page));
  }
  tell(`${where} console and requests`, troubles);
  await context.close();
}

async function onPaper(browser, file, scheme) {
  const { context, page, troubles } = await open(browser, join(demo, file), WINDOWS[2], scheme);
  await page.emulateMedia({ media: 'print', colorScheme: scheme });
  // The width between the margins of an A4 sheet, 210 mm less twice 12 mm, at 96 px an inch.
  await page.setViewportSize({ width: 703, height: 1000 });
  tell(`${file} (paper, ${scheme})`, [...(await page.evaluate(layoutFaults)), ...(await page.evaluate(paperFaults))]);
  const path = join(pictures, picture(file, 'paper', scheme).replace('.png', '.pdf'));
  await page.pdf({ path, format: 'A4', preferCSSPageSize: true });
  tell(`${file} (PDF, ${scheme})`, statSync(path).size > 10_000 ? troubles : ['the PDF is all but empty', ...troubles]);
  await context.close();
}

function picture(file, window, scheme) {
  return `${file.replace('.html', '').replaceAll('/', '-')}-${window}-${scheme}.png`;
}

const browser = await launch();
try {
  for (const file of PAGES) {
    for (const scheme of SCHEMES) {
      for (const window of WINDOWS) {
        await onScreen(browser, file, window, scheme);
      }
      await onPaper(browser, file, scheme);
    }
  }
} finally {
  await browser.close();
}
console.log(`Pictures and PDFs of the pages: ${pictures}`);
end();
