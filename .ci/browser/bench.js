// What all checks in the browser share: the browser, a page that may ask for nothing, the count of faults.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { execFileSync } from 'node:child_process';
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';

export const WINDOWS = [
  { name: 'narrow', width: 320, height: 640 },
  { name: 'tablet', width: 700, height: 900 },
  { name: 'desk', width: 1060, height: 900 },
];
export const SCHEMES = ['light', 'dark'];

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** Counts checks and tells those that failed. */
export function makeTally() {
  let passed = 0;
  let failed = 0;
  return {
    tell(name, faults) {
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
    },
    end() {
      console.log(`browser: ${passed} passed, ${failed} failed`);
      process.exitCode = failed > 0 ? 1 : 0;
    },
  };
}

export function launch() {
  const executablePath = execFileSync('sh', ['-c', 'command -v chromium'], { encoding: 'utf8' }).trim();
  return chromium.launch({
    executablePath,
    chromiumSandbox: process.getuid() !== 0,
    args: ['--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-sync'],
  });
}

/** A page that records what goes wrong and lets no request out of the folder. */
export async function open(browser, file, window, colorScheme, prepare = async () => {}, options = {}) {
  const context = await browser.newContext({
    ...options,
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
  const address = pathToFileURL(resolve(file)).href;
  await context.route('**', (route) => {
    const url = route.request().url();
    if (url === address) {
      return route.continue();
    }
    troubles.push(`request: ${url}`);
    return route.abort();
  });
  await prepare(page);
  await page.goto(address, { waitUntil: 'load' });
  return { context, page, troubles };
}

export async function accessibilityFaults(page) {
  await page.evaluate(axe);
  const { violations, passes } = await page.evaluate(() => globalThis.axe.run(document));
  const faults = violations.flatMap(({ id, help, nodes }) =>
    nodes.slice(0, 3).map((node) => `${id}: ${help}: ${node.target.join(' ')}`),
  );
  return passes.length > 10 ? faults : [...faults, `only ${passes.length} rules found anything to look at`];
}
