// The choice between both sides of a comparison, or both: by keys, on the screen and on paper.
import { join } from 'node:path';
import { WINDOWS, open } from './bench.js';

/** Which of the two looks has a curve, a label or a leader that is seen in the first chart. */
function seenSides() {
  const svg = document.querySelector('svg[data-sides]');
  const seen = (selector) =>
    [...svg.querySelectorAll(selector)].filter((part) => getComputedStyle(part).visibility === 'visible').length;
  const channels = ':is(.left, .right):not(.told)';
  return {
    second: seen(`${channels}.second`),
    first: seen(`${channels}:not(.second)`),
  };
}

const words = ({ second, first }) => `${second > 0 ? 'second' : '-'} ${first > 0 ? 'first' : '-'}`;

async function expect(page, wanted, what, faults) {
  const found = words(await page.evaluate(seenSides));
  if (found !== wanted) {
    faults.push(`${what}: ${found} is seen instead of ${wanted}`);
  }
}

/** Names of the curves that the keys lead through. */
async function curvesByKeys(page) {
  await page.locator('.reader').first().focus();
  const names = new Set();
  for (let i = 0; i < 12; i += 1) {
    await page.keyboard.press('ArrowDown');
    names.add((await page.locator('.reading').first().textContent()).split(':')[0]);
  }
  return [...names].sort().join(' | ');
}

export async function checkSides(browser, demo, tell) {
  const { context, page, troubles } = await open(browser, join(demo, 'before-and-after.html'), WINDOWS[2], 'light');
  const faults = [];
  await expect(page, 'second first', 'at first', faults);
  const both = await curvesByKeys(page);
  if (both !== 'Left after | Left before | Right after | Right before') {
    faults.push(`with both sides the keys lead through ${both}`);
  }
  // backwards from the chart lies its choice, of which the last is chosen
  await page.keyboard.press('Shift+Tab');
  await page.keyboard.press('ArrowUp');
  await expect(page, '- first', 'one up from both', faults);
  const after = await curvesByKeys(page);
  if (after !== 'Left after | Right after') {
    faults.push(`with the second session the keys lead through ${after}`);
  }
  await page.keyboard.press('Shift+Tab');
  await page.keyboard.press('ArrowUp');
  await expect(page, 'second -', 'two up from both', faults);
  await page.emulateMedia({ media: 'print' });
  await expect(page, 'second first', 'on paper', faults);
  if (await page.locator('.sides').first().isVisible()) {
    faults.push('the choice is printed');
  }
  await page.emulateMedia({ media: 'screen' });
  await page.getByRole('radio', { name: 'Both' }).first().check();
  await expect(page, 'second first', 'both again', faults);
  const choices = await page.locator('.sides').first().innerText();
  if (choices.replace(/\s+/g, ' ').trim() !== 'Show Before After Both') {
    faults.push(`the choice reads "${choices}"`);
  }
  tell('both sides of a comparison', [...faults, ...troubles]);
  await context.close();
}
