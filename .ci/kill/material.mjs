// Makes what the trial with killed commands works on, out of the short programme: a programme of its first seconds with
// two returns that differ in every figure, a programme of a moment, two stems in two versions, a session of a level.
// Usage: node material.mjs SHORT-PROGRAMME-FOLDER FOLDER
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const RATE = 48000;
const FRAME = 6; // bytes: two channels of 24 bits
const LARGEST = 8388607;

const [source, folder] = process.argv.slice(2);
const sheet = JSON.parse(readFileSync(join(source, 'programme.json'), 'utf8'));
const bytes = readFileSync(join(source, 'programme.wav'));
const sound = bytes.subarray(bytes.indexOf('data') + 8);
const from = (cue) => sheet.cues.find(({ id }) => id === cue).startFrame;

function wave(file, data) {
  const head = Buffer.alloc(44);
  head.write('RIFF', 0);
  head.writeUInt32LE(36 + data.length, 4);
  head.write('WAVEfmt ', 8);
  [[16, 4], [1, 2], [2, 2], [RATE, 4], [RATE * FRAME, 4], [FRAME, 2], [24, 2]].reduce(
    (at, [value, size]) => head.writeUIntLE(value, at, size),
    16,
  );
  head.write('data', 36);
  head.writeUInt32LE(data.length, 40);
  writeFileSync(file, Buffer.concat([head, data]));
}

const part = (start, end) => sound.subarray(start * FRAME, end * FRAME);

function programme(name, frames) {
  mkdirSync(join(folder, name));
  const cues = sheet.cues.filter(({ startFrame, frames: length }) => startFrame + length <= frames);
  writeFileSync(join(folder, name, 'programme.json'), JSON.stringify({ ...sheet, frames, cues }));
  wave(join(folder, name, 'programme.wav'), part(0, frames));
}

// A machine that is somewhat quiet and hisses, by a small generator of random numbers of which any will do.
function hissing(data) {
  const out = Buffer.from(data);
  let state = 1;
  for (let at = 0; at < out.length; at += 3) {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    const value = 0.9 * out.readIntLE(at, 3) + 3000 * (state / 2 ** 31 - 1);
    out.writeIntLE(Math.max(-LARGEST, Math.min(LARGEST, Math.round(value))), at, 3);
  }
  return out;
}

mkdirSync(folder, { recursive: true });
const end = from('sweep-reference') - RATE / 10;
programme('programme', end);
programme('moment', from('reference') + RATE);
wave(join(folder, 'A.wav'), part(0, end));
wave(join(folder, 'B.wav'), hissing(part(0, end)));
for (const [version, cue] of [['A', 'sweep-low'], ['B', 'speed']]) {
  mkdirSync(join(folder, `stems-${version}`));
  ['one.wav', 'two.wav'].forEach((name, n) => {
    const start = from(cue) + (1 + n) * RATE;
    wave(join(folder, `stems-${version}`, name), part(start, start + RATE / 2));
  });
}
mkdirSync(join(folder, 'level'));
writeFileSync(
  join(folder, 'level', 'results.json'),
  JSON.stringify({ format: 'offtape-results', version: 1, session: { referenceDbfs: sheet.referenceDbfs }, distortion: [] }),
);
