/** A choice above a comparison: both sides, or one of them; paper always shows both. */
function makeSides(svg, words, changed) {
  const [second, first] = svg.dataset.sides.split('\n');
  const group = document.createElement('fieldset');
  group.className = 'sides';
  const legend = document.createElement('legend');
  legend.textContent = words.show;
  group.append(legend);
  [
    ['second', second],
    ['first', first],
    ['', words.both],
  ].forEach(([side, name]) => {
    const label = document.createElement('label');
    const button = document.createElement('input');
    button.type = 'radio';
    button.name = svg.getAttribute('aria-labelledby').replace('title', 'sides');
    button.checked = side === '';
    button.addEventListener('change', () => {
      svg.dataset.only = side;
      changed();
    });
    label.append(button, ` ${name}`);
    group.append(label);
  });
  return group;
}

/** Whether curves of such a look are to be seen; what belongs to neither side always is. */
function isOnSide(svg, look) {
  const isChannel = look.contains('left') || look.contains('right');
  return !svg.dataset.only || !isChannel || look.contains('second') === (svg.dataset.only === 'second');
}
