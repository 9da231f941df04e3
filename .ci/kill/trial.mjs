// Kills commands and checks what they leave. Usage: node trial.mjs OFFTAPE MATERIAL-FOLDER KILLS SEED [sound]
// Two results take turns under one name. What is looked at after each kill: every file under a final name is whole and
// of one of the two; all else is hidden and ours, or a recording that says it is incomplete.
import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, readdirSync, rmSync, watch } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { commands, sound } from './commands.mjs';

const MANIFEST = '.offtape-manifest.json';
const OURS = /^\.(.+\.)?offtape-(lock|staging)$/;
const INCOMPLETE = /^take\.incomplete(-\d+)?\.wav$/;
const TRIES = 3;

const [offtape, material, kills, seed, ...more] = process.argv.slice(2);
const work = join(material, 'work');
const all = Object.entries(commands(material)).filter(([, command]) => more.includes('sound') || !command.needsSound);
const faults = [];
const counts = new Map(all.map(([name]) => [name, { killed: 0, placing: 0, ended: 0, mixed: 0, rerun: 0 }]));
let running;

process.on('SIGTERM', () => {
  running?.kill('SIGKILL');
  process.exit(143);
});

// A small generator of random numbers from a seed, so that a trial can be had again.
let state = Number(seed) >>> 0;
function random() {
  state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
  return state / 2 ** 32;
}

function fault(sentence) {
  faults.push(sentence);
  console.log(`    not ok: ${sentence}`);
}

// Runs a command; "kill" gets the process and may end it.
function run(words, kill = () => {}) {
  const begun = Date.now();
  return new Promise((resolve) => {
    const child = spawn(offtape, words, { stdio: ['ignore', 'ignore', 'pipe'] });
    let said = '';
    running = child;
    child.stderr.on('data', (text) => (said += text));
    const tidy = kill(child);
    child.once('close', (code, signal) => {
      tidy?.();
      resolve({ code, signal, said, ms: Date.now() - begun });
    });
  });
}

// Kills at a random moment of a duration.
const after = (ms) => (child) => {
  const timer = setTimeout(() => child.kill('SIGKILL'), ms);
  return () => clearTimeout(timer);
};

// Kills when the first file is being moved to its final name in a folder, at once or some milliseconds later.
const whilePlacing = (folder, ms) => (child) => {
  const isFinal = (name) => name && (!name.startsWith('.') || name === MANIFEST) && !INCOMPLETE.test(name);
  const kill = () => child.kill('SIGKILL');
  const watcher = watch(folder, (event, name) => isFinal(name) && (ms < 1 ? kill() : setTimeout(kill, ms)));
  return () => watcher.close();
};

function content(folder) {
  return new Map(
    readdirSync(folder, { withFileTypes: true })
      .filter((entry) => entry.isFile() && !OURS.test(entry.name))
      .map(({ name }) => [name, readFileSync(join(folder, name))]),
  );
}

// Names in a folder that are neither results nor known leftovers; the incomplete recordings are taken away.
function visible(folder, name) {
  const names = [];
  for (const entry of readdirSync(folder)) {
    if (INCOMPLETE.test(entry)) {
      const bytes = readFileSync(join(folder, entry));
      const at = bytes.indexOf('data');
      if (bytes.length > 44 && !(at > 0 && bytes.readUInt32LE(at + 4) <= bytes.length - at - 8)) {
        fault(`${name}: the header of ${entry} promises more than there is`);
      }
      rmSync(join(folder, entry));
    } else if (entry.startsWith('.') && entry !== MANIFEST && !OURS.test(entry)) {
      fault(`${name}: ${entry} was left in ${folder}`);
    } else if (!entry.startsWith('.')) {
      names.push(entry);
    }
  }
  return names;
}

// The versions that the results under final names are of; a fault for each that is of none.
function versions(name, command, target, references) {
  const folder = command.isFile ? dirname(target) : target;
  const found = new Set();
  if (!existsSync(folder)) {
    return found;
  }
  for (const file of visible(folder, name)) {
    const bytes = readFileSync(join(folder, file));
    let of = [];
    try {
      of = ['A', 'B'].filter((version) => command.is(file, bytes, version, references));
    } catch (e) {
      fault(`${name}: ${file} cannot be read: ${e.message}`);
    }
    if (of.length === 0 && !references.earlier?.get(file)?.equals(bytes)) {
      fault(`${name}: ${file} is neither as before nor whole`);
    } else if (of.length === 1) {
      found.add(of[0]);
    }
  }
  return found;
}

// Runs to the end: all is of that version, and nothing else is left, hidden or not.
async function rerun(name, command, version, target, references) {
  for (let attempt = 1; attempt <= TRIES; attempt++) {
    const { code, said } = await run(command.words(version, target));
    // a busy computer may be late twice with a stem, which is told and mended by sending it again
    if (code === 0 || !command.needsSound || attempt === TRIES) {
      if (code !== 0) {
        return fault(`${name}: the next run ended with ${code}: ${said}`);
      }
      checkWhole(name, command, version, target, references, said);
      break;
    }
  }
  counts.get(name).rerun++;
}

