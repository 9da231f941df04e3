/** One chart's values told by pointer and by keys, below it and to a screen reader. */
function makeReadout(svg, words, isShown) {
  const x = makeAxis(svg.dataset.x, words.decimal);
  const y = makeAxis(svg.dataset.y, words.decimal);
  const [xWords, yWords] = svg.dataset.words.split('\n');
  const curves = curvesOf(svg, x);
  const ground = svg.querySelector('.ground');
  const width = Number(ground.getAttribute('width'));
  const height = Number(ground.getAttribute('height'));
  const limit = (fraction) => Math.min(1, Math.max(0, fraction));
  const left = (point) => limit(x.fraction(point.x)) * width;
  const top = (point) => (1 - limit(y.isLog && point.y <= 0 ? 0 : y.fraction(point.y))) * height;

  const box = document.createElement('div');
  box.className = 'reader';
  box.tabIndex = 0;
  box.setAttribute('role', 'application');
  box.setAttribute('aria-labelledby', svg.getAttribute('aria-labelledby'));
  box.setAttribute('aria-describedby', 'reading-keys');
  const line = document.createElement('p');
  line.className = 'reading';
  const cursor = document.createElementNS(svg.namespaceURI, 'g');
  cursor.setAttribute('class', 'cursor');
  const hair = document.createElementNS(svg.namespaceURI, 'path');
  const dot = document.createElementNS(svg.namespaceURI, 'circle');
  dot.setAttribute('r', '6');
  cursor.append(hair, dot);
  // browsers show a title beside a pointer that rests, over what it reads
  const title = svg.querySelector('title');
  const name = document.createElementNS(svg.namespaceURI, 'desc');
  name.id = title.id;
  name.textContent = title.textContent;
  title.replaceWith(name);
  svg.replaceWith(box);
  box.append(svg);
  box.after(line);

  let at = null;
  let column = 0;

  /** A frequency from 1000 Hz up is told in kilohertz, with three decimals more. */
  function told(part, write, value) {
    const isKilo = value >= 1000 && part.endsWith('#\u00a0Hz');
    return isKilo ? part.replace('#\u00a0', `${write(value / 1000, 3)}\u00a0k`) : part.replace('#', write(value, 0));
  }

  /** What only ranks has no words. */
  function textOf(point) {
    const place = told(xWords, x.writePlace, point.x);
    const value = yWords && told(yWords, (number, more) => y.write(number, point.decimals + more), point.y);
    return (point.name ? `${point.name}: ` : '') + (value ? `${place}, ${value}` : place);
  }

  /** Shows a point, or nothing; only what the keyboard asked for is announced. */
  function show(place, isAnnounced) {
    at = place;
    line.setAttribute('aria-live', isAnnounced ? 'polite' : 'off');
    if (!at) {
      line.textContent = '';
      cursor.remove();
      return;
    }
    const curve = curves[at.curve];
    const point = curve.points[at.point];
    // on other curves the same place across is looked up, however far apart their points lie
    column = at.column ?? left(point);
    cursor.setAttribute('class', `cursor ${[...curve.look].filter((name) => name !== 'told').join(' ')}`);
    hair.setAttribute('d', `M${left(point)} 0V${height}`);
    dot.setAttribute('cx', left(point));
    dot.setAttribute('cy', top(point));
    ground.parentNode.append(cursor);
    line.textContent = textOf(point);
  }

  const shown = () => curves.map((_, i) => i).filter((i) => isShown(curves[i].look));

  /** The point of a curve that lies nearest to a place across. */
  function nearest(curve, across) {
    const off = curves[curve].points.map((point) => Math.abs(left(point) - across));
    return off.indexOf(Math.min(...off));
  }

  function read(event) {
    const frame = ground.getBoundingClientRect();
    const across = ((event.clientX - frame.left) / frame.width) * width;
    const down = ((event.clientY - frame.top) / frame.height) * height;
    const places = shown().map((curve) => ({ curve, point: nearest(curve, across) }));
    const off = places.map(({ curve, point }) => {
      const there = curves[curve].points[point];
      return Math.hypot(left(there) - across, top(there) - down);
    });
    show(places[off.indexOf(Math.min(...off))] || null, false);
  }

  /** Where a key leads, or undefined if it leads nowhere here. */
  function moved(key) {
    const all = shown();
    const here = at || { curve: all[0], point: 0 };
    const last = curves[here.curve].points.length - 1;
    const jump = Math.max(1, Math.round(last / 10));
    const along = (steps) => ({ curve: here.curve, point: Math.min(last, Math.max(0, here.point + (at ? steps : 0))) });
    const across = (steps) => {
      const curve = all[(all.indexOf(here.curve) + (at ? steps : 0) + all.length) % all.length];
      return { curve, point: nearest(curve, at ? column : 0), column: at ? column : 0 };
    };
    switch (key) {
      case 'ArrowRight':
        return along(1);
      case 'ArrowLeft':
        return along(-1);
      case 'PageUp':
        return along(jump);
      case 'PageDown':
        return along(-jump);
      case 'Home':
        return { curve: here.curve, point: 0 };
      case 'End':
        return { curve: here.curve, point: last };
      case 'ArrowDown':
        return across(1);
      case 'ArrowUp':
        return across(-1);
      case 'Escape':
        return null;
      default:
        return undefined;
    }
  }

  box.addEventListener('keydown', (event) => {
    const isOurs = event.target === box && !event.ctrlKey && !event.altKey && !event.metaKey && shown().length > 0;
    const place = isOurs ? moved(event.key) : undefined;
    if (place !== undefined) {
      event.preventDefault();
      show(place, true);
    }
  });
  svg.addEventListener('pointermove', read);
  svg.addEventListener('pointerdown', read);
  svg.addEventListener('pointerleave', (event) => {
    if (event.pointerType === 'mouse') {
      show(null, false);
    }
  });
  box.addEventListener('blur', () => show(null, false));
  return { box, refresh: () => show(null, false) };
}
