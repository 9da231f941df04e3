// Writes two small stereo WAV files that are alike but not equal, for the listening page. Usage: node sounds.js A B
import { RATE, writeWave } from './wave.js';

const SECONDS = 3;

/** A tone a moment, with a beat; "bend" flattens its peaks. */
function sample(frame, channel, bend) {
  const time = frame / RATE;
  const beat = time % 0.5;
  const note = 220 * 2 ** ((Math.floor(time / 0.5) * 5 + channel) % 12 / 12);
  const plain = 0.5 * Math.exp(-6 * beat) * Math.sin(2 * Math.PI * note * time);
  return Math.tanh(bend * plain) / bend;
}

const [a, b] = process.argv.slice(2);
writeWave(a, RATE * SECONDS, (frame, channel) => sample(frame, channel, 0.01));
writeWave(b, RATE * SECONDS, (frame, channel) => sample(frame, channel, 1.5));
