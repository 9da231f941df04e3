// Takes the pictures of the documentation from pages that were just made. Usage: node pictures.js PAGES FOLDER
import { join } from 'node:path';
import { launch, open } from './bench.js';

const DESK = { name: 'desk', width: 1060, height: 900 };

/** Which page, where the picture begins (an element's top, or the page's), how high it is, and its name. */
const PICTURES = [
  { page: 'before/report.html', height: 1230, name: 'report-top.png' },
  { page: 'before/report.html', from: '#speed', height: 1430, name: 'report-speed.png' },
  { page: 'before-and-after.html', height: 1560, name: 'before-and-after.png' },
  { page: 'correction/correction.html', height: 1560, name: 'correction.png' },
  { page: 'listening.html', height: 820, name: 'listening.png' },
];

const [pages, folder] = process.argv.slice(2);
if (!folder) {
  console.error('usage: node pictures.js PAGES FOLDER');
  process.exit(2);
}
const browser = await launch();
try {
  for (const { page: file, from, height, name } of PICTURES) {
    const { context, page, troubles } = await open(browser, join(pages, file), DESK, 'light');
    if (troubles.length > 0) {
      throw new Error(`${file}: ${troubles.join('; ')}`);
    }
    const top = from ? (await page.locator(from).boundingBox()).y : 0;
    const clip = { x: 0, y: Math.max(0, Math.floor(top) - 8), width: DESK.width, height };
    await page.screenshot({ path: join(folder, name), fullPage: true, clip });
    await context.close();
    console.log(name);
  }
} finally {
  await browser.close();
}
