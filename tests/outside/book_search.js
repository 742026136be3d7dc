// Runs the script of the book's search page against a stand-in for the page, and prints what it shows.
//   node book_search.js INDEX.HTML SEARCH HASH [TYPED]
// SEARCH and HASH are those of the page's address ("?find=groans", ""); TYPED is then put into the box. Prints the
// line of the count, then a line for each link: its kind, a tab, its address.
const fs = require('fs');
const vm = require('vm');

const [file, search, hash, typed] = process.argv.slice(2);
const html = fs.readFileSync(file, 'utf8');
const script = html.slice(html.lastIndexOf('<script>') + '<script>'.length, html.lastIndexOf('</script>'));

class Element {
  constructor() { this.children = []; this.listeners = {}; this.value = ''; this.textContent = ''; }
  append(...children) { this.children.push(...children); }
  replaceChildren(...children) { this.children = children; }
  addEventListener(name, listener) { this.listeners[name] = listener; }
}

const elements = {};
for (const [, id] of html.matchAll(/ id="(search|found|count|form)"/g)) elements[id] = new Element();
const location = { search, hash };
const addresses = [];
vm.runInNewContext(script, {
  document: { getElementById: id => elements[id], createElement: () => new Element() },
  history: { replaceState: (state, title, address) => addresses.push(address) },
  addEventListener: () => {}, location, URLSearchParams,
});
if (typed !== undefined) {
  elements.search.value = typed;
  elements.search.listeners.input({});
}
console.log(elements.count.textContent);
for (const item of elements.found.children) {
  const [kind, , link] = item.children;
  console.log(`${kind.textContent}\t${link.href}`);
}
if (addresses.length > 0) console.log(`address\t${addresses.at(-1)}`);
