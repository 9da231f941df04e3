// Captures the short programme over and over through the loopback and prints what was lost, how much of a core a
// capture takes and how soon sound comes. Usage: node captures.mjs OFFTAPE PROGRAMME-FOLDER SCRATCH-FOLDER COUNT
// [more words for capture]. The sound server is reached as the environment says.
import { spawn } from 'node:child_process';
import { existsSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';

const BYTES_PER_FRAME = 6; // two channels of 24 bits
const TICKS_PER_SECOND = 100; // of /proc, on every Linux in use

const [offtape, programme, scratch, count, ...more] = process.argv.slice(2);
const sent = samples(join(programme, 'programme.wav'));

function samples(file) {
  const bytes = readFileSync(file);
  return bytes.subarray(bytes.indexOf('data') + 8);
}

// The programme's bytes must lie in the return from its first sound on, all of them, one after the other.
function frameOfProgramme(file) {
  const heard = samples(file);
  const start = heard.findIndex((byte) => byte !== 0) - sent.findIndex((byte) => byte !== 0);
  const same = start >= 0 && sent.equals(heard.subarray(start, start + sent.length));
  return same ? start / BYTES_PER_FRAME : -1;
}

function processorSeconds(pid) {
  try {
    const stat = readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ')[1].split(' ');
    return (Number(stat[11]) + Number(stat[12])) / TICKS_PER_SECOND;
  } catch {
    return undefined;
  }
}

// Resolves to the moment at which something other than silence is played. It asks for the programme's own format, since
// the sink takes on that of whoever comes first.
function firstSound() {
  const ears = spawn('parec', ['--device=loop.monitor', '--rate=48000', '--channels=2', '--format=s24le', '--raw', '--latency-msec=20']);
  const heard = new Promise((resolve) => {
    ears.stdout.on('data', (chunk) => {
      if (chunk.some((byte) => byte !== 0)) {
        resolve(Date.now());
        ears.kill();
      }
    });
  });
  return { ears, heard };
}

async function capture(number) {
  const out = join(scratch, `capture-${number}.wav`);
  const { ears, heard } = firstSound();
  await new Promise((resolve) => ears.once('spawn', resolve));
  const begun = Date.now();
  const child = spawn(offtape, ['capture', '--programme', programme, '--no-settings', '--out', out, ...more], {
    stdio: ['ignore', 'ignore', 'pipe'],
  });
  let words = '';
  child.stderr.on('data', (text) => (words += text));
  let processor = 0;
  let seconds = 0;
  const watch = setInterval(() => {
    if (!existsSync(out)) {
      processor = processorSeconds(child.pid) ?? processor;
      seconds = (Date.now() - begun) / 1000;
    }
  }, 200);
  const code = await new Promise((resolve) => child.once('close', resolve));
  clearInterval(watch);
  const sound = ((await heard) - begun) / 1000;
  const frame = code === 0 ? frameOfProgramme(out) : -1;
  const told = /^Mind:/m.test(words);
  rmSync(out, { force: true });
  return { exact: frame >= 0, frame, told, code, share: processor / seconds, sound };
}

const all = [];
for (let i = 1; i <= Number(count); i++) {
  const one = await capture(i);
  all.push(one);
  console.log(
    `${i}: ${one.exact ? 'exact' : 'NOT exact'}, ${one.told ? 'trouble told' : 'no trouble told'}, exit ${one.code}, programme at frame ${one.frame}, ` +
      `${(100 * one.share).toFixed(1)} % of a core, sound after ${one.sound.toFixed(2)} s`,
  );
}
const exact = all.filter((one) => one.exact).length;
const silent = all.filter((one) => !one.exact && !one.told).length;
const worst = (value) => Math.max(...all.map(value));
console.log(
  `captures: ${exact} of ${all.length} exact (${sent.length / BYTES_PER_FRAME} frames each), ${silent} inexact without a word, ` +
    `at most ${(100 * worst((o) => o.share)).toFixed(1)} % of a core, sound after at most ${worst((o) => o.sound).toFixed(2)} s`,
);
process.exit(exact === all.length ? 0 : 1);
