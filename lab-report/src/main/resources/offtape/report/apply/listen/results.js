/** Shows the last round with all that may be told now. */
function showResults(trials, rounds) {
  const byId = (id) => document.getElementById(id);
  const round = rounds[rounds.length - 1];
  const right = rightOf(round);
  byId('score').textContent = scoreWords(right, trials);
  byId('verdict').textContent = round.counts
    ? verdictWords(right, trials)
    : said('verdict-practice');
  byId('together').textContent = togetherWords(rounds, trials);
  byId('answers').replaceChildren(
    ...round.answers.map((answer, i) => {
      const row = document.createElement('tr');
      const head = document.createElement('th');
      head.scope = 'row';
      head.textContent = String(i + 1);
      const cells = [answer.x, answer.answer, said(answer.isRight ? 'yes' : 'no')].map((text) => {
        const td = document.createElement('td');
        td.textContent = text;
        return td;
      });
      row.append(head, ...cells);
      return row;
    }),
  );
  byId('result').hidden = false;
}
