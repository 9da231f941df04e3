// Opens the pages of a demo folder in Chromium and checks them as a reader meets them: on a phone, at a desk and on
// paper, in light and dark. Usage: node check.js DEMO [PICTURES]
import { mkdtempSync, readFileSync, statSync } from 'node:fs';
import { createRequire } from 'node:module';
import { execFileSync } from 'node:child_process';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';
import { layoutFaults, paperFaults, structureFaults } from './rules.js';

const PAGES = ['before/report.html', 'after/report.html', 'before-and-after.html'];
const WINDOWS = [
  { name: 'narrow', width: 320, height: 640 },
  { name: 'phone', width: 360, height: 740 },
  { name: 'desk', width: 1280, height: 900 },
];
const SCHEMES = ['light', 'dark'];

const demo = process.argv[2];
if (!demo) {
  console.error('usage: node check.js DEMO [PICTURES]');
  process.exit(2);
}
const pictures = process.argv[3] ?? mkdtempSync(join(tmpdir(), 'offtape-pages-'));
const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

let passed = 0;
let failed = 0;

function tell(name, faults) {
  if (faults.length === 0) {
    passed += 1;
    return;
  }
  failed += 1;
  console.log(`not ok: ${name}`);
  faults.slice(0, 20).forEach((fault) => console.log(`    ${fault}`));
  if (faults.length > 20) {
    console.log(`    and ${faults.length - 20} more`);
  }
}

/** A page that records what goes wrong and lets no request out of the folder. */
async function open(browser, file, window, colorScheme) {
  const context = await browser.newContext({
    viewport: { width: window.width, height: window.height },
    colorScheme,
    isMobile: window.width < 600,
    hasTouch: window.width < 600,
  });
  const troubles = [];
  const page = await context.newPage();
  page.on('console', (message) => {
    if (['error', 'warning'].includes(message.type())) {
      troubles.push(`console: ${message.text()}`);
    }
  });
  page.on('pageerror', (error) => troubles.push(`script: ${error.message}`));
  await context.route('**', (route) => {
    const url = route.request().url();
    if (url === pathToFileURL(resolve(demo, file)).href) {
      return route.continue();
    }
    troubles.push(`request: ${url}`);
    return route.abort();
  });
  await page.goto(pathToFileURL(resolve(demo, file)).href, { waitUntil: 'load' });
  return { context, page, troubles };
}

async function accessibilityFaults(page) {
  await page.evaluate(axe);
  const { violations, passes } = await page.evaluate(() => globalThis.axe.run(document));
  const faults = violations.flatMap(({ id, help, nodes }) =>
    nodes.slice(0, 3).map((node) => `${id}: ${help}: ${node.target.join(' ')}`),
  );
  return passes.length > 10 ? faults : [...faults, `only ${passes.length} rules found anything to look at`];
}

async function onScreen(browser, file, window, scheme) {
  const where = `${file} (${window.name}, ${scheme})`;
  const { context, page, troubles } = await open(browser, file, window, scheme);
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
  const { context, page, troubles } = await open(browser, file, WINDOWS[2], scheme);
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

const executablePath = execFileSync('sh', ['-c', 'command -v chromium'], { encoding: 'utf8' }).trim();
const browser = await chromium.launch({
  executablePath,
  chromiumSandbox: process.getuid() !== 0,
  args: ['--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-sync'],
});
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
console.log(`browser: ${passed} passed, ${failed} failed`);
process.exitCode = failed > 0 ? 1 : 0;
