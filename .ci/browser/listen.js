// Takes a listening page through whole tests in Chromium, by keyboard alone, and checks what it keeps, reckons, saves and
// shows. Usage: node listen.js PAGE PRACTICE GERMAN [PICTURES]: a page of 5 trials for a test, one of 5 for practice, and
// one for a test in German.
import { mkdtempSync, readFileSync, readdirSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { SCHEMES, WINDOWS, accessibilityFaults, launch, makeTally, open } from './bench.js';
import { chanceFaults, partsOf, playerFaults, switchFaults, textFaults } from './listen-parts.js';
import { layoutFaults } from './rules.js';

const TRIALS = 5;
const [test, practice, german] = process.argv.slice(2);
if (!german) {
  console.error('usage: node listen.js PAGE PRACTICE GERMAN [PICTURES]');
  process.exit(2);
}
const pictures = process.argv[5] ?? mkdtempSync(join(tmpdir(), 'offtape-listening-'));
const { tell, end } = makeTally();
const report = join(dirname(fileURLToPath(import.meta.url)), '../../lab-report/src');
const scripts = join(report, 'main/resources/offtape/report/apply/listen');
const table = join(report, 'test/resources/offtape/report/apply/listen/chances.csv');

async function checkParts(browser) {
  const page = await browser.newPage();
  const sources = readdirSync(scripts).filter((name) => name.endsWith('.js') && name !== 'page.js');
  const parts = partsOf(sources.map((name) => readFileSync(join(scripts, name), 'utf8')));
  const rows = readFileSync(table, 'utf8').trim().split('\n').slice(1).map((line) => line.split(',').map(Number));
  tell('chances', await page.evaluate(chanceFaults, { parts, rows }));
  tell('cells and samples', await page.evaluate(textFaults, { parts }));
  tell('switching', await page.evaluate(switchFaults, { parts }));
  tell('loops', await page.evaluate(playerFaults, { parts }));
  await page.close();
}

/** Watches from outside what the page draws and starts; what it draws is known nowhere else. */
async function watch(page) {
  await page.addInitScript(() => {
    globalThis.seen = { drawn: [], starts: [] };
    const draw = crypto.getRandomValues.bind(crypto);
    crypto.getRandomValues = (into) => {
      draw(into);
      // the page asks for a single byte; axe-core draws longer ones for itself
      if (into.length === 1) {
        globalThis.seen.drawn.push((into[0] & 1) === 0 ? 'A' : 'B');
      }
      return into;
    };
    const start = AudioBufferSourceNode.prototype.start;
    AudioBufferSourceNode.prototype.start = function startSeen(...when) {
      globalThis.seen.starts.push(when.join());
      start.apply(this, when);
    };
  });
}

const hidden = (page) => page.evaluate(() => globalThis.seen.drawn.at(-1));
const text = (page, id) => page.locator(`#${id}`).textContent();

async function answerByKeys(page, name) {
  for (const key of ['a', 'b', 'x', name === 'A' ? '1' : '2', 'Enter']) {
    await page.keyboard.press(key);
  }
}

async function downloaded(page, id) {
  const [file] = await Promise.all([page.waitForEvent('download'), page.locator(`#${id}`).click()]);
  return { name: file.suggestedFilename(), text: readFileSync(await file.path(), 'utf8') };
}

/** A whole test without a mouse, with a reload in its middle. */
async function wholeTest(browser) {
  const faults = [];
  const expect = (holds, fault) => holds || faults.push(fault);
  const { context, page, troubles } = await open(browser, test, WINDOWS[2], 'light', watch);
  expect(await page.locator('#hear-X').isDisabled(), 'X can be heard before the test');
  await page.keyboard.press('Space');
  await page.keyboard.press('Enter');
  await page.waitForTimeout(300);
  const { starts } = await page.evaluate(() => globalThis.seen);
  expect(starts.length === 2 && starts[0] === starts[1], `A and B start at ${starts.join(' and ')}`);
  expect(Number(await text(page, 'place')) >= 0, 'no place is shown');

  await page.keyboard.press('1');
  await page.keyboard.press('Enter');
  expect((await text(page, 'h-test')) === `Trial 1 of ${TRIALS}`, 'an answer is taken before X was heard');
  await page.keyboard.press('x');
  await page.keyboard.press('1');
  await page.keyboard.press('Space');
  expect((await text(page, 'play')) === 'Play', 'Space does not stop once an answer is chosen');
  expect((await text(page, 'h-test')) === `Trial 1 of ${TRIALS}`, 'Space settles an answer');
  await page.keyboard.press('Space');
  const first = await hidden(page);
  await answerByKeys(page, first);
  const second = await hidden(page);
  await answerByKeys(page, second === 'A' ? 'B' : 'A');
  expect((await text(page, 'h-test')) === `Trial 3 of ${TRIALS}`, `after two answers: ${await text(page, 'h-test')}`);
  expect(!(await page.locator('#result').isVisible()), 'results are shown before the end');
  expect(!/right|wrong/i.test(await text(page, 'status')), `the status tells: ${await text(page, 'status')}`);

  await page.reload();
  expect((await text(page, 'h-test')) === `Trial 3 of ${TRIALS}`, `after a reload: ${await text(page, 'h-test')}`);
  await page.keyboard.press('p');
  let right = 1;
  const said = [[first, first], [second, second === 'A' ? 'B' : 'A']];
  for (let trial = 3; trial <= TRIALS; trial += 1) {
    const x = await hidden(page);
    said.push([x, 'A']);
    right += x === 'A' ? 1 : 0;
    await answerByKeys(page, 'A');
  }
  const score = await text(page, 'score');
  expect(score.startsWith(`${right} of ${TRIALS} right`), `the score is "${score}" with ${right} right`);
  const ways = [1, 5, 10, 10, 5, 1].slice(right).reduce((sum, n) => sum + n, 0);
  expect(score.includes(`(${ways} of 32 ways`), `the chance is "${score}" in place of ${ways} of 32`);
  const verdict = await text(page, 'verdict');
  expect(verdict.includes(right === 5 ? 'You heard' : 'does not prove'), `the verdict is "${verdict}"`);

  const csv = await downloaded(page, 'save-csv');
  const lines = csv.text.trim().split('\r\n');
  said.forEach(([x, answer], i) => {
    const start = `"1","yes","${i + 1}","${x}","${answer}","${x === answer ? 'yes' : 'no'}",`;
    expect(lines[i + 1]?.startsWith(start), `line ${i + 2} is ${lines[i + 1]} in place of ${start}`);
  });
  expect(lines.length === TRIALS + 1 && csv.name.endsWith('.csv'), `${lines.length} lines in ${csv.name}`);
  const json = JSON.parse((await downloaded(page, 'save-json')).text);
  expect(json.rounds[0].right === right && json.rounds[0].answers.length === TRIALS, 'the JSON says something else');
  expect(Math.abs(json.rounds[0].chanceByGuessing - ways / 32) < 1e-12, `chance ${json.rounds[0].chanceByGuessing}`);

  await page.reload();
  expect((await text(page, 'score')) === score, 'a reload after the end loses the result');
  expect(await page.locator('#begin').isHidden(), 'after the end the first round can be begun again');
  await page.locator('#again').click();
  expect((await text(page, 'h-test')) === `Trial 1 of ${TRIALS}`, 'no second round begins');
  await page.keyboard.press('p');
  for (let trial = 1; trial <= TRIALS; trial += 1) {
    await answerByKeys(page, await hidden(page));
  }
  const together = await text(page, 'together');
  expect(together.includes(`${right + TRIALS} of ${2 * TRIALS} right`), `both rounds: "${together}"`);
  await page.locator('#forget').click();
  expect(await page.locator('#result').isVisible(), 'answers are cleared without asking');
  await page.locator('#forget').click();
  await page.reload();
  expect(await page.locator('#begin').isVisible(), 'cleared answers come back');
  tell('a whole test by keyboard', faults);
  tell('a whole test: console and requests', troubles);
  await context.close();
}

async function practise(browser) {
  const { context, page, troubles } = await open(browser, practice, WINDOWS[0], 'dark', watch);
  await page.locator('#begin').click();
  await page.locator('#play').click();
  await page.locator('#hear-X').click();
  const x = await hidden(page);
  await page.locator('#is-B').check();
  await page.locator('#settle').click();
  const status = await text(page, 'status');
  const told = `${x === 'B' ? 'Right' : 'Wrong'}: X was ${x}.`;
  tell('practice tells at once', status.includes(told) ? troubles : [`"${status}" in place of "${told}"`, ...troubles]);
  await context.close();
}

/** How the page looks before, during and after a test. */
async function looks(browser, window, scheme) {
  const where = `listening (${window.name}, ${scheme})`;
  const { context, page, troubles } = await open(browser, test, window, scheme, watch);
  const look = async (moment) => {
    tell(`${where} ${moment}: layout`, await page.evaluate(layoutFaults));
    tell(`${where} ${moment}: accessibility`, await accessibilityFaults(page));
    await page.waitForTimeout(100);
    await page.screenshot({ path: join(pictures, `${moment}-${window.name}-${scheme}.png`), fullPage: true });
  };
  await look('before');
  await page.locator('#begin').click();
  await page.keyboard.press('p');
  await page.keyboard.press('x');
  await page.keyboard.press('2');
  await look('during');
  for (let trial = 1; trial <= TRIALS; trial += 1) {
    await answerByKeys(page, await hidden(page));
  }
  await page.keyboard.press('p');
  const score = await text(page, 'score');
  tell(`${where} score`, score.startsWith(`${TRIALS} of ${TRIALS}`) ? [] : [`all were right, and it says "${score}"`]);
  await look('after');
  tell(`${where} console and requests`, troubles);
  await context.close();
}

/** A whole test in German: what the script says is said in it too, and fits. */
async function inGerman(browser) {
  const { context, page, troubles } = await open(browser, german, WINDOWS[0], 'light', watch);
  const faults = [];
  const look = async (moment) => {
    const all = await page.evaluate(() => document.body.innerText);
    const left = /\b(the|of|and|is|with|from|no|not|than|which|undefined)\b|%[s%]/.exec(all);
    faults.push(...(left ? [`${moment}: "${all.slice(Math.max(0, left.index - 40), left.index + 40)}"`] : []));
    faults.push(...(await page.evaluate(layoutFaults)), ...(await accessibilityFaults(page)));
  };
  await look('before');
  await page.locator('#begin').click();
  await page.keyboard.press('p');
  await look('during');
  for (let trial = 1; trial <= TRIALS; trial += 1) {
    await answerByKeys(page, await hidden(page));
  }
  await look('after');
  // by hand: one of 32 is 3.125 %, in three digits 3.13, half away from nothing
  const score = await text(page, 'score');
  if (!score.startsWith('5 von 5 richtig') || !/\b3,13 %/.test(score)) {
    faults.push(`the score is "${score}"`);
  }
  const csv = await downloaded(page, 'save-csv');
  if (!csv.text.startsWith('"round","counts"') || !csv.text.includes('"yes"')) {
    faults.push(`the answers are kept as ${csv.text.slice(0, 80)}`);
  }
  await page.screenshot({ path: join(pictures, 'german.png'), fullPage: true });
  tell('in German', [...faults, ...troubles]);
  await context.close();
}

/** Nothing in the page's text may say what X is or will be. */
function sourceFaults() {
  const source = readFileSync(test, 'utf8');
  const policy = /Content-Security-Policy" content="([^"]*)"/.exec(source)?.[1] ?? '';
  const faults = [];
  if (!policy.startsWith("default-src 'none'; script-src 'sha256-") || policy.includes('unsafe')) {
    faults.push(`the policy is ${policy}`);
  }
  if (/https?:|\bfetch\(|XMLHttpRequest|WebSocket|sendBeacon|\bimport\(/.test(source)) {
    faults.push('the page can ask for something');
  }
  return faults;
}

const browser = await launch();
try {
  tell('the source', sourceFaults());
  await checkParts(browser);
  await wholeTest(browser);
  await practise(browser);
  await inGerman(browser);
  for (const scheme of SCHEMES) {
    for (const window of [WINDOWS[0], WINDOWS[2]]) {
      await looks(browser, window, scheme);
    }
  }
} finally {
  await browser.close();
}
console.log(`Pictures of the listening page: ${pictures}`);
end();
