// What is read off the charts by pointer, keys and touch, against the figures in results.json.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { WINDOWS, accessibilityFaults, open } from './bench.js';

/** Decimals that an uncertainty allows: its second digit counts if it begins with 1 or 2 and that digit is not 0. */
function decimalsOf(uncertainty, most) {
  const [digits, exponent] = uncertainty.toExponential(1).split('e');
  const places = /^[12]\.[1-9]/.test(digits) ? 1 - Number(exponent) : -Number(uncertainty.toExponential(0).split('e')[1]);
  return Math.min(places, most);
}

/** A number as a reader sees it. toFixed rounds the binary value, which halves are hardly ever. */
function number(value, decimals, isSigned) {
  const text = Number(value.toFixed(decimals)).toFixed(decimals).replace('-', '−');
  return isSigned && !text.startsWith('−') && /[1-9]/.test(text) ? `+${text}` : text;
}

function frequency(hertz) {
  const [value, unit] = Number(hertz.toPrecision(3)) >= 1000 ? [hertz / 1000, 'kHz'] : [hertz, 'Hz'];
  return `${value.toPrecision(3)} ${unit}`;
}

const plain = (text) => text.replaceAll('\u00a0', ' ');

/** The reader of the chart with such a title, and the line below it. */
function chart(page, title) {
  const box = page.locator('.reader').filter({ has: page.locator('svg > desc', { hasText: new RegExp(`^${title}`) }) });
  return { box, line: box.locator('xpath=following-sibling::p[1]') };
}

/** All points of the curve that is read, from its start. */
async function walk(page, { box, line }) {
  await box.focus();
  await page.keyboard.press('Home');
  const texts = [plain(await line.textContent())];
  for (;;) {
    await page.keyboard.press('ArrowRight');
    const text = plain(await line.textContent());
    if (text === texts.at(-1)) {
      return texts;
    }
    texts.push(text);
  }
}

function unlike(found, wanted, what) {
  const faults = wanted
    .map((text, i) => (found[i] === text ? null : `${what}, point ${i}: "${found[i]}" instead of "${text}"`))
    .filter(Boolean);
  return found.length === wanted.length ? faults : [`${what}: ${found.length} points instead of ${wanted.length}`, ...faults];
}

/** Frequency and level: every point of every curve of the response. */
async function response(page, results) {
  const place = chart(page, 'Frequency response of both channels');
  const faults = [];
  const name = { left: 'Left', right: 'Right' };
  await place.box.focus();
  for (const curve of results.response) {
    const wanted = curve.frequencyHz.map(
      (hertz, i) =>
        `${name[curve.channel]} at ${number(curve.levelDb, 0, false)} dB: ${frequency(hertz)}, ` +
        `level ${number(curve.magnitudeDb[i], decimalsOf(curve.uncertaintyDb[i], 2), true)} dB re 1 kHz`,
    );
    faults.push(...unlike(await walk(page, place), wanted, `response ${curve.channel} ${curve.levelDb} dB`));
    await page.keyboard.press('ArrowDown');
  }
  return faults;
}

/** Level and K3: the fitted curve, and the steps beyond its end. */
async function distortion(page, results) {
  const place = chart(page, 'Third harmonic');
  const left = results.distortion
    .filter((ladder) => ladder.channel === 'left')
    .reduce((one, other) => (other.frequencyHz < one.frequencyHz ? other : one));
  const { recordLevelDb, value, uncertainty } = left.k3Curve;
  const wanted = recordLevelDb.map(
    (level, i) =>
      `Left: record level ${number(level, 1, true)} dB re reference, ` +
      `K3 ${number(value[i], decimalsOf(uncertainty[i], 4), false)} %`,
  );
  const found = await walk(page, place);
  return unlike(found.slice(0, wanted.length), wanted, 'K3 of the left channel');
}

/** Seconds and percent. */
async function wow(page, results) {
  const { seconds, weightedPeakPercent } = results.speed.readings;
  const decimals = decimalsOf(results.speed.weightedPeak.uncertainty, 4);
  const wanted = seconds.map(
    (time, i) => `${number(time, 1, false)} s, weighted peak ${number(weightedPeakPercent[i], decimals, false)} %`,
  );
  const found = await walk(page, chart(page, 'Wow and flutter over time'));
  return unlike(found, wanted, 'weighted reading');
}

/** Where a frequency lies on the screen by the ticks at 100 Hz and 10 kHz, and the middle of the plot. */
async function placeOf(box, hertz) {
  const [low, high] = await Promise.all(
    ['100', '10k'].map((text) => box.locator('text.tick.x').getByText(text, { exact: true }).boundingBox()),
  );
  const [from, to] = [low.x + low.width / 2, high.x + high.width / 2];
  const ground = await box.locator('rect.ground').boundingBox();
  return {
    x: from + ((to - from) * Math.log10(hertz / 100)) / 2,
    // no label stands there, and above all curves the pointer is nearest to the highest
    y: ground.y + ground.height / 2,
  };
}

