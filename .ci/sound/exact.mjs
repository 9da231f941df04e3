// Checks the results of a return that came through a path without faults.
// Usage: node exact.mjs RESULTS.json [RETURN.wav PROGRAMME.wav]
// With the two recordings the delay is found a second way, by looking for the programme's own bytes in the return.
import { readFileSync } from 'node:fs';

const BYTES_PER_FRAME = 6; // two channels of 24 bit
const FRAMES_PER_MS = 48; // at 48 kHz

const [resultsFile, returnFile, programmeFile] = process.argv.slice(2);
const results = JSON.parse(readFileSync(resultsFile, 'utf8'));
const faults = [];

function check(holds, sentence) {
  if (!holds) {
    faults.push(sentence);
  }
}

function samples(file) {
  const bytes = readFileSync(file);
  return bytes.subarray(bytes.indexOf('data') + 8);
}

function within(limit, number) {
  return typeof number === 'number' && Math.abs(number) <= limit;
}

check(results.response.length >= 4, `only ${results.response.length} response curves`);
for (const { channel, levelDb, frequencyHz, magnitudeDb } of results.response) {
  const band = magnitudeDb.filter((_, i) => frequencyHz[i] >= 40 && frequencyHz[i] <= 16000);
  check(band.length > 50, `response ${channel} at ${levelDb} dB: only ${band.length} points`);
  check(band.every((db) => within(0.02, db)), `response ${channel} at ${levelDb} dB is not flat within 0.02 dB`);
}

if (results.session.mode === 'loopback') {
  // an interface has no speed, but two clocks
  const { recordingClockError } = results.timing;
  check(within(0.1, recordingClockError.value), `the clocks differ by ${recordingClockError.value} ppm`);
} else {
  const { deviation, drift, weightedPeak } = results.speed;
  check(within(0.0005, deviation.value), `speed deviation is ${deviation.value} %`);
  check(within(0.0005, drift.value), `speed drift is ${drift.value} %`);
  check(within(0.001, weightedPeak.value), `wow and flutter is ${weightedPeak.value} %`);
}

const ladders = results.distortion.filter((ladder) => ladder.frequencyHz === 1000);
check(ladders.length === 2, `${ladders.length} ladders at 1 kHz`);
for (const { channel, steps } of ladders) {
  const step = steps.find(({ recordLevelDb }) => recordLevelDb === 0);
  check(within(0.001, step?.k3Percent), `K3 ${channel} at the reference level is ${step?.k3Percent} %`);
  check(within(0.001, step?.compressionDb), `compression ${channel} at the reference level is ${step?.compressionDb} dB`);
}

const { balance, interchannelDelay } = results.channels;
check(within(0.01, balance.value), `balance is ${balance.value} dB`);
check(within(0.1, interchannelDelay.value), `the right channel is ${interchannelDelay.value} µs late`);
check(results.timing.polarity === 'normal', `polarity is ${results.timing.polarity}`);
check(results.timing.delay.value > 0, `delay is ${results.timing.delay.value} ms`);
check(results.dropouts.length === 0, `${results.dropouts.length} dropouts`);
for (const { severity, code, message } of results.health) {
  check(severity === 'note', `${severity} ${code}: ${message}`);
}

if (returnFile) {
  const sent = samples(programmeFile);
  const first = sent.findIndex((byte) => byte !== 0);
  const start = first - (first % BYTES_PER_FRAME);
  const heard = samples(returnFile).indexOf(sent.subarray(start));
  check(heard >= 0, 'the return does not hold the programme byte by byte');
  const delayMs = (heard - start) / BYTES_PER_FRAME / FRAMES_PER_MS;
  const difference = results.timing.delay.value - delayMs;
  check(within(results.timing.delay.uncertainty, difference), `the delay is ${difference} ms off the true ${delayMs} ms`);
}

faults.forEach((fault) => console.log(`    ${fault}`));
process.exitCode = faults.length > 0 ? 1 : 0;
