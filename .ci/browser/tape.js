// Writes what replaying a calibration tape may give: steady tones, the highs somewhat weaker on the right channel.
// Usage: node tape.js FILE
import { RATE, writeWave } from './wave.js';

const TONES = [1000, 31.5, 63, 125, 250, 500, 2000, 4000, 8000, 10000, 12500, 16000];
const SECONDS = 3;
const GAP = 0.5;

function sample(frame, channel) {
  const tone = Math.floor(frame / RATE / (SECONDS + GAP));
  const within = frame / RATE - tone * (SECONDS + GAP);
  const hertz = TONES[tone];
  const lossDb = (1 + channel) * (hertz / 16000) ** 2;
  const noise = ((frame * 2654435761 + channel * 40503) % 65536) / 65536 - 0.5;
  const level = within < SECONDS ? 0.1 * 10 ** (-lossDb / 20) : 0;
  return level * Math.sin((2 * Math.PI * hertz * frame) / RATE) + 1e-4 * noise;
}

writeWave(process.argv[2], Math.round(RATE * TONES.length * (SECONDS + GAP)), sample);
