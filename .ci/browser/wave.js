// Stereo sound as a WAV file of 16 bits.
import { writeFileSync } from 'node:fs';

export const RATE = 48000;

/** Writes so many frames; sample gives each one's amplitude on a channel, full scale is 1. */
export function writeWave(file, frames, sample) {
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
      bytes.writeInt16LE(Math.round(32767 * sample(i, channel)), 44 + 4 * i + 2 * channel);
    }
  }
  writeFileSync(file, bytes);
}
