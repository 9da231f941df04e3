// Makes two stems of 24 bit out of a programme, and compares them with what came back of them.
// Usage: node stems.mjs make FOLDER PROGRAMME.wav | compare FOLDER RETURNS
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const SAMPLE = 3; // bytes
const STEMS = [
  { name: 'pair.wav', rate: 48000, channels: 2, seconds: 6 },
  { name: 'single.wav', rate: 44100, channels: 1, seconds: 5 },
];

const [what, folder, other] = process.argv.slice(2);

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

mkdirSync(folder, { recursive: true });
if (what === 'make') {
  make();
} else {
  compare();
}
