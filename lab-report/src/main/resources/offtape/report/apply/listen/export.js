/** A cell that no table programme takes for a formula, whichever way it parts cells, quoted. */
function cell(value) {
  const text = String(value);
  const within = text.replace(/([;\t\r\n][\s"]*)(?=[=+\-@\uff1d\uff0b\uff0d\uff20])/g, "$1'");
  const safe = /^(?:\s*[=+\-@\uff1d\uff0b\uff0d\uff20]|[\t\r\n])/.test(text) ? `'${within}` : within;
  return `"${safe.replaceAll('"', '""')}"`;
}

/** All answers, a line each, as CSV (RFC 4180). */
function answersAsCsv(facts, rounds) {
  const lines = [['round', 'counts', 'trial', 'x', 'answer', 'right', 'a', 'b']];
  rounds.forEach((round, r) => {
    round.answers.forEach((answer, t) => {
      const right = answer.isRight ? 'yes' : 'no';
      const counts = round.counts ? 'yes' : 'no';
      lines.push([r + 1, counts, t + 1, answer.x, answer.answer, right, facts.a.file, facts.b.file]);
    });
  });
  return lines.map((line) => `${line.map(cell).join(',')}\r\n`).join('');
}

/** All answers with what they amount to, as JSON. */
function answersAsJson(facts, page, trials, rounds) {
  const told = rounds.map((round, r) => {
    const right = rightOf(round);
    const isWhole = round.answers.length === trials;
    return {
      round: r + 1,
      counts: round.counts,
      trials,
      right,
      chanceByGuessing: isWhole ? chanceOf(right, trials).chance : null,
      answers: round.answers.map((answer, t) => ({ trial: t + 1, ...answer })),
    };
  });
  const all = { format: 'offtape-listening-answers', version: 1, page, facts, rounds: told };
  return `${JSON.stringify(all, null, 2)}\n`;
}

/** Lets the browser save a text as a file; nothing leaves the page. */
function save(name, type, text) {
  const url = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}
