// Prints the marginals of noisy-OR networks by the junction tree of the npm package bayesjs: per network a line
// "time MILLISECONDS" (inference alone) and a line with the probability of every cause. The file's form is in
// noisy_or.hpp; the tables are worked out here from the definition of the noisy-OR.
'use strict';

const fs = require('fs');
const { inferAll } = require('bayesjs');

const open = 0;
const bad = 2;

function readNetwork(path) {
  const numbers = fs.readFileSync(path, 'utf8').trim().split(/\s+/).map(Number);
  let at = 0;
  const next = () => numbers[at++];
  const causes = next();
  const findings = next();
  const network = { prior: [], findings: [] };
  for (let i = 0; i < causes; ++i) network.prior.push(next());
  for (let f = 0; f < findings; ++f) {
    const finding = { leak: next(), seen: next(), links: [] };
    for (let left = next(); left > 0; --left) finding.links.push({ cause: next(), strength: next() });
    network.findings.push(finding);
  }
  return network;
}

function table(finding) {
  const rows = [];
  for (let row = 0; row < 2 ** finding.links.length; ++row) {
    const when = {};
    let sound = 1 - finding.leak;
    finding.links.forEach((link, n) => {
      const present = (row >> n) & 1;
      when['cause' + link.cause] = present ? 'yes' : 'no';
      if (present) sound *= 1 - link.strength;
    });
    rows.push({ when, then: { yes: 1 - sound, no: sound } });
  }
  return rows;
}

function nodes(network) {
  const result = {};
  network.prior.forEach((prior, i) => {
    const id = 'cause' + i;
    result[id] = { id, states: ['yes', 'no'], parents: [], cpt: { yes: prior, no: 1 - prior } };
  });
  network.findings.forEach((finding, f) => {
    if (finding.seen === open) return;
    const id = 'finding' + f;
    const parents = finding.links.map((link) => 'cause' + link.cause);
    result[id] = { id, states: ['yes', 'no'], parents, cpt: table(finding) };
  });
  return result;
}

for (const path of process.argv.slice(2)) {
  const network = readNetwork(path);
  const given = {};
  network.findings.forEach((finding, f) => {
    if (finding.seen !== open) given['finding' + f] = finding.seen === bad ? 'yes' : 'no';
  });
  const graph = nodes(network);
  const start = process.hrtime.bigint();
  const all = inferAll(graph, given, { precision: 15 });
  const taken = Number(process.hrtime.bigint() - start) / 1e6;
  console.log('time ' + taken);
  console.log(network.prior.map((_, i) => all['cause' + i].yes).join(' '));
}