function nearest(list, wanted) {
  const off = list.map((value) => Math.abs(Math.log(value / wanted)));
  return list[off.indexOf(Math.min(...off))];
}

async function byPointer(page, results) {
  const { box, line } = chart(page, 'Frequency response of both channels');
  const faults = [];
  await box.scrollIntoViewIfNeeded();
  const hertz = results.response[0].frequencyHz;
  for (const wanted of [40, 315, 1000, 6300]) {
    const { x, y } = await placeOf(box, wanted);
    await page.mouse.move(x, y);
    const text = plain(await line.textContent());
    const point = frequency(nearest(hertz, wanted));
    const isMark = /^[LR] /.test(text);
    if (!isMark && !text.includes(`: ${point}, level `)) {
      faults.push(`the pointer at ${wanted} Hz reads "${text}", and the nearest point is at ${point}`);
    }
    if ((await line.getAttribute('aria-live')) !== 'off') {
      faults.push('what the pointer reads is announced');
    }
  }
  await page.mouse.move(2, 2);
  if ((await line.textContent()) !== '') {
    faults.push('the reading stays when the pointer leaves');
  }
  return faults;
}

async function byKeys(page) {
  const { box, line } = chart(page, 'Frequency response of both channels');
  const faults = [];
  await box.focus();
  const keys = await box.evaluate((element) => document.getElementById(element.getAttribute('aria-describedby')).textContent);
  if (!keys.includes('Escape')) {
    faults.push('the keys are not told');
  }
  await page.keyboard.press('End');
  const last = await line.textContent();
  await page.keyboard.press('ArrowUp');
  await page.keyboard.press('ArrowDown');
  if ((await line.textContent()) !== last || last === '') {
    faults.push(`up and down lead from "${last}" to "${await line.textContent()}"`);
  }
  if ((await line.getAttribute('aria-live')) !== 'polite') {
    faults.push('what the keys read is not announced politely');
  }
  const outline = await box.evaluate((element) => getComputedStyle(element).outlineStyle);
  if (outline !== 'solid') {
    faults.push(`the chart that has the focus has an outline that is ${outline}`);
  }
  faults.push(...(await accessibilityFaults(page)));
  await page.keyboard.press('Escape');
  if ((await line.textContent()) !== '' || (await page.locator('.cursor').count()) > 0) {
    faults.push('Escape closes nothing');
  }
  await page.keyboard.press('Home');
  await page.keyboard.press('Tab');
  if ((await line.textContent()) !== '') {
    faults.push('the reading stays when the focus leaves');
  }
  return faults;
}

async function byTouch(browser, file) {
  const { context, page, troubles } = await open(browser, file, WINDOWS[0], 'light');
  const { box, line } = chart(page, 'Third harmonic');
  await box.scrollIntoViewIfNeeded();
  const ground = await box.locator('rect.ground').boundingBox();
  await page.touchscreen.tap(ground.x + ground.width * 0.8, ground.y + ground.height / 2);
  const text = plain(await line.textContent());
  await context.close();
  return /^(Left|Right): record level \+\d+\.\d dB re reference, K3 \d/.test(text)
    ? troubles
    : [`a touch reads "${text}"`, ...troubles];
}

/** The first stop of the Tab key leads past all that comes before the contents. */
async function skipping(page) {
  await page.keyboard.press('Tab');
  const isSeen = await page.evaluate(() => document.activeElement.getBoundingClientRect().top >= 0);
  await page.keyboard.press('Enter');
  const at = await page.evaluate(() => document.activeElement.id);
  return isSeen && at === 'main' ? [] : [`the first link is ${isSeen ? '' : 'not '}seen and leads to "${at}"`];
}

export async function checkReadings(browser, demo, tell) {
  const file = join(demo, 'before', 'report.html');
  const results = JSON.parse(readFileSync(join(demo, 'before', 'results.json'), 'utf8'));
  const { context, page, troubles } = await open(browser, file, WINDOWS[2], 'light');
  tell('skipping to the contents', await skipping(page));
  tell('reading the response', await response(page, results));
  tell('reading K3', await distortion(page, results));
  tell('reading wow and flutter', await wow(page, results));
  tell('reading by pointer', await byPointer(page, results));
  tell('reading by keys', await byKeys(page));
  tell('reading: console and requests', troubles);
  await context.close();
  tell('reading by touch', await byTouch(browser, file));
}
