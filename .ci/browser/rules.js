// Rules that run inside a page. Each returns a list of sentences, one for each fault.

/** Faults of layout: what is wider than the page, empty, cut off or printed over something else. */
export function layoutFaults() {
  const faults = [];
  const root = document.documentElement;
  if (root.scrollWidth > root.clientWidth) {
    faults.push(`the page is ${root.scrollWidth} px wide in a window of ${root.clientWidth} px`);
  }
  const charts = [...document.querySelectorAll('svg')].filter((svg) => !svg.closest('details:not([open])'));
  for (const svg of charts) {
    const name = svg.getAttribute('aria-labelledby') || svg.getAttribute('class') || 'svg';
    const frame = svg.getBoundingClientRect();
    if (frame.width < 1 || frame.height < 1 || !svg.checkVisibility()) {
      faults.push(`${name} is not visible`);
      continue;
    }
    const labels = [...svg.querySelectorAll('text')]
      .filter((label) => label.textContent.trim() !== '' && label.checkVisibility())
      .map((label) => ({ text: label.textContent.trim(), box: label.getBoundingClientRect() }));
    for (const { text, box } of labels) {
      if (box.width < 1 || box.height < 1) {
        faults.push(`${name}: the label "${text}" has no size`);
      }
      // Half a pixel for rounding of glyph boxes.
      if (
        box.left < frame.left - 0.5 ||
        box.right > frame.right + 0.5 ||
        box.top < frame.top - 0.5 ||
        box.bottom > frame.bottom + 0.5
      ) {
        faults.push(`${name}: the label "${text}" is cut off`);
      }
    }
    labels.forEach((one, i) => {
      for (const other of labels.slice(i + 1)) {
        const across = Math.min(one.box.right, other.box.right) - Math.max(one.box.left, other.box.left);
        // Digits and capitals fill the middle 63 % of a line's box (0.73 em of 1.16 em in common faces), so boxes
        // that share less than the rest show no letters touching.
        const down = Math.min(one.box.bottom, other.box.bottom) - Math.max(one.box.top, other.box.top);
        const slack = Math.min(one.box.height, other.box.height) * 0.37;
        if (across > 0.5 && down > slack) {
          faults.push(`${name}: the labels "${one.text}" and "${other.text}" overlap`);
        }
      }
    });
  }
  return faults;
}

/** Faults of structure: title, language, headings, tables, names of charts. */
export function structureFaults() {
  const faults = [];
  if (document.title.trim() === '') {
    faults.push('the page has no title');
  }
  if (!document.documentElement.lang) {
    faults.push('the page names no language');
  }
  const levels = [...document.querySelectorAll('h1, h2, h3, h4, h5, h6')].map((h) => Number(h.tagName[1]));
  if (levels[0] !== 1 || levels.filter((level) => level === 1).length !== 1) {
    faults.push(`the headings do not start with a single h1: ${levels.join(' ')}`);
  }
  levels.slice(1).forEach((level, i) => {
    if (level > levels[i] + 1) {
      faults.push(`a heading of level ${level} follows one of level ${levels[i]}`);
    }
  });
  for (const table of document.querySelectorAll('table')) {
    const caption = table.querySelector(':scope > caption')?.textContent.trim();
    if (!caption) {
      faults.push(`a table has no caption: ${table.textContent.trim().slice(0, 40)}`);
    }
    const heads = [...table.querySelectorAll('th')];
    if (heads.length === 0 || heads.some((head) => !['row', 'col', 'rowgroup', 'colgroup'].includes(head.scope))) {
      faults.push(`the table "${caption}" has heads without scope`);
    }
  }
  for (const svg of document.querySelectorAll('svg[role=img]')) {
    for (const key of ['aria-labelledby', 'aria-describedby']) {
      const text = document.getElementById(svg.getAttribute(key) ?? '')?.textContent.trim();
      if (!text) {
        faults.push(`a chart's ${key} leads to no text`);
      }
    }
  }
  if (document.querySelectorAll('svg[role=img]').length === 0) {
    faults.push('the page has no chart');
  }
  return faults;
}

/** Faults on paper: a dark sheet, or tables that stay folded away. */
export function paperFaults() {
  const faults = [];
  const sheet = getComputedStyle(document.querySelector('main')).backgroundColor;
  const [red, green, blue] = sheet.match(/[\d.]+/g).map(Number);
  if (!sheet.endsWith(', 0)') && Math.min(red, green, blue) < 230) {
    faults.push(`the sheet is ${sheet}, not light`);
  }
  const ink = getComputedStyle(document.body).color;
  if (Math.max(...ink.match(/[\d.]+/g).slice(0, 3).map(Number)) > 90) {
    faults.push(`the ink is ${ink}, not dark`);
  }
  for (const table of document.querySelectorAll('table')) {
    if (table.getBoundingClientRect().height < 1 || !table.checkVisibility()) {
      faults.push(`the table "${table.caption?.textContent.trim()}" is not printed`);
    }
  }
  return faults;
}
