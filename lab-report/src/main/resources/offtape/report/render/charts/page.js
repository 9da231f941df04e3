const words = document.currentScript.dataset;
const keys = document.createElement('p');
keys.id = 'reading-keys';
keys.hidden = true;
keys.textContent = words.keys;
document.currentScript.before(keys);

for (const svg of document.querySelectorAll('svg.chart')) {
  if (svg.querySelector('.told')) {
    const readout = makeReadout(svg, words, (look) => isOnSide(svg, look));
    if (svg.dataset.sides) {
      readout.box.before(makeSides(svg, words, readout.refresh));
    }
  }
}
