// Writes two small stereo WAV files that are alike but not equal, for the listening page. Usage: node sounds.js A B
import { writeFileSync } from 'node:fs';

const RATE = 48000;
const SECONDS = 3;

/** A tone a moment, with a beat; "bend" flattens its peaks. */
function sample(frame, channel, bend) {
  const time = frame / RATE;
  const beat = time % 0.5;
  const note = 220 * 2 ** ((Math.floor(time / 0.5) * 5 + channel) % 12 / 12);
  const plain = 0.5 * Math.exp(-6 * beat) * Math.sin(2 * Math.PI * note * time);
  return Math.tanh(bend * plain) / bend;
}

function wave(bend) {
  const frames = RATE * SECONDS;
  const bytes = Buffer.alloc(44 + frames * 4);
  bytes.write('RIFF', 0);
  bytes.writeUInt32LE(bytes.length - 8, 4);
  bytes.write('WAVEfmt ', 8);
  [[16, 4], [1, 2], [2, 2], [RATE, 4], [RATE * 4, 4], [4, 2], [16, 2]].reduce(
    (at, [value, size]) => bytes.writeUIntLE(value, at, size),
    16,
  );
  bytes.write('data', 36);
  bytes.writeUInt32LE(frames * 4, 40);
  for (let i = 0; i < frames; i += 1) {
    for (const channel of [0, 1]) {
      bytes.writeInt16LE(Math.round(32767 * sample(i, channel, bend)), 44 + 4 * i + 2 * channel);
    }
  }
  return bytes;
}

const [a, b] = process.argv.slice(2);
writeFileSync(a, wave(0.01));
writeFileSync(b, wave(1.5));
