// What became of the charts in a PDF: each has to lie whole on one sheet of A4.
import { execFileSync } from 'node:child_process';

const A4_POINTS = [595, 842];

/** The text of each sheet in the order in which it was drawn, without white space. */
function sheets(path) {
  const text = execFileSync('pdftotext', ['-raw', path, '-'], { encoding: 'utf8', maxBuffer: 1 << 26 });
  return text.split('\f').map((sheet) => sheet.replace(/\s/g, ''));
}

export async function pagesFaults(page, path) {
  const faults = [];
  const size = /Page size:\s+([\d.]+) x ([\d.]+)/.exec(execFileSync('pdfinfo', [path], { encoding: 'utf8' }));
  if (!size || A4_POINTS.some((points, i) => Math.abs(Number(size[i + 1]) - points) > 1)) {
    faults.push(`the sheets are ${size?.[0]}`);
  }
  // Ticks and names of the axes, from the foot of a chart to its top, follow each other; a label is drawn with its rim.
  const charts = await page.evaluate(() => {
    const texts = (svg, selector) =>
      [...svg.querySelectorAll(selector)].map((text) => text.textContent.replace(/\s/g, ''));
    return [...document.querySelectorAll('svg.chart')].map((svg) => ({
      name: document.getElementById(svg.getAttribute('aria-labelledby')).textContent,
      frame: texts(svg, '.tick, .axis').join(''),
      labels: texts(svg, 'text.label'),
    }));
  });
  const printed = sheets(path);
  for (const { name, frame, labels } of charts) {
    const isWhole = (sheet) => sheet.includes(frame) && labels.every((label) => sheet.includes(label));
    if (frame === '' || !printed.some(isWhole)) {
      faults.push(`the chart "${name}" does not lie whole on one sheet`);
    }
  }
  return faults;
}
