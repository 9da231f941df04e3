// Makes two stems of 24 bit out of a programme, and compares them with what came back of them.
// Usage: node stems.mjs make FOLDER PROGRAMME.wav | compare FOLDER RETURNS | null FOLDER RETURNS DB
// "null" allows the first of them a difference of so many decibels re the stem, and wants the balance of machine.mjs in the log.
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const SAMPLE = 3; // bytes
const STEMS = [
  { name: 'pair.wav', rate: 48000, channels: 2, seconds: 6 },
  { name: 'single.wav', rate: 44100, channels: 1, seconds: 5 },
];

const [what, folder, other, limitDb] = process.argv.slice(2);

function sound(file) {
  const bytes = readFileSync(file);
  const at = bytes.indexOf('data');
  return bytes.subarray(at + 8, at + 8 + bytes.readUInt32LE(at + 4));
}

function header({ rate, channels }, length) {
  const head = Buffer.alloc(44);
  head.write('RIFF', 0);
  head.writeUInt32LE(36 + length, 4);
  head.write('WAVEfmt ', 8);
  head.writeUInt32LE(16, 16);
  head.writeUInt16LE(1, 20);
  head.writeUInt16LE(channels, 22);
  head.writeUInt32LE(rate, 24);
  head.writeUInt32LE(rate * channels * SAMPLE, 28);
  head.writeUInt16LE(channels * SAMPLE, 32);
  head.writeUInt16LE(8 * SAMPLE, 34);
  head.write('data', 36);
  head.writeUInt32LE(length, 40);
  return head;
}

function make() {
  // the programme's frames in their order are as good a sound for one channel as for two
  const programme = sound(other).subarray(48000 * 2 * SAMPLE);
  for (const stem of STEMS) {
    const data = programme.subarray(0, stem.seconds * stem.rate * stem.channels * SAMPLE);
    writeFileSync(join(folder, stem.name), Buffer.concat([header(stem, data.length), data]));
  }
  const session = { format: 'offtape-results', version: 1, session: { referenceDbfs: -18 }, distortion: [] };
  mkdirSync(join(folder, 'session'));
  writeFileSync(join(folder, 'session', 'results.json'), JSON.stringify(session));
}

function compare() {
  const faults = STEMS.filter(({ name }) => !sound(join(folder, name)).equals(sound(join(other, name))));
  faults.forEach(({ name }) => console.log(`    ${name} did not come back as it was`));
  process.exit(faults.length === 0 ? 0 : 1);
}

function values(data) {
  return Array.from({ length: data.length / SAMPLE }, (_, i) => data.readIntLE(SAMPLE * i, SAMPLE));
}

function differenceDb(name) {
  const [sent, back] = [folder, other].map((place) => values(sound(join(place, name))));
  const power = (x) => x.reduce((sum, value) => sum + value * value, 0);
  return sent.length === back.length ? 10 * Math.log10(power(sent.map((v, i) => v - back[i])) / power(sent)) : Infinity;
}

function nulled() {
  const log = JSON.parse(readFileSync(join(other, 'transfer.json'), 'utf8'));
  const faults = [];
  const [{ name }] = STEMS;
  const db = differenceDb(name);
  if (!(db < Number(limitDb))) faults.push(`${name} comes back ${db.toFixed(1)} dB from what it was`);
  const path = log.stems.find(({ file }) => file === name)?.path;
  if (!(path?.delayMs > 157)) faults.push(`${name} is ${path?.delayMs} ms late`);
  [0, -0.4].forEach((gain, c) => {
    const found = path?.channels[c]?.gainDb;
    if (!(Math.abs(found - gain) < 0.05)) faults.push(`${name}: channel ${c} has a gain of ${found} dB, not ${gain}`);
  });
  faults.forEach((fault) => console.log(`    ${fault}`));
  process.exit(faults.length === 0 ? 0 : 1);
}

mkdirSync(folder, { recursive: true });
if (what === 'make') {
  make();
} else if (what === 'null') {
  nulled();
} else {
  compare();
}
