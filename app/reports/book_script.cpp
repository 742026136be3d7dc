#include "app/reports/book_script.hpp"

namespace hardover::book {

// The same way of searching as the program's (app/jobs/word_index), in small: words that mean the same are
// one, endings do not count, and rare words tell more. A word that is not finished finds what begins with it.
const char* const search_script = R"(
const box = document.getElementById('search'), found = document.getElementById('found'),
  count = document.getElementById('count'), most = 40;
const plain = text => ' ' + text.toLowerCase().replace(/'/g, '').replace(/[\x00-\x2f\x3a-\x60\x7b-\x7f]+/g, ' ').trim() + ' ';
const texts = entries.map(e => [plain(e[3] + ' ' + e[2]), plain(e[4])]);
const alike = words.alike.map(list => list.map(word => plain(word).trim()));
const small = new Set(words.small);

function stem(word) {
  for (const end of ['ings', 'ing', 'ed', 'es', 's', 'ly', 'e']) {
    const left = word.slice(0, -end.length);
    if (word.endsWith(end) && left.length > 2 && /[aeiouy]/.test(left)) return left.replace(/([^aeioulsz])\1$/, '$1');
  }
  return word;
}
// A word in any of its forms; `begun`: anything that begins with it.
const form = (word, begun) => word.split(' ').map(stem).join('\\w{0,3} ')
  + (begun ? '' : '(?:[a-z]?(?:e|s|es|ed|ing|ings|y|ly))? ');
const pattern = forms => new RegExp(' (?:' + forms.join('|') + ')');

// What is looked for: for each word asked, or words that belong together, a pattern of all that mean it.
function wanted(asked) {
  const patterns = [];
  let rest = plain(asked);
  const groups = [];
  alike.forEach(list => list.forEach(word => groups.push([word, list])));
  groups.filter(g => g[0].includes(' ')).sort((a, b) => b[0].length - a[0].length).forEach(([word, list]) => {
    if (!rest.includes(' ' + word + ' ')) return;
    rest = rest.replace(' ' + word + ' ', ' ');
    patterns.push(pattern(list.map(each => form(each))));
  });
  const left = rest.trim().split(' ').filter(word => word && !small.has(word));
  left.forEach((word, i) => {
    const group = groups.find(g => stem(g[0]) === stem(word));
    const begun = i === left.length - 1 && !group;
    patterns.push(pattern(group ? group[1].map(each => form(each)) : [form(word, begun)]));
  });
  return patterns;
}

function find(asked) {
  const score = entries.map(() => 0);
  for (const each of wanted(asked)) {
    const worth = texts.map(([name, more]) => each.test(name) ? 2 : each.test(more) ? 1 : 0);
    const having = worth.filter(w => w).length;
    if (having) worth.forEach((w, i) => { score[i] += w * Math.log(1 + entries.length / having); });
  }
  const best = Math.max(...score);
  return entries.map((e, i) => [score[i] * (e[0] === 'complaint' ? 1.5 : 1), e])
    .filter((hit, i) => best > 0 && score[i] >= 0.4 * best).sort((a, b) => b[0] - a[0]).map(hit => hit[1]);
}

function show() {
  found.replaceChildren();
  if (!box.value.trim()) { count.textContent = ''; return; }
  const hits = find(box.value);
  count.textContent = hits.length === 0 ? 'Nothing is found. Try another word for it.'
    : hits.length + (hits.length === 1 ? ' entry' : ' entries')
    + (hits.length > most ? ', the nearest ' + most + ' shown' : ', the nearest first');
  for (const e of hits.slice(0, most)) {
    const item = document.createElement('p'), link = document.createElement('a'), kind = document.createElement('span');
    link.href = e[1]; link.textContent = e[3] === e[2] && e[4] ? e[4] : e[3]; kind.textContent = e[0];
    item.append(kind, ' ', link); found.append(item);
  }
}

function read() {
  const here = location.hash.startsWith('#find=') ? '?' + location.hash.slice(1) : location.search;
  const asked = new URLSearchParams(here).get('find');
  if (asked !== null && asked !== box.value) { box.value = asked; show(); }
}
box.addEventListener('input', () => {
  show();
  // So that going back from an entry finds the search as it was.
  history.replaceState(null, '', '#find=' + encodeURIComponent(box.value));
});
document.getElementById('form').addEventListener('submit', event => event.preventDefault());
addEventListener('hashchange', read);
read();
)";

}  // namespace hardover::book