function checkWhole(name, command, version, target, references, said) {
  const folder = command.isFile ? dirname(target) : target;
  for (const [file, bytes] of content(folder)) {
    if (file !== MANIFEST && !INCOMPLETE.test(file) && !command.is(file, bytes, version, references)) {
      fault(`${name}: ${file} of the next run is wrong`);
    }
  }
  if (command.isRight && !command.isRight(readFileSync(target), said)) {
    fault(`${name}: the next run gave another sound`);
  }
  const missing = [...(references[version]?.keys() ?? [])].filter((file) => !existsSync(join(folder, file)));
  const left = [folder, dirname(folder)].flatMap((place) => readdirSync(place)).filter((entry) => OURS.test(entry));
  [...missing.map((f) => `${f} is missing`), ...left.map((f) => `${f} is left`)].forEach((f) => fault(`${name}: ${f} after the next run`));
}

async function reference(name, command) {
  const references = {};
  let ms = 0;
  for (const version of ['A', 'B']) {
    const folder = join(material, `${name === 'measure' ? 'session' : name}-${version}`);
    mkdirSync(dirname(folder), { recursive: true });
    const out = command.isFile ? join(folder, command.target) : folder;
    const done = await run(command.words(version, out));
    if (done.code !== 0) {
      throw new Error(`${name} ended with ${done.code}: ${done.said}`);
    }
    ms = done.ms;
    references[version] = content(folder);
  }
  return { references, ms };
}

async function trial(name, command, count) {
  const { references, ms } = await reference(name, command);
  const tally = counts.get(name);
  const folder = join(work, name);
  const target = join(folder, command.target);
  mkdirSync(folder, { recursive: true });
  for (let i = 0; tally.killed < count && i < 4 * count; i++) {
    const version = i % 2 ? 'B' : 'A';
    // every third time there is no earlier result
    if (i % 3 === 2) {
      rmSync(target, { recursive: true, force: true });
    }
    const before = existsSync(target) ? (command.isFile ? readFileSync(target) : content(target)) : undefined;
    references.earlier = command.isFile && before ? new Map([[basename(target), before]]) : undefined;
    const isPlacing = i % 4 === 3;
    const moment = random();
    const { code, signal, said } = await run(
      command.words(version, target),
      isPlacing ? whilePlacing(before && !command.isFile ? target : folder, 4 * moment) : after(1.05 * ms * moment),
    );
    if (signal === 'SIGKILL' || code === 137) {
      tally.killed++;
      tally.placing += isPlacing ? 1 : 0;
    } else if (code === 0) {
      tally.ended++;
    } else if (!command.needsSound) {
      fault(`${name}: ended by itself with ${code}: ${said}`);
    }
    tally.mixed += versions(name, command, target, references).size > 1 ? 1 : 0;
    if (before && !command.isFile) {
      [...before.keys()].filter((file) => !existsSync(join(target, file))).forEach((file) => fault(`${name}: ${file} from before is gone`));
    } else if (before && !existsSync(target)) {
      fault(`${name}: the file from before is gone`);
    }
    if (i % 5 === 4 || tally.killed === count) {
      await rerun(name, command, version, target, references);
    }
  }
}

// Two at once into a place where nothing is yet: one does it, the other is refused in words.
async function twoAtOnce(command) {
  const target = join(work, 'two', command.target);
  const both = await Promise.all(['A', 'B'].map((version) => run(command.words(version, target))));
  const refused = both.find(({ code }) => code === 2);
  const expected = `offtape: Another run is just writing ${target}. Wait until it has finished or choose another --out.`;
  if (!both.some(({ code }) => code === 0) || refused?.said.trim() !== expected) {
    fault(`two at once ended with ${both.map(({ code, said }) => `${code}: ${said}`).join(' and ')}`);
  }
}

for (let i = 0; i < all.length; i++) {
  const [name, command] = all[i];
  await trial(name, command, Math.floor((Number(kills) + i) / all.length));
  const { killed, placing, ended, mixed, rerun: again } = counts.get(name);
  console.log(
    `${name}: ${killed} killed (${placing} while files were moved into place), ${ended} had ended before, ` +
      `${mixed} times old and new files side by side, ${again} runs to the end afterwards`,
  );
}
await twoAtOnce(all[0][1]);
const killed = [...counts.values()].reduce((sum, one) => sum + one.killed, 0);
if (killed < Number(kills)) fault(`only ${killed} of ${kills} could be killed`);
console.log(`kill: ${killed} kills, ${faults.length} faults`);
process.exit(faults.length === 0 ? 0 : 1);
