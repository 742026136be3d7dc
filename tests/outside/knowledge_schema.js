// Holds knowledge/schema.json against files with general-purpose packages: `yaml` reads them, `ajv` judges them.
//   node knowledge_schema.js SCHEMA FILE...
// A file that ends in .txt holds snippets, each after a line "=== its name". Prints "yes" or "no", a tab, and the file
// or the snippet's name, a line each; after a "no" another tab and the first reason.
const fs = require('fs');
const Ajv = require('ajv/dist/2020');
const yaml = require('yaml');

const [schemaFile, ...files] = process.argv.slice(2);
const validate = new Ajv({ strict: true, strictRequired: false, strictTypes: false, allErrors: false })
  .compile(JSON.parse(fs.readFileSync(schemaFile, 'utf8')));

// YAML 1.2, but a bare yes, no, on or off is no text either: readers of YAML differ about them.
const truth = {
  tag: 'tag:yaml.org,2002:bool', default: true, test: /^(?:yes|no|on|off|true|false)$/i,
  resolve: word => /^(?:yes|on|true)$/i.test(word),
};

function judge(name, text) {
  let reason = '';
  try {
    const data = yaml.parse(text, { customTags: tags => [truth, ...tags] });
    const plain = JSON.parse(JSON.stringify(data === undefined ? null : data));
    if (!validate(plain)) {
      const error = validate.errors[0];
      reason = `${error.instancePath} ${error.message}`;
    }
  } catch (error) {
    reason = String(error.message).split('\n')[0];
  }
  console.log(reason === '' ? `yes\t${name}` : `no\t${name}\t${reason}`);
}

for (const file of files) {
  const text = fs.readFileSync(file, 'utf8');
  if (!file.endsWith('.txt')) {
    judge(file, text);
    continue;
  }
  for (const snippet of text.split(/^=== /m).slice(1)) {
    const end = snippet.indexOf('\n');
    judge(snippet.slice(0, end), snippet.slice(end + 1));
  }
}
