// Opens the pages of a demo folder, and those that other commands wrote into another, in Chromium and checks them as a
// reader meets them: on a phone, at a desk and on paper, in light and dark, by pointer, keys and touch, with and without
// scripts. Usage: node check.js DEMO OTHERS [PICTURES]
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { SCHEMES, WINDOWS, accessibilityFaults, launch, makeTally, open } from './bench.js';
import { pagesFaults } from './paper.js';
import { plainFaults } from './plain.js';
import { checkReadings } from './readings.js';
import { layoutFaults, paperFaults, structureFaults } from './rules.js';
import { checkSides } from './sides.js';

const [demo, others, wanted] = process.argv.slice(2);
if (!others) {
  console.error('usage: node check.js DEMO OTHERS [PICTURES]');
  process.exit(2);
}

/** Folder of each page and its place there. */
const PAGES = [
  [demo, 'before/report.html'],
  [demo, 'after/report.html'],
  [demo, 'before-and-after.html'],
  [others, 'machines/comparison.html'],
  [others, 'history/history.html'],
  [others, 'correction/correction.html'],
  [others, 'tones/tones.html'],
];
const pictures = wanted ?? mkdtempSync(join(tmpdir(), 'offtape-pages-'));
const { tell, end } = makeTally();

async function onScreen(browser, folder, file, window, scheme) {
  const where = `${file} (${window.name}, ${scheme})`;
  const { context, page, troubles } = await open(browser, join(folder, file), window, scheme);
  tell(`${where} layout`, await page.evaluate(layoutFaults));
  await page.screenshot({ path: join(pictures, picture(file, window.name, scheme)), fullPage: true });
  // What is folded away has to fit as well once it is opened.
  await page.evaluate(() => document.querySelectorAll('details').forEach((part) => (part.open = true)));
  tell(`${where} layout, all opened`, await page.evaluate(layoutFaults));
  tell(`${where} structure`, await page.evaluate(structureFaults));
  if (window.name !== 'tablet') {
    tell(`${where} accessibility`, await accessibilityFaults(page));
  }
  tell(`${where} console and requests`, troubles);
  await context.close();
}

async function onPaper(browser, folder, file, scheme) {
  const { context, page, troubles } = await open(browser, join(folder, file), WINDOWS[2], scheme);
  await page.emulateMedia({ media: 'print', colorScheme: scheme });
  // The width between the margins of an A4 sheet, 210 mm less twice 12 mm, at 96 px an inch.
  await page.setViewportSize({ width: 703, height: 1000 });
  tell(`${file} (paper, ${scheme})`, [...(await page.evaluate(layoutFaults)), ...(await page.evaluate(paperFaults))]);
  const path = join(pictures, picture(file, 'paper', scheme).replace('.png', '.pdf'));
  await page.pdf({ path, format: 'A4', preferCSSPageSize: true });
  tell(`${file} (PDF, ${scheme})`, [...(await pagesFaults(page, path)), ...troubles]);
  await context.close();
}

function picture(file, window, scheme) {
  return `${file.replace('.html', '').replaceAll('/', '-')}-${window}-${scheme}.png`;
}

const browser = await launch();
try {
  for (const [folder, file] of PAGES) {
    for (const scheme of SCHEMES) {
      for (const window of WINDOWS) {
        await onScreen(browser, folder, file, window, scheme);
      }
      await onPaper(browser, folder, file, scheme);
    }
    tell(`${file} without scripts`, await plainFaults(browser, join(folder, file)));
  }
  await checkReadings(browser, demo, tell);
  await checkSides(browser, demo, tell);
} finally {
  await browser.close();
}
console.log(`Pictures and PDFs of the pages: ${pictures}`);
end();
