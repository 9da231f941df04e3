// Opens German pages of the same kinds as check.js and checks that nothing in them is left in English, that longer words
// fit, and that numbers have their commas. Usage: node german.js DEMO OTHERS [PICTURES]
import { existsSync, mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { WINDOWS, accessibilityFaults, launch, makeTally, open } from './bench.js';
import { layoutFaults, structureFaults } from './rules.js';

const [demo, others, wanted] = process.argv.slice(2);
if (!others) {
  console.error('usage: node german.js DEMO OTHERS [PICTURES]');
  process.exit(2);
}

const PAGES = [
  [demo, 'before/report.html'],
  [demo, 'after/report.html'],
  [demo, 'before-and-after.html'],
  [demo, 'programme/set-up.html'],
  [others, 'machines/comparison.html'],
  [others, 'history/history.html'],
  [others, 'correction/correction.html'],
  [others, 'tones/tones.html'],
];
const pictures = wanted ?? mkdtempSync(join(tmpdir(), 'offtape-german-'));
const { tell, end } = makeTally();

/** What users said stays as they said it. */
function saidByUsers() {
  return ['before', 'after']
    .map((name) => join(demo, name, 'results.json'))
    .filter((file) => existsSync(file))
    .map((file) => JSON.parse(readFileSync(file, 'utf8')).session)
    .flatMap((session) => [session.machineName, session.tape, session.note])
    .filter(Boolean);
}

/** Texts, names and descriptions with a word that only English has. */
function englishFaults(said) {
  const english =
    /(^|[\s("„])(the|of|and|is|are|with|from|than|which|that|this|its|it|on|at|by|for|has|have|were|will|when|but|not|no|to|be|as)(?=[\s.,;:)!?]|$)/;
  const texts = [];
  const walker = document.createTreeWalker(document.documentElement, NodeFilter.SHOW_TEXT | NodeFilter.SHOW_ELEMENT);
  for (let node = walker.nextNode(); node; node = walker.nextNode()) {
    const element = node.nodeType === Node.TEXT_NODE ? node.parentElement : node;
    if (element.closest('script, style, code, [lang=en]')) {
      continue;
    }
    if (node.nodeType === Node.TEXT_NODE) {
      texts.push(node.data);
    } else {
      ['aria-label', 'title', 'alt', 'data-words', 'data-name', 'data-sides', 'data-keys', 'data-show', 'data-both'].forEach(
        (name) => node.hasAttribute(name) && texts.push(node.getAttribute(name)),
      );
    }
  }
  return texts
    .map((text) => said.reduce((rest, name) => rest.replaceAll(name, ''), text).replace(/"[^"]*"/g, '').trim())
    .filter((text) => english.test(text))
    .map((text) => `English: ${text.slice(0, 160)}`);
}

/** Cells of numbers with a point in place of a comma. */
function pointFaults() {
  return [...document.querySelectorAll('td, text.tick')]
    .map((cell) => cell.textContent.trim())
    .filter((text) => /^[+−±]?\d+\.\d+(\s|$)/.test(text))
    .map((text) => `a decimal point: ${text}`);
}

const browser = await launch();
try {
  for (const [folder, file] of PAGES) {
    for (const window of [WINDOWS[0], WINDOWS[2]]) {
      const where = `${file} in German (${window.name})`;
      const { context, page, troubles } = await open(browser, join(folder, file), window, 'light');
      const name = `${dirname(file)}-${window.name}-de.png`.replaceAll('/', '-').replace('.-', 'pair-');
      await page.screenshot({ path: join(pictures, name), fullPage: true });
      await page.evaluate(() => document.querySelectorAll('details').forEach((part) => (part.open = true)));
      tell(`${where} layout`, await page.evaluate(layoutFaults));
      if (window === WINDOWS[2]) {
        const language = await page.evaluate(() => document.documentElement.lang);
        tell(`${where} language`, language === 'de' ? [] : [`it says that it is ${language}`]);
        tell(`${where} words`, await page.evaluate(englishFaults, saidByUsers()));
        tell(`${where} numbers`, await page.evaluate(pointFaults));
        if (!file.startsWith('programme/')) {
          tell(`${where} structure`, await page.evaluate(structureFaults));
        }
        tell(`${where} accessibility`, await accessibilityFaults(page));
      }
      tell(`${where} console and requests`, troubles);
      await context.close();
    }
  }
} finally {
  await browser.close();
}
console.log(`Pictures of the pages: ${pictures}`);
end();
