// The parts of the listening page by themselves: what a switch does to the samples, the reckoning, the tables. Run by
// listen.js inside a page of the browser; each function returns the faults it found.

/** What the page's scripts are, as one expression that gives their functions. */
export function partsOf(sources) {
  const names = ['chanceOf', 'fewestRight', 'unpack', 'bytesOf', 'loopBuffer', 'makeDesk', 'makePlayer', 'cell', 'answersAsCsv'];
  return `(() => { ${sources.join('\n')}\nreturn { ${names.join(', ')} }; })()`;
}

/** The chances against a table that is computed elsewhere; rows of trials, right, chance. */
export function chanceFaults({ parts, rows }) {
  const { chanceOf, fewestRight } = globalThis.eval(parts);
  const faults = rows
    .filter(([trials, right, chance]) => Math.abs(chanceOf(right, trials).chance / chance - 1) > 1e-12)
    .map((row) => `the chance of ${row.join(', ')} is reckoned as ${chanceOf(row[1], row[0]).chance}`);
  // by hand: 1820 + 560 + 120 + 16 + 1 of 65536
  const { ways, of } = chanceOf(12, 16);
  if (ways !== 2517n || of !== 65536n) {
    faults.push(`12 of 16 are ${ways} of ${of} ways`);
  }
  if (fewestRight(16, 0.05) !== 12 || fewestRight(5, 0.05) !== 5 || fewestRight(4, 0.05) !== null) {
    faults.push('the fewest right answers are wrong');
  }
  return faults;
}

/** Cells that a table programme would run, and samples at the ends of their range. */
export function textFaults({ parts }) {
  const { cell, unpack } = globalThis.eval(parts);
  const faults = [];
  for (const text of ['=1+1', '+1', '-1', '@x', '\t=1', ' =1', '\uff1d1+1']) {
    if (!cell(text).startsWith('"\'')) {
      faults.push(`the cell ${JSON.stringify(text)} stays a formula`);
    }
  }
  if (cell('a;=1\t"-2') !== `"a;'=1\t""'-2"`) {
    faults.push(`a formula behind another separator is ${cell('a;=1\t"-2')}`);
  }
  if (cell('a "b", c') !== '"a ""b"", c"') {
    faults.push(`a quoted cell is ${cell('a "b", c')}`);
  }
  const [samples] = unpack(new Uint8Array([0xff, 0xff, 0x7f, 0, 0, 0x80, 1, 0, 0, 0xff, 0xff, 0xff]), 1);
  const expected = [8388607, -8388608, 1, -1].map((code) => code / 8388608);
  if (samples.join() !== expected.join()) {
    faults.push(`samples are unpacked as ${samples.join()}`);
  }
  return faults;
}

/** What switching does, rendered sample by sample with the page's own desk. */
export async function switchFaults({ parts }) {
  const { makeDesk } = globalThis.eval(parts);
  const RATE = 48000;
  const FRAMES = RATE / 2;
  const SWITCH = 0.01 * RATE;
  const faults = [];

  async function rendered(a, b, dips, switches) {
    const context = new OfflineAudioContext(1, FRAMES, RATE);
    const desk = makeDesk(context, dips);
    for (const [name, law] of [['A', a], ['B', b]]) {
      const source = context.createBufferSource();
      source.buffer = context.createBuffer(1, FRAMES, RATE);
      source.buffer.copyToChannel(Float32Array.from({ length: FRAMES }, (_, i) => law(i)), 0);
      source.connect(desk.input(name));
      source.start(0);
    }
    switches.forEach(([frame, name]) => desk.select(name, frame / RATE));
    return (await context.startRendering()).getChannelData(0);
  }

  function expectAll(what, out, law, within) {
    let worst = 0;
    let at = 0;
    out.forEach((x, i) => {
      if (!(Math.abs(x - law(i)) <= worst)) {
        worst = Math.abs(x - law(i));
        at = i;
      }
    });
    if (!(worst <= within)) {
      faults.push(`${what}: ${out[at]} in place of ${law(at)} at frame ${at}`);
    }
  }

  const clock = (i) => (i % 4800) / 4800;
  // equal sounds: no switch may leave a trace, and each sample has to be that of its own moment
  const often = [[3001, 'B'], [3100, 'A'], [9000, 'B'], [9030, 'A'], [9055, 'B'], [9057, 'A'], [9057, 'B'], [20000, 'A']];
  expectAll('equal sounds', await rendered(clock, clock, false, often), clock, 2e-6);

  // unlike ones: a straight blend from the one to the other and nothing else
  const one = () => 1;
  const half = () => 0.5;
  const ramp = (from, to, start) => (i) => from + (to - from) * Math.min(1, Math.max(0, (i - start) / SWITCH));
  expectAll('a blend', await rendered(one, half, false, [[4800, 'B']]), ramp(1, 0.5, 4800), 1e-5);
  const back = await rendered(one, () => 0, false, [[4800, 'B'], [4800 + SWITCH / 2, 'A']]);
  const there = ramp(1, 0, 4800);
  const home = ramp(0.5, 1, 4800 + SWITCH / 2);
  expectAll('a blend turned back', back, (i) => (i < 4800 + SWITCH / 2 ? there(i) : home(i)), 1e-5);

  // dips: alike whether X is what was heard before or the other one
  const same = await rendered(one, one, true, [[4800, 'A']]);
  const other = await rendered(one, one, true, [[4800, 'B']]);
  expectAll('dips to the same and to the other', same, (i) => other[i], 0);
  const vee = (i) => Math.min(1, Math.abs(i - 4800 - SWITCH / 2) / (SWITCH / 2));
  expectAll('a dip', same, vee, 1e-5);
  const inverted = await rendered(clock, (i) => -clock(i), true, [[4800, 'B']]);
  expectAll('a dip into an inverted sound', inverted, (i) => vee(i) * (i < 4800 + SWITCH / 2 ? 1 : -1) * clock(i), 2e-5);
  return faults;
}

/** Both sounds of the player start at one moment and place and stay together over seams and switches. */
export async function playerFaults({ parts }) {
  const { makePlayer } = globalThis.eval(parts);
  const RATE = 44100;
  const FRAMES = RATE * 2;
  const faults = [];
  const context = new OfflineAudioContext(1, FRAMES, RATE);
  const sound = [Float32Array.from({ length: RATE }, (_, i) => Math.sin((2 * Math.PI * 441 * i) / RATE))];
  const player = makePlayer(context, { A: sound, B: sound }, RATE, false);
  player.setLevel(1);
  if (player.repeat(0, 100) || !player.repeat(4410, 30870)) {
    faults.push('parts to repeat are not checked');
  }
  player.start();
  player.hear('B');
  const out = (await context.startRendering()).getChannelData(0);
  const start = Math.ceil(0.06 * RATE);
  const loop = 30870 - 4410;
  let worst = 0;
  for (let i = start + 2000; i < FRAMES; i += 1) {
    const at = (i - start) % loop;
    const fade = Math.min(at, loop - 1 - at);
    if (fade > 441) {
      worst = Math.max(worst, Math.abs(out[i] - sound[0][4410 + at]));
    } else if (fade < 2) {
      worst = Math.max(worst, Math.abs(out[i]) - 0.001);
    }
  }
  if (!(worst < 1e-5)) {
    faults.push(`a loop is off by ${worst}`);
  }
  return faults;
}
