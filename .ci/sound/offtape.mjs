// Checks the results of a return off the tape of machine.mjs against what is written down there.
// Usage: node offtape.mjs RESULTS.json
import { readFileSync } from 'node:fs';

const results = JSON.parse(readFileSync(process.argv[2], 'utf8'));
const faults = [];

function near(name, value, expected, allowed) {
  if (!(typeof value === 'number' && Math.abs(value - expected) <= allowed)) {
    faults.push(`${name} is ${value}, not ${expected} within ${allowed}`);
  }
}

const { balance, interchannelDelay, monoLossAt10kHz } = results.channels;
near('balance', balance.value, -0.4, 0.02);
near('interchannel delay', interchannelDelay.value, 0, 0.1);
near('mono loss', monoLossAt10kHz.value, 0, 0.05);
for (const { channel, frequencyHz, levelAtK3OnePercent, steps } of results.distortion) {
  if (frequencyHz !== 1000) continue;
  // the right channel is driven alike, since its gain lies behind the curve
  near(`level of 1 % K3, ${channel}`, levelAtK3OnePercent.value, 6.0, 0.1);
  for (const { recordLevelDb, k3Percent, limitedByNoise } of steps) {
    const a = 0.1258925 * 10 ** (recordLevelDb / 20);
    if (!limitedByNoise && a < 0.65) {
      const k3 = (100 * (0.615 / 4) * a * a) / (1 - 0.75 * 0.615 * a * a);
      near(`K3 ${channel} at ${recordLevelDb} dB`, k3Percent, k3, 0.04 * k3);
    }
  }
}
for (const { channel, unweighted } of results.noise) {
  // 1e-4 rms re a sine of peak 0.1259 less its cubic share, of which the band of 22.4 Hz to 22.4 kHz holds 22.38/24 of the power
  const reference = 0.1258925 * (1 - 0.75 * 0.615 * 0.1258925 ** 2) * (channel === 'left' ? 1 : 10 ** (-0.4 / 20));
  const expected = 20 * Math.log10((1e-4 * Math.sqrt(22.38 / 24)) / (reference / Math.SQRT2));
  near(`noise ${channel}`, unweighted.value, expected, 0.1);
}
for (const { channel, levelDb, frequencyHz, magnitudeDb } of results.response) {
  if (levelDb > -10) continue; // the loud sweep is bent by the cube
  const worst = magnitudeDb.filter((_, i) => frequencyHz[i] >= 40 && frequencyHz[i] <= 10000).reduce((a, b) => (Math.abs(b) > Math.abs(a) ? b : a));
  near(`response ${channel} at ${levelDb} dB`, worst, 0, 0.1);
}
near('wow and flutter', results.speed.weightedPeak.value, 0, 0.001);
if (results.session.mode !== 'off-tape') faults.push(`mode is ${results.session.mode}`);
if (results.health.some(({ code }) => code === 'xrun')) faults.push('sound is said to be missing');
if (!(results.timing.delay.value > 157 + 500)) faults.push(`delay is ${results.timing.delay.value} ms`);
faults.forEach((fault) => console.log(`    ${fault}`));
process.exit(faults.length === 0 ? 0 : 1);
