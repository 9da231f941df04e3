// The commands that the trial kills, each in two versions of its result, and what may lie under a final name.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';

const FRAME = 6; // bytes: two channels of 24 bits

// The samples of a WAV file if its header tells the length that it has, else nothing.
export function sound(bytes) {
  const at = bytes.indexOf('data');
  const whole =
    at > 0 && bytes.readUInt32LE(4) === bytes.length - 8 && bytes.readUInt32LE(at + 4) === bytes.length - at - 8;
  return whole ? bytes.subarray(at + 8) : undefined;
}

// A file of a folder whose bytes are known from a run that nothing disturbed.
function known(name, content, version, references) {
  return references[version].get(name)?.equals(content) ?? false;
}

// Lines of a recording or a log that hold what the computer did at that moment are judged by what they must hold.
export function commands(folder) {
  const at = (...names) => join(folder, ...names);
  const stem = (version, name) => sound(readFileSync(at(`stems-${version}`, name)));
  const moment = () => sound(readFileSync(at('moment', 'programme.wav')));
  return {
    measure: {
      target: 'session',
      words: (version, out) => ['measure', at(`${version}.wav`), '--programme', at('programme'), '--mode', 'reference-tape', '--quiet', '--out', out],
      is: known,
    },
    compare: {
      target: 'comparison',
      words: (version, out) => ['compare', ...(version === 'A' ? ['A', 'B'] : ['B', 'A']).map((v) => at(`session-${v}`)), '--quiet', '--out', out],
      is: known,
    },
    transfer: {
      needsSound: true,
      target: 'taped',
      words: (version, out) =>
        ['transfer', '--session', at('level'), '--no-settings', '--tail', '0.5', '--out', out, ...['one.wav', 'two.wav'].map((n) => at(`stems-${version}`, n))],
      is: (name, content, version) =>
        name === 'transfer.json'
          ? JSON.parse(content).stems.every(({ outcome, message, returnSha256 }) =>
              // a busy computer may be late twice, which the log then says of the stem
              outcome === 'done' ? /^[0-9a-f]{64}$/.test(returnSha256) : message.length > 0,
            )
          : (sound(content)?.equals(stem(version, name)) ?? false),
    },
    // one file, so the folder around it is the trial's own; a recording is made new each time and never the same
    capture: {
      needsSound: true,
      isFile: true,
      target: 'take.wav',
      words: (version, out) => ['capture', '--programme', at('moment'), '--no-settings', '--tail', '0.5', '--force', '--out', out],
      is: (name, content) => {
        const heard = sound(content);
        return heard !== undefined && heard.length >= moment().length + 48000 * FRAME * 0.5;
      },
      // the programme's own bytes, one after the other; a busy computer may be late, and then says so unless it is quiet
      isRight: (content, said) => {
        const sent = moment();
        const first = sent.findIndex((byte) => byte !== 0);
        return sound(content).includes(sent.subarray(first - (first % FRAME))) || /^Mind:/m.test(said);
      },
    },
  };
}
