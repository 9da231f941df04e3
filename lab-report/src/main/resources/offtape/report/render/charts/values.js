/** The values behind a drawing, from the elements that stand in it for each curve. */
const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';

/** Whole numbers from their differences; five bits a letter, the sixth says that more follow. */
function unpack(text) {
  const values = [];
  let last = 0;
  let step = 0;
  let weight = 1;
  for (const letter of text) {
    const bits = LETTERS.indexOf(letter);
    step += (bits % 32) * weight;
    weight *= 32;
    if (bits < 32) {
      last += step % 2 ? -(step + 1) / 2 : step / 2;
      values.push(last);
      step = 0;
      weight = 1;
    }
  }
  return values;
}

/** Decimals of each point: one number for all, or runs such as "1x9 2x230". */
function decimalsOf(text, count) {
  return text.split(' ').flatMap((run) => {
    const [decimals, times] = run.split('x').map(Number);
    return Array(times || count).fill(decimals);
  });
}

/** An axis: its ends, its scale, and how a place on it is written. */
function makeAxis(text, decimalMark) {
  const [low, high, scale] = text.split(' ');
  const [min, max] = [Number(low), Number(high)];
  const isLog = scale === 'log';
  const write = (value, decimals) => {
    const plain = value.toFixed(Math.max(0, decimals)).replace('-', '−').replace('.', decimalMark);
    return min < 0 && !isLog && value > 0 ? `+${plain}` : plain;
  };
  return {
    isLog,
    min,
    max,
    fraction: (value) => (isLog ? Math.log(value / min) / Math.log(max / min) : (value - min) / (max - min)),
    write,
    /** From a place as it is packed: units of the last decimal, or the number of a three-digit number. */
    placeOf: (code) =>
      isLog ? ((((code % 900) + 900) % 900) + 100) * 10 ** (Math.floor(code / 900) - 2) : code / 10 ** Number(scale),
    writePlace: (place) => (isLog ? write(place, 2 - Math.floor(Math.log10(place) + 1e-9)) : write(place, Number(scale))),
  };
}

/** The curves of a drawing: names, places, values, decimals of each point. */
function curvesOf(svg, x) {
  let packed = '';
  return [...svg.querySelectorAll('.told')].map((element) => {
    const data = element.dataset;
    packed = data.x || packed;
    const codes = unpack(data.y);
    const decimals = decimalsOf(data.decimals, codes.length);
    const scale = 10 ** Math.max(0, ...decimals);
    const names = data.name.split('\n');
    const places = unpack(packed).map(x.placeOf);
    return {
      look: element.classList,
      points: codes.map((code, i) => ({
        name: names[i % names.length],
        x: places[i],
        y: code / scale,
        decimals: decimals[i],
      })),
    };
  });
}
