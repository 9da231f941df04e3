/** Shows the last round with all that may be told now. */
function showResults(facts, trials, rounds) {
  const byId = (id) => document.getElementById(id);
  const round = rounds[rounds.length - 1];
  const right = rightOf(round);
  byId('score').textContent = scoreWords(right, trials);
  byId('verdict').textContent = round.counts
    ? verdictWords(right, trials)
    : 'This was practice and does not count: whoever is told after each trial may stop when it looks good.';
  byId('together').textContent = togetherWords(rounds, trials);
  byId('answers').replaceChildren(
    ...round.answers.map((answer, i) => {
      const row = document.createElement('tr');
      const head = document.createElement('th');
      head.scope = 'row';
      head.textContent = String(i + 1);
      const cells = [answer.x, answer.answer, answer.isRight ? 'yes' : 'no'].map((text) => {
        const td = document.createElement('td');
        td.textContent = text;
        return td;
      });
      row.append(head, ...cells);
      return row;
    }),
  );
  byId('facts').replaceChildren(
    ...facts.sentences.map((sentence) => {
      const item = document.createElement('li');
      item.textContent = sentence;
      return item;
    }),
  );
  byId('result').hidden = false;
}
